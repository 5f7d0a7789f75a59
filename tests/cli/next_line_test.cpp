// What is printed behind "next:" can be typed as it stands, there and then.
#include "cli/golden.h"

namespace pluckbook::testing {
namespace {

/// The commands behind "next:" in an output: from the last "pluckbook " of the line, or from a "cd
/// " before it.
std::vector<std::string> next_commands(const std::string& output) {
  std::vector<std::string> commands;
  std::istringstream lines(output);
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("next: ")) continue;
    const std::size_t program = line.rfind("pluckbook ");
    if (program == std::string::npos) continue;
    const bool goes_there = line.starts_with("next: cd ");
    commands.push_back(line.substr(goes_there ? 6 : program));
  }
  return commands;
}

/// Runs a command on a terminal in a copy of the folder, since it may change the book; a page of
/// the laboratory is typed where one is asked for.
Ran run_in_copy(const std::filesystem::path& folder, const std::string& command) {
  const FreshFolder copy;
  std::filesystem::copy(folder, copy.path(), std::filesystem::copy_options::recursive);
  return run_typed(copy.path(), command, {"dry-matter", "cp=7.1", "tdn=54", ""});
}

class NextLine : public ::testing::TestWithParam<std::filesystem::path> {};

TEST_P(NextLine, RunsAsItIsPrintedInEveryGolden) {
  replayed(read_text(GetParam()), [](const Printed& printed) {
    for (const std::string& command : next_commands(printed.ran.output)) {
      const Ran ran = run_in_copy(printed.folder, command);
      const bool leaves_bad_rows = command.find("--take-good-rows") != std::string::npos;
      EXPECT_TRUE(ran.exit == 0 || ran.exit == 1 || (leaves_bad_rows && ran.exit == 3))
          << printed.command << "\nnext: " << command << "\n"
          << ran.output << "exit " << ran.exit;
    }
  });
}

INSTANTIATE_TEST_SUITE_P(Files, NextLine, ::testing::ValuesIn(golden_files()),
                         [](const auto& file) {
                           return file.param.parent_path().filename().string() + "_" +
                                  file.param.stem().string();
                         });

TEST(NextLine, AsksTheSameBookOnTheSameDay) {
  const FreshFolder at;
  const std::string day = "--book 'my book' --as-of 2026-08-20";
  ASSERT_EQ(run_in(at.path(), "start 'my book' --scenario northern").exit, 0);
  int followed = 0;
  for (const char* words :
       {"bag draws --plan", "bag draws", "mark 26-draws-09 dried", "mark 26-draws-09 sent",
        "score spring-cows 5", "move first-calf draws", "quote cube-20 '350 USD/ton'",
        "event draws rain", "outlook", "diet draws"}) {
    const Ran ran = run_in(at.path(), std::string(words) + " " + day);
    ASSERT_EQ(ran.exit, 0) << words << "\n" << ran.output;
    for (const std::string& command : next_commands(ran.output)) {
      EXPECT_NE(command.find("--book 'my book'"), std::string::npos) << words << ": " << command;
      EXPECT_NE(command.find("--as-of 2026-08-20"), std::string::npos) << words << ": " << command;
      EXPECT_LE(run_in_copy(at.path(), command).exit, 1) << words << ": " << command;
      ++followed;
    }
  }
  EXPECT_GE(followed, 10);
}

}  // namespace
}  // namespace pluckbook::testing
