// scratch.h - a folder for files of a target's own, gone with the program; in memory where the
// system offers that.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

namespace pluckbook::fuzz {

class Scratch {
 public:
  Scratch() {
    const std::filesystem::path memory = "/dev/shm";
    const bool there = std::filesystem::is_directory(memory);
    path_ = (there ? memory : std::filesystem::temp_directory_path()) /
            ("pluckbook-fuzz-" + std::to_string(::getpid()));
  }
  ~Scratch() {
    std::error_code error;
    std::filesystem::remove_all(path_, error);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  const std::filesystem::path& path() const { return path_; }
  void write(const std::string& name, std::string_view text) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
  }

 private:
  std::filesystem::path path_;
};

inline const Scratch& scratch() {
  static const Scratch folder;
  return folder;
}

}  // namespace pluckbook::fuzz
