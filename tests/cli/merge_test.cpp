// Two people keep the bags of one season, each in a copy of the book, and git brings them together.
#include <gtest/gtest.h>

#include <random>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

const std::string git = "git -c user.name=a -c user.email=a@example.org -c commit.gpgsign=false ";

/// A bag on some day of the season in some pasture, dried and mailed, with a tag of that person's.
std::string commands_of(const std::string& person, std::mt19937& random) {
  static const std::vector<std::string> pastures = {"draws", "stovepipe", "meadow"};
  const int day = std::uniform_int_distribution<int>(0, 150)(random);  // from 10 May
  const std::string pasture = pastures[std::uniform_int_distribution<std::size_t>(0, 2)(random)];
  const std::string date = "$(date -u -d '2026-05-10 + " + std::to_string(day) + " days' +%F)";
  const std::string bag = "26-" + pasture + "-" + person;
  const std::string later = " --as-of 2026-11-20 > /dev/null";
  return "pluckbook bag " + pasture + " --id " + bag + " --date " + date + later +
         " && pluckbook mark " + bag + " dried --date " + date + later + " && pluckbook mark " +
         bag + " sent --date " + date + later + " && pluckbook result " + bag +
         " dm=92 cp=7 tdn=55 --basis dry-matter" + later;
}

/// True where git joins both without asking, and the book then holds both bags.
bool merges(std::mt19937& random) {
  const FreshFolder book("northern");
  const auto run = [&](const std::string& line) {
    return run_line(book.path(), "{ " + line + "; } 2>&1");
  };
  const std::string keep = " && " + git + "commit -qam season";
  EXPECT_EQ(run(git + "init -qb main && git add -A" + keep + " && git branch other").exit, 0);
  const std::string mine = commands_of("ann", random), theirs = commands_of("bo", random);
  const Ran both = run(mine + keep + " && git checkout -q other && " + theirs + keep);
  EXPECT_EQ(both.exit, 0) << both.output;
  if (run(git + "merge -q main -m both").exit != 0) return false;
  EXPECT_LE(run("pluckbook check").exit, 1) << run("pluckbook check").output;
  EXPECT_EQ(run("cat samples/2026/*.yaml | grep -c -e '-ann$' -e '-bo$'").output, "2\n");
  return true;
}

TEST(TwoPeople, BagsOfOneSeasonMergeInNineTrialsOfTen) {
  if (shell("git --version").exit != 0) GTEST_SKIP() << "no git here";
  constexpr unsigned seed = 20260706;
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  const int trials = long_run() ? 100 : 20;
  int merged = 0;
  for (int trial = 0; trial < trials; ++trial) merged += merges(random) ? 1 : 0;
  RecordProperty("merged_in_100", 100 * merged / trials);
  EXPECT_GE(10 * merged, 9 * trials) << merged << " of " << trials;
}

}  // namespace
}  // namespace pluckbook::testing
