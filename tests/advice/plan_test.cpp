#include "advice/plan.h"

#include <gtest/gtest.h>

#include <numeric>

#include "advice/a_book.h"

namespace pluckbook {
namespace {

using testing::a_quote;
using testing::day;
using testing::with_feeds;

PlanSettings settings_to(const char* until) {
  PlanSettings settings;
  settings.schedule.windows.as_of = day("2026-08-25");
  settings.schedule.windows.until = day(until);
  settings.schedule.windows.paths = 200;
  return settings;
}

Plan planned(const Book& book, const PlanSettings& settings) {
  Result<Plan> plan = plan_for(book, book.herds[0], settings);
  EXPECT_TRUE(plan.ok()) << (plan.ok() ? "" : plan.problems().front().what);
  return std::move(*plan);
}

TEST(Windows, CoverEveryDayOnceAndChangeNoMoreOftenThanAsked) {
  const Book book = with_feeds();
  for (const int every : {1, 7, 14, 40, 400}) {
    WindowSettings settings{day("2026-08-25"), day("2026-12-01"), 0.8, every};
    const auto windows = windows_ahead(book, book.herds[0], settings);
    ASSERT_TRUE(windows.ok());
    Date next = settings.as_of;
    for (const FeedingWindow& window : *windows) {
      EXPECT_EQ(window.first, next);
      EXPECT_TRUE(window.days() == every || window.last == settings.until);
      next = window.last + Days(1);
    }
    EXPECT_EQ(next, settings.until + Days(1));
  }
}

TEST(Windows, ARestOfUnderHalfAWindowIsFedLikeTheOneBeforeIt) {
  const Book book = with_feeds();
  for (int days = 1; days <= 60; ++days) {
    for (const int every : {1, 2, 7, 14, 15}) {
      WindowSettings settings{day("2026-08-25"), day("2026-08-25") + Days(days - 1), 0.8, every};
      const auto windows = windows_ahead(book, book.herds[0], settings);
      ASSERT_TRUE(windows.ok());
      EXPECT_EQ(windows->back().last, settings.until);
      if (windows->size() == 1) {
        EXPECT_LT(2 * days, 3 * every);
        continue;
      }
      EXPECT_GE(2 * windows->back().days(), every) << days << " by " << every;
      EXPECT_LT(2 * windows->back().days(), 3 * every) << days << " by " << every;
    }
  }
  const auto four_weeks_and_six_days =
      windows_ahead(book, book.herds[0], {day("2026-09-01"), day("2026-10-04")});
  ASSERT_EQ(four_weeks_and_six_days->size(), 2U);
  EXPECT_EQ(four_weeks_and_six_days->back().first, day("2026-09-15"));
}

TEST(Windows, FollowAMoveThatLiesAhead) {
  Book book = with_feeds();
  Pasture south = book.pastures[0];
  south.id = "south";
  south.trip = 33;
  book.pastures.push_back(south);
  book.moves.push_back({day("2026-10-01"), "cows", "south", false, {}});
  const auto windows = windows_ahead(book, book.herds[0], {day("2026-09-01"), day("2026-10-31")});
  ASSERT_TRUE(windows.ok());
  EXPECT_EQ(windows->front().pasture->id, "north");
  EXPECT_EQ(windows->back().pasture->id, "south");
  EXPECT_DOUBLE_EQ(windows->back().trip_per_head, 0.33);
}

TEST(Schedule, AWindowIsFedTheCheapestMixOfItsMiddleDay) {
  const Book book = with_feeds();
  ScheduleSettings settings = settings_to("2026-10-05").schedule;
  settings.windows.paths = 0;
  const auto schedule = schedule_for(book, book.herds[0], settings);
  ASSERT_TRUE(schedule.ok());
  ASSERT_EQ(schedule->windows.size(), 3U);
  double cost = 0;
  for (const FedWindow& fed : schedule->windows) {
    const Mix again = cheapest_mix(fed.day.grazing, fed.offers);
    EXPECT_DOUBLE_EQ(fed.mix.cost().value(), again.cost().value());
    cost += again.feed_cost.value() * 100 * 14 + fed.trips * 20;
  }
  EXPECT_NEAR(schedule->cost(), cost, 1e-6);
  EXPECT_GT(schedule->cost(), 0);
}

// Sulfur is a ceiling on all she eats and drinks: what the water brings leaves the less for feed.
TEST(Schedule, CountsTheWaterOfThePastureTheyGraze) {
  Book book = with_feeds();
  book.feeds = {a_quote("distillers", "ddgs", 90), a_quote("cube", "range_cube_38", 475)};
  const auto most_distillers = [&] {
    const auto schedule = schedule_for(book, book.herds[0], settings_to("2026-12-01").schedule);
    EXPECT_TRUE(schedule.ok());
    double most = 0;
    for (const FedWindow& fed : schedule->windows)
      for (const MixPart& part : fed.mix.parts)
        if (fed.offers[part.offer].id == "distillers")
          most = std::max(most, part.dry_matter.value());
    return most;
  };
  const double sweet = most_distillers();
  book.pastures[0].water_sulfate_ppm = 1800;
  EXPECT_LT(most_distillers(), 0.9 * sweet);
}

TEST(Schedule, TheDeferralStaysTheLastOfTheCautions) {
  std::vector<std::string> all;
  join_cautions(all, {"urea", "ask"});
  join_cautions(all, {"sulfur", "urea", "ask"});
  EXPECT_EQ(all, (std::vector<std::string>{"urea", "sulfur", "ask"}));
}

TEST(Schedule, TripsAreTheFeedingDaysOfTheWindow) {
  Mix mix;
  EXPECT_EQ(trips_in(mix, 14), 0);
  mix.parts.emplace_back();
  for (const auto& [a_week, days, trips] :
       {std::tuple{7, 14L, 14}, {3, 14L, 6}, {3, 13L, 6}, {2, 14L, 4}, {0, 14L, 2}}) {
    mix.feedings_per_week = a_week;
    EXPECT_EQ(trips_in(mix, days), trips) << a_week << " " << days;
  }
}

TEST(Plan, WhatIsBoughtIsWhatIsFedAndWhatIsLost) {
  Book book = with_feeds();
  book.feeds[0].waste = 0.05;
  book.feeds[0].shrink = 0.02;
  const FeedOffer offer = *offer_of(book.feeds[0], day("2026-08-25"));
  const MixPart part{0, KgDmPerDay(0.9), KgAsFedPerDay(1), MoneyPerDay(1)};
  EXPECT_NEAR(bought_per_day(offer, part, 100), 100 / 0.95 / 0.98, 1e-9);
  // Priced as bought it costs what it costs as fed.
  EXPECT_NEAR(bought_per_day(offer, part, 1) * offer.cost->delivered().value(),
              offer.cost->fed().value(), 1e-12);
}

// One window, asked alike in the plan and in the outcomes: the cover of the one is the column of
// the other, but for the draws.
TEST(Plan, OneWindowsColumnIsItsCover) {
  const Book book = with_feeds();
  PlanSettings settings = settings_to("2026-09-07");
  settings.schedule.windows.paths = 2000;
  settings.schedule.windows.cover = 0.8;
  const Plan plan = planned(book, settings);
  double at_cover = 0, column = 0;
  for (const FeedDemand& demand : plan.demand)
    column += covering(demand.kg, 0.8) * demand.offer.cost->delivered().value();
  at_cover = plan.schedule.feed_cost();
  EXPECT_NEAR(column / at_cover, 1, 0.15);
}

TEST(Plan, TheSameSeedPlansTheSame) {
  const Book book = with_feeds();
  const Plan one = planned(book, settings_to("2026-11-25"));
  const Plan two = planned(book, settings_to("2026-11-25"));
  ASSERT_EQ(one.demand.size(), two.demand.size());
  for (std::size_t i = 0; i < one.demand.size(); ++i) EXPECT_EQ(one.demand[i].kg, two.demand[i].kg);
}

TEST(Plan, TheOrderCoversTheCriticalShareOfTheOutcomes) {
  const Book book = with_feeds();
  PlanSettings settings = settings_to("2026-11-25");
  settings.order.bought_late = 0.3;
  settings.order.left_over = 0.1;
  const Plan plan = planned(book, settings);
  EXPECT_DOUBLE_EQ(plan.order_cover, 0.75);
  ASSERT_FALSE(plan.demand.empty());
  for (const FeedDemand& demand : plan.demand) {
    const auto enough = std::count_if(demand.kg.begin(), demand.kg.end(),
                                      [&](double kg) { return kg <= demand.order_kg; });
    EXPECT_GE(enough, 150);
  }
}

TEST(Plan, TellsHowFarItHasCome) {
  const Book book = with_feeds();
  PlanSettings settings = settings_to("2026-11-25");
  std::vector<double> told;
  settings.progress = [&](double share) { told.push_back(share); };
  const Plan plan = planned(book, settings);
  EXPECT_EQ(told.size(), plan.schedule.windows.size());
  EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
  EXPECT_DOUBLE_EQ(told.back(), 1);
}

TEST(ConditionAhead, FeedingHoldsWhatDoingNothingLoses) {
  const Book book = with_feeds();
  const Plan plan = planned(book, settings_to("2027-02-01"));
  ASSERT_TRUE(plan.condition);
  EXPECT_LT(plan.condition->unfed, plan.condition->now);
  EXPECT_GT(plan.condition->fed, plan.condition->unfed + 0.3);
  EXPECT_LE(plan.condition->unfed_low, plan.condition->unfed_high);
}

TEST(ConditionAhead, BeginsAtTheNewestScoreOfTheHerd) {
  Book book = with_feeds();
  book.scores.push_back({day("2026-06-01"), "cows", 4.4, std::nullopt, std::nullopt, {}});
  book.scores.push_back({day("2026-08-01"), "cows", 5.6, std::nullopt, std::nullopt, {}});
  book.scores.push_back({day("2026-08-02"), "others", 3.0, std::nullopt, std::nullopt, {}});
  const Plan plan = planned(book, settings_to("2026-09-20"));
  EXPECT_DOUBLE_EQ(plan.condition->now, 5.6);
  EXPECT_EQ(plan.condition->scored, day("2026-08-01"));
}

TEST(Plan, AShortageWithoutFeedsIsAProblem) {
  Book book = with_feeds();
  book.feeds.clear();
  EXPECT_FALSE(plan_for(book, book.herds[0], settings_to("2026-11-25")));
}

}  // namespace
}  // namespace pluckbook
