#include "advice/backtest.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "advice/a_book.h"

namespace pluckbook {
namespace {

using testing::a_book;
using testing::bag_of;
using testing::day;

Backtest replayed(const Book& book) {
  Result<Backtest> result = backtest(book, {&book.pastures[0]}, [](std::size_t, std::size_t) {});
  EXPECT_TRUE(result.ok()) << (result.ok() ? "" : result.problems().front().what);
  return result.ok() ? *std::move(result) : Backtest{};
}

const ForecastScore& score(const Backtest& result, std::size_t lead, Forecaster who) {
  return result.nutrients[0].leads[lead].by_forecaster[static_cast<std::size_t>(who)];
}

int judged(const Backtest& result) {
  int bags = 0;
  for (const LeadScores& lead : result.nutrients[0].leads) bags += lead.by_forecaster[0].bags;
  return bags;
}

// Bags of 25 May (15.5 % CP), 20 June (13.0) and 15 July (10.8), each answered nine days later.
// From the first: leads of 26 and 51 days; from the second: 25 days. By hand, last value: errors of
// 2.5 and 2.2 points within 45 days, of 4.7 beyond.
TEST(Backtest, HoldsEachForecastAgainstTheBagsThatFollowed) {
  const Book book = a_book();
  const Backtest result = replayed(book);
  EXPECT_EQ(result.results, 3);
  EXPECT_EQ(judged(result), 3);
  EXPECT_EQ(score(result, 0, Forecaster::last_value).bags, 2);
  EXPECT_NEAR(score(result, 0, Forecaster::last_value).rms_error,
              std::sqrt((2.5 * 2.5 + 2.2 * 2.2) / 2), 1e-9);
  EXPECT_NEAR(score(result, 1, Forecaster::last_value).rms_error, 4.7, 1e-9);
}

// The line through 15.5 on 25 May and 13.0 on 20 June (26 days) reaches 13.0 - 2.5 x 25 / 26 =
// 10.596 on 15 July, 0.204 under the bag; from the first bag alone the line is level: 2.5 and
// 0.204.
TEST(Backtest, TheStraightLineGoesOnThroughTheLastTwoBags) {
  const Book book = a_book();
  EXPECT_NEAR(score(replayed(book), 0, Forecaster::straight_line).rms_error,
              std::sqrt((2.5 * 2.5 + 0.2038462 * 0.2038462) / 2), 1e-6);
}

// A bag answered late is no part of what was known: nothing is forecast from it in time.
TEST(Backtest, UsesOnlyWhatWasKnownOnTheDay) {
  Book book = a_book();
  book.bags[0].results[0].received = day("2026-08-30");
  const Backtest result = replayed(book);
  EXPECT_EQ(judged(result), 1);  // the third bag, from the second
  EXPECT_NEAR(score(result, 0, Forecaster::straight_line).rms_error, 2.2, 1e-9);  // one bag: level
}

TEST(Backtest, ABagFarOutsideTheBandIsNotHeldByIt) {
  Book book = a_book();
  const int held = replayed(book).nutrients[0].leads[0].held;
  book.bags[2].results[0].values["cp"] = 4;
  EXPECT_LT(replayed(book).nutrients[0].leads[0].held, held);
}

// The date all bags tell: with a poor bag in August protein falls below need between the bags.
TEST(Backtest, JudgesShortfallDatesTheLaterBagsTell) {
  Book book = a_book();
  EXPECT_EQ(replayed(book).nutrients[0].dates[0].dates, 0);  // it falls after the last bag
  book.bags.push_back(bag_of("n4", "2026-08-20", 6.5, 53));
  const Backtest result = replayed(book);
  const auto& dates = result.nutrients[0].dates;
  EXPECT_EQ(dates[0].dates, 3);  // from the first three results; on the fourth it is below already
  // The newest bag stays, so it never falls: the error is that of a date at the horizon.
  EXPECT_GT(dates[1].mean_absolute_days, dates[0].mean_absolute_days);
}

TEST(Backtest, WithOneBagThereIsNothingToReplay) {
  Book book = a_book();
  book.bags.resize(1);
  const auto result = backtest(book, {&book.pastures[0]}, [](std::size_t, std::size_t) {});
  ASSERT_FALSE(result.ok());
  EXPECT_NE(result.problems()[0].what.find("nothing to replay"), std::string::npos);
}

TEST(Backtest, TellsHowFarItIs) {
  const Book book = a_book();
  std::vector<std::size_t> steps;
  ASSERT_TRUE(backtest(book, {&book.pastures[0]}, [&](std::size_t done, std::size_t of) {
    EXPECT_EQ(of, 3U);
    steps.push_back(done);
  }));
  EXPECT_EQ(steps, (std::vector<std::size_t>{1, 2, 3}));
}

}  // namespace
}  // namespace pluckbook
