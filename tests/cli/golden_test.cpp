// Every file of tests/golden is a book, lines of the shell ("$ "), what is typed when they ask (">
// "), their output and exit status, in one text that a rancher could read. To renew them after a
// change that was meant, run the test with PLUCKBOOK_GOLDEN=write and read the difference line by
// line.
#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "cli/run.h"
#include "cli/typist.h"

namespace pluckbook::testing {
namespace {

std::vector<std::filesystem::path> golden_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(
           std::filesystem::path(PLUCKBOOK_SOURCE) / "tests/golden")) {
    if (entry.path().extension() == ".test") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// The lines that follow and begin with "> ", which are taken.
std::vector<std::string> typed_lines(std::istringstream& lines) {
  std::vector<std::string> typed;
  while (lines.peek() == '>') {
    std::string line;
    std::getline(lines, line);
    typed.push_back(line.size() > 2 ? line.substr(2) : "");
  }
  return typed;
}

/// The same text with every command run anew.
std::string replayed(const std::string& golden) {
  std::istringstream lines(golden);
  std::string line;
  std::getline(lines, line);
  const std::string scenario = line.substr(line.find(": ") + 2);
  FreshFolder folder(scenario == "none" ? "" : scenario);
  std::string text = line + "\n";
  bool in_output = false;
  while (std::getline(lines, line)) {
    if (line.rfind("# ", 0) == 0 && !in_output) text += line + "\n";
    if (line.rfind("exit ", 0) == 0) in_output = false;
    if (line.rfind("$ ", 0) != 0) continue;
    in_output = true;
    text += "\n" + line + "\n";
    const std::vector<std::string> typed = typed_lines(lines);
    for (const std::string& one : typed) text += one.empty() ? ">\n" : "> " + one + "\n";
    const Ran ran = typed.empty() ? run_line(folder.path(), "{ " + line.substr(2) + "; } 2>&1")
                                  : run_typed(folder.path(), line.substr(2), typed);
    text += ran.output + "exit " + std::to_string(ran.exit) + "\n";
  }
  return text;
}

class Golden : public ::testing::TestWithParam<std::filesystem::path> {};

TEST_P(Golden, SaysWhatItSaid) {
  const std::string golden = read_text(GetParam());
  const std::string now = replayed(golden);
  const char* mode = std::getenv("PLUCKBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "write") write_text(GetParam(), now);
  EXPECT_EQ(now, golden);
}

INSTANTIATE_TEST_SUITE_P(Files, Golden, ::testing::ValuesIn(golden_files()),
                         [](const auto& file) { return file.param.stem().string(); });

}  // namespace
}  // namespace pluckbook::testing
