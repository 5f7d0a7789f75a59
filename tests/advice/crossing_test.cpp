#include "advice/crossing.h"

#include <gtest/gtest.h>

#include "advice/a_book.h"

namespace pluckbook {
namespace {

using testing::day;

std::optional<int> run_in(const std::string& days) {
  return first_run(static_cast<int>(days.size()),
                   [&](int i) { return days[static_cast<std::size_t>(i)] == 'x'; });
}

TEST(FirstRun, SevenDaysInARowMakeAShortfallAndSixDoNot) {
  EXPECT_EQ(run_in("...xxxxxxx..."), 3);
  EXPECT_EQ(run_in("...xxxxxx......."), std::nullopt);
  EXPECT_EQ(run_in("xxx.xxxxxxx."), 4);
  EXPECT_EQ(run_in("............"), std::nullopt);
  EXPECT_EQ(run_in("xxxxxxxxxxxx"), 0);
}

TEST(FirstRun, ARunCutOffByTheHorizonCounts) {
  EXPECT_EQ(run_in("..........xx"), 10);
}

Turns turns_in(const std::string& days) {
  return turns_of(static_cast<int>(days.size()),
                  [&](int i) { return days[static_cast<std::size_t>(i)] == 'x'; });
}

TEST(Turns, TheFirstWholeWeekAboveAfterTheFallIsTheRecovery) {
  const Turns turns = turns_in("..xxxxxxx.x.......xxx");
  EXPECT_EQ(turns.falls, 2);
  EXPECT_EQ(turns.recovers, 11);
}

TEST(Turns, ADietThatNeverFallsHasNothingToRecoverFrom) {
  EXPECT_FALSE(turns_in("..............").falls);
  EXPECT_FALSE(turns_in("..............").recovers);
}

TEST(Turns, ARiseCutOffByTheHorizonIsNoRecoveryYet) {
  EXPECT_EQ(turns_in("xxxxxxx......").recovers, std::nullopt);
  EXPECT_EQ(turns_in("xxxxxxx.......").recovers, 7);
}

TEST(Crossing, DatesAreThoseByWhichThatShareOfAllPathsHasFallen) {
  // Ten paths: eight fall on days 1 to 8, two never. One in ten has fallen by day 1, five by day 5;
  // nine never have, so the late end is open.
  std::vector<std::optional<int>> runs;
  for (int i = 1; i <= 8; ++i) runs.emplace_back(i);
  runs.emplace_back(std::nullopt);
  runs.emplace_back(std::nullopt);
  const Crossing crossing = crossing_of(day("2026-08-01"), runs);
  EXPECT_EQ(to_iso(*crossing.low), "2026-08-02");
  EXPECT_EQ(to_iso(*crossing.median), "2026-08-06");
  EXPECT_FALSE(crossing.high);
  EXPECT_DOUBLE_EQ(crossing.probability_by_horizon, 0.8);
}

TEST(Crossing, NoPathsFallMeansNoDates) {
  const Crossing crossing = crossing_of(day("2026-08-01"), {std::nullopt, std::nullopt});
  EXPECT_FALSE(crossing.low || crossing.median || crossing.high);
  EXPECT_EQ(crossing.probability_by_horizon, 0);
}

}  // namespace
}  // namespace pluckbook
