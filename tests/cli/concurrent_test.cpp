// Many shells at one book: every command that said done is there, whole, once.
#include <gtest/gtest.h>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

constexpr int bags = 200;

std::string bag_id(int number) {
  return "b" + std::to_string(1000 + number);
}

// A book of bags without results, in two files; no herd, so that a result is quickly told.
void write_book(const std::filesystem::path& folder) {
  write_text(folder / "book.yaml", "pluckbook: 1\nname: Alder Bench\nunits: us\ncurrency: USD\n");
  write_text(folder / "pastures.yaml",
             "- {id: north, forage: northern mixed-grass}\n"
             "- {id: meadow, forage: northern mixed-grass}\n");
  write_text(folder / "herds.yaml", "# none\n");
  std::string files[2];
  for (int i = 0; i < bags; ++i) {
    files[i % 2] +=
        "- bag: " + bag_id(i) + "\n  plucked: 2026-06-12\n  # of walk " + std::to_string(i) + "\n";
  }
  write_text(folder / "samples/2026/north.yaml", files[0]);
  write_text(folder / "samples/2026/meadow.yaml", files[1]);
}

// A shell that starts its share of the results all at once and says what each answered.
std::string results_from_a_shell(const std::filesystem::path& folder, int first, int last) {
  std::string line = "( cd '" + folder.string() + "'; ";
  for (int i = first; i < last; ++i) {
    line += "{ " PLUCKBOOK_PROGRAM " result " + bag_id(i) + " cp=" + std::to_string(5 + i % 9) +
            " --date 2026-06-25 >out." + std::to_string(i) + " 2>&1; echo $? >>out." +
            std::to_string(i) + "; } & ";
  }
  return line + "wait; )";
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t times = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++times;
  return times;
}

TEST(Concurrent, TwoHundredResultsFromTwoShellsAreAllThere) {
  const FreshFolder folder;
  write_book(folder.path());
  shell(results_from_a_shell(folder.path(), 0, bags / 2) + " & " +
        results_from_a_shell(folder.path(), bags / 2, bags) + " & wait");
  const std::string text = read_text(folder.path() / "samples/2026/north.yaml") +
                           read_text(folder.path() / "samples/2026/meadow.yaml");
  for (int i = 0; i < bags; ++i) {
    const std::string said = read_text(folder.path() / ("out." + std::to_string(i)));
    ASSERT_TRUE(said.starts_with("result of bag " + bag_id(i) + " kept\n")) << said;
    ASSERT_TRUE(said.ends_with("\n0\n")) << said;
    const std::string record = "- bag: " + bag_id(i) +
                               "\n  plucked: 2026-06-12\n  results:\n"
                               "    - {received: 2026-06-25, basis: dry matter, cp: " +
                               std::to_string(5 + i % 9) + "}\n  # of walk " + std::to_string(i) +
                               "\n";
    EXPECT_EQ(count(text, record), 1U) << record;
  }
  EXPECT_EQ(count(text, "received:"), static_cast<std::size_t>(bags));
  EXPECT_NE(run_in(folder.path(), "check").output.find("200 bags"), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(folder.path() / ".lock"));
}

TEST(Concurrent, OfSixteenResultsForOneBagOneIsKept) {
  for (int round = 0; round < (long_run() ? 50 : 3); ++round) {
    const FreshFolder folder;
    write_book(folder.path());
    std::string line = "cd '" + folder.path().string() + "'; ";
    for (int i = 0; i < 16; ++i) {
      line += PLUCKBOOK_PROGRAM " result b1000 cp=" + std::to_string(5 + i % 9) + " & ";
    }
    const Ran ran = shell("{ " + line + " wait; } 2>&1");
    EXPECT_EQ(count(ran.output, "result of bag b1000 kept"), 1U) << ran.output;
    const std::string text = read_text(folder.path() / "samples/2026/north.yaml");
    EXPECT_EQ(count(text, "received:"), 1U) << text;
    EXPECT_EQ(run_in(folder.path(), "check").exit, 0);
  }
}

TEST(Concurrent, SixteenWritersAtOnceLoseNothing) {
  const int rounds = long_run() ? 50 : 3;
  const FreshFolder folder;
  write_book(folder.path());
  for (int round = 0; round < rounds; ++round) {
    std::string line = "cd '" + folder.path().string() + "'; ";
    for (int i = 0; i < 16; ++i) {
      line += PLUCKBOOK_PROGRAM " bag north --date 2026-07-06 --id w" + std::to_string(round) +
              "-" + std::to_string(i) + " & ";
    }
    const Ran ran = shell("{ " + line + " wait; } 2>&1");
    EXPECT_EQ(count(ran.output, " kept: "), 16U) << ran.output;
  }
  const std::string text = read_text(folder.path() / "samples/2026/north.yaml");
  EXPECT_EQ(count(text, "- bag: w"), static_cast<std::size_t>(16 * rounds));
  EXPECT_EQ(run_in(folder.path(), "check").exit, 0);
}

}  // namespace
}  // namespace pluckbook::testing
