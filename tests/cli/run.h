// run.h - runs the real program in a fresh copy of a demo book, as a person would.
#pragma once

#include <gtest/gtest.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace pluckbook::testing {

/// A folder of its own, removed at the end; filled with a copy of a scenario when one is named.
class FreshFolder {
 public:
  explicit FreshFolder(const std::string& scenario = "") {
    std::string pattern = std::filesystem::temp_directory_path() / "pluckbook-test.XXXXXX";
    path_ = mkdtemp(pattern.data());
    if (!scenario.empty()) {
      std::filesystem::copy(std::filesystem::path(PLUCKBOOK_SOURCE) / "scenarios" / scenario, path_,
                            std::filesystem::copy_options::recursive);
    }
  }
  FreshFolder(const FreshFolder&) = delete;
  FreshFolder& operator=(const FreshFolder&) = delete;
  ~FreshFolder() { std::filesystem::remove_all(path_); }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

struct Ran {
  int exit = -1;
  std::string output;
};

/// True when the tests are asked to try everything, not a part that is done in seconds.
inline bool long_run() {
  return std::getenv("PLUCKBOOK_LONG") != nullptr;
}

/// What a shell command prints, and its exit status.
inline Ran shell(const std::string& command) {
  Ran ran;
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return ran;
  std::array<char, 4096> buffer{};
  for (std::size_t n = 0; (n = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
    ran.output.append(buffer.data(), n);
  }
  const int status = pclose(pipe);
  ran.exit = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return ran;
}

/// A line of the shell made to run in a folder, with the program on the path.
inline std::string shell_line(const std::filesystem::path& folder, const std::string& line) {
  const std::string program_folder = std::filesystem::path(PLUCKBOOK_PROGRAM).parent_path();
  return "cd '" + folder.string() + "' && PATH='" + program_folder + "':$PATH && " + line;
}

inline Ran run_line(const std::filesystem::path& folder, const std::string& line) {
  return shell(shell_line(folder, line));
}

/// Runs `pluckbook WORDS` by the shell in a folder; standard error joins the output unless told.
inline Ran run_in(const std::filesystem::path& folder, const std::string& words,
                  const std::string& redirect = "2>&1") {
  return run_line(folder, "pluckbook " + words + " " + redirect);
}

inline std::string read_text(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Writes text into a file of the book, replacing it.
inline void write_text(const std::filesystem::path& file, const std::string& text) {
  std::filesystem::create_directories(file.parent_path());
  std::ofstream(file, std::ios::binary) << text;
}

}  // namespace pluckbook::testing
