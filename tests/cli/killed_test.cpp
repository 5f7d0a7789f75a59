// The program is killed before each of its system calls that change a file: the book holds the old
// or the new record, whole; what was said to be kept is there; the next command works and leaves no
// trace of the kill. In the long run (PLUCKBOOK_LONG=1) it is killed before the reading calls too.
#include <gtest/gtest.h>

#include <map>
#include <ostream>

#include "cli/traced.h"

namespace pluckbook::testing {
namespace {

std::map<std::string, std::string> files_of(const std::filesystem::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    const std::string name = entry.path().lexically_relative(folder).string();
    if (entry.is_regular_file()) files[name] = read_text(entry.path());
  }
  return files;
}

bool hidden(const std::string& name) {
  return name.find("/.") != std::string::npos || name.starts_with('.');
}

// The files of the book, without drafts and locks.
std::map<std::string, std::string> records_of(const std::filesystem::path& folder) {
  std::map<std::string, std::string> files = files_of(folder);
  std::erase_if(files, [](const auto& file) { return hidden(file.first); });
  return files;
}

struct WritingCommand {
  const char* name;
  const char* words;
};

std::ostream& operator<<(std::ostream& out, const WritingCommand& writing) {
  return out << writing.name;
}

class Killed : public ::testing::TestWithParam<WritingCommand> {};

TEST_P(Killed, LeavesTheOldBookOrTheNewOne) {
  const WritingCommand& writing = GetParam();
  const auto old_book = records_of(FreshFolder("northern").path());
  std::map<std::string, std::string> new_book;
  std::string said;  // when it is done
  {
    const FreshFolder folder("northern");
    const Ran ran = run_in(folder.path(), writing.words);
    ASSERT_EQ(ran.exit, 0) << ran.output;
    said = ran.output.substr(0, ran.output.find('\n'));
    new_book = records_of(folder.path());
    ASSERT_NE(old_book, new_book);
  }
  int done = 0, kills = 0;
  for (bool killed = true; killed; ++kills) {
    SCOPED_TRACE("killed before call " + std::to_string(kills + 1));
    const FreshFolder folder("northern");
    int seen = 0;
    const Traced traced = run_traced(folder.path(), writing.words, [&](const SystemCall& call) {
      if (long_run() || changes_files(call)) ++seen;
      return seen > kills ? Then::kill : Then::go_on;
    });
    if (!traced.possible) GTEST_SKIP() << "ptrace is forbidden here";
    killed = traced.signal == SIGKILL;
    const auto now = records_of(folder.path());
    EXPECT_TRUE(now == old_book || now == new_book);
    EXPECT_TRUE(traced.output.find(said) == std::string::npos || now == new_book);
    done += now == new_book ? 1 : 0;
    EXPECT_LE(run_in(folder.path(), "check").exit, 1) << "a draft left behind is a warning";
    const Ran next =
        run_in(folder.path(), "bag draws --id after-all --date 2026-08-30 --as-of 2026-09-05");
    EXPECT_EQ(next.exit, 0) << next.output;
    EXPECT_LE(run_in(folder.path(), "check").exit, 1) << "a pasture may want a bag";
    EXPECT_EQ(files_of(folder.path()), records_of(folder.path())) << "no litter";
  }
  EXPECT_GT(kills, 8);
  EXPECT_GT(done, 1) << "the last calls come after the change";
  EXPECT_LT(done, kills);
}

INSTANTIATE_TEST_SUITE_P(
    Commands, Killed,
    ::testing::Values(
        WritingCommand{"result", "result 26-draws-08 dm=91.5 cp=6.4 --as-of 2026-09-05"},
        WritingCommand{"bag", "bag meadow --id by-hand --date 2026-09-01 --as-of 2026-09-05"},
        WritingCommand{"bag_of_a_new_year", "bag meadow --id by-hand --as-of 2027-05-05"},
        WritingCommand{"mark", "mark 26-draws-08 spoiled --date 2026-09-05"},
        WritingCommand{"move", "move spring-cows meadow --as-of 2026-09-05"},
        WritingCommand{"score", "score spring-cows 5.2 --head 40 --as-of 2026-09-05"},
        WritingCommand{"quote", "quote cube-20 '340 USD/ton' --as-of 2026-09-05"},
        WritingCommand{"event", "event draws rain --as-of 2026-09-05"}),
    [](const auto& writing) { return std::string(writing.param.name); });

// An import changes several files. After a kill each is the old or the new one, and the same
// command makes the book what it would have been.
TEST(KilledImport, LeavesWholeFilesAndIsMadeUpByTheSameCommand) {
  const std::string words =
      "import " PLUCKBOOK_TEST_DATA "/one_bag.csv --accept --as-of 2026-09-15";
  const auto old_book = records_of(FreshFolder("northern").path());
  std::map<std::string, std::string> new_book;
  {
    const FreshFolder folder("northern");
    const Ran ran = run_in(folder.path(), words);
    ASSERT_EQ(ran.exit, 0) << ran.output;
    new_book = records_of(folder.path());
    ASSERT_EQ(new_book.size(), old_book.size() + 1) << "the layout's file";
  }
  int between = 0, kills = 0;
  for (bool killed = true; killed; ++kills) {
    SCOPED_TRACE("killed before call " + std::to_string(kills + 1));
    const FreshFolder folder("northern");
    int seen = 0;
    const Traced traced = run_traced(folder.path(), words, [&](const SystemCall& call) {
      if (changes_files(call)) ++seen;
      return seen > kills ? Then::kill : Then::go_on;
    });
    if (!traced.possible) GTEST_SKIP() << "ptrace is forbidden here";
    killed = traced.signal == SIGKILL;
    const auto now = records_of(folder.path());
    for (const auto& [name, text] : now) {
      const auto old = old_book.find(name);
      EXPECT_TRUE(text == new_book.at(name) || (old != old_book.end() && text == old->second))
          << name;
    }
    between += now != old_book && now != new_book ? 1 : 0;
    EXPECT_TRUE(traced.output.find("kept") == std::string::npos || now == new_book);
    EXPECT_LE(run_in(folder.path(), "check").exit, 1);
    const Ran again = run_in(folder.path(), words);
    EXPECT_EQ(again.exit, 0) << again.output;
    EXPECT_EQ(records_of(folder.path()), new_book);
    EXPECT_EQ(files_of(folder.path()), records_of(folder.path())) << "no litter";
  }
  EXPECT_GT(kills, 15);
  EXPECT_GT(between, 3) << "or the kills fell on either side of all files";
}

TEST(KilledStart, LeavesNoBookOrAWholeOne) {
  int whole = 0, kills = 0;
  for (bool killed = true; killed; kills += 5) {  // every fifth of some ninety calls
    SCOPED_TRACE("killed before call " + std::to_string(kills + 1));
    const FreshFolder folder;
    int seen = 0;
    const Traced traced =
        run_traced(folder.path(), "start mybook --scenario northern", [&](const SystemCall& call) {
          if (long_run() || changes_files(call)) ++seen;
          return seen > kills ? Then::kill : Then::go_on;
        });
    if (!traced.possible) GTEST_SKIP() << "ptrace is forbidden here";
    killed = traced.signal == SIGKILL;
    if (!std::filesystem::exists(folder.path() / "mybook/book.yaml")) {
      EXPECT_EQ(traced.output.find("copied"), std::string::npos);
      continue;
    }
    ++whole;
    EXPECT_LE(run_in(folder.path(), "check --book mybook").exit, 1);
  }
  EXPECT_GT(whole, 0);
  EXPECT_GT(kills, 50);
}

TEST(ReadingCommands, WriteNothingAndOpenNoSocket) {
#ifdef PLUCKBOOK_SANITIZED
  GTEST_SKIP() << "the sanitizers make calls of their own";
#endif
  for (const char* words :
       {"check", "check --json", "bags", "bags --all", "diet draws", "need spring-cows", "outlook",
        "outlook --json", "price spring-cows", "price spring-cows --json", "sources", "--help"}) {
    SCOPED_TRACE(words);
    const FreshFolder folder("northern");
    int changes = 0, sockets = 0, calls = 0;
    const Traced traced = run_traced(folder.path(), words, [&](const SystemCall& call) {
      ++calls;
      changes += changes_files(call) ? 1 : 0;
      sockets += opens_a_socket(call) ? 1 : 0;
      return Then::go_on;
    });
    if (!traced.possible) GTEST_SKIP() << "ptrace is forbidden here";
    EXPECT_GT(calls, 20);
    EXPECT_LE(traced.exit, 1) << traced.output;
    EXPECT_EQ(changes, 0);
    EXPECT_EQ(sockets, 0);
  }
}

TEST(ReadingCommands, WritingOnesAreSeenToWrite) {
  const FreshFolder folder("northern");
  int changes = 0;
  const Traced traced = run_traced(folder.path(), "mark 26-draws-08 spoiled --date 2026-09-05",
                                   [&](const auto& call) {
                                     changes += changes_files(call) ? 1 : 0;
                                     return Then::go_on;
                                   });
  if (!traced.possible) GTEST_SKIP() << "ptrace is forbidden here";
  EXPECT_EQ(traced.exit, 0) << traced.output;
  EXPECT_GT(changes, 8) << "or the counts above prove nothing";
}

}  // namespace
}  // namespace pluckbook::testing
