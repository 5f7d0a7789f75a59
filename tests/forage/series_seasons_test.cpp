// The diet series through odd books and odd years.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "forage/ranch.h"
#include "forage/series.h"

namespace pluckbook {
namespace {

void expect_sound(const DietSeries& series, Date first, Date last) {
  for (const DietNutrient nutrient : {cp, tdn})
    for (const DietPoint& day : series.days(nutrient, first, last)) {
      ASSERT_LT(day.low, day.median) << to_iso(day.date);
      ASSERT_LT(day.median, day.high) << to_iso(day.date);
      ASSERT_GT(day.low.value(), 0.01) << to_iso(day.date);
      ASSERT_LT(day.high.value(), 0.95) << to_iso(day.date);
    }
}

/// Every `step` days the class curve as it stands so many days after a green-up `late` days late.
void pluck_season(Ranch& ranch, int year, int late, int count, int step) {
  const ForageClass& forage = *find_forage_class("northern_mixed_grass");
  for (int i = 0; i < count; ++i) {
    const int since = 20 + i * step;
    const auto value = [&](DietNutrient nutrient) {
      return in_percent(from_scale(nutrient, ClassCurve(forage, nutrient).at(since)));
    };
    ranch.bag(day_in_year(year, 4, 15) + Days(late + since),
              {{"cp", value(cp)}, {"tdn", value(tdn)}});
  }
}

TEST(DietSeriesGreenUp, IsFoundFromBagsOfALateYear) {
  Ranch ranch;
  pluck_season(ranch, 2026, 20, 8, 14);
  const GreenUpEstimate found = ranch.series().green_up(Date(2026, 8, 1));
  EXPECT_EQ(found.usual, Date(2026, 4, 15));
  EXPECT_FALSE(found.recorded);
  EXPECT_LT(found.sd, 9);  // of 10 before any bag
  // Two sd of the prior late; a good pasture or a good year explains the same bags in part.
  EXPECT_GT(days_between(found.usual, found.date), 5);
  EXPECT_LE(days_between(found.usual, found.date), 21);
}

TEST(DietSeriesGreenUp, OfAYearWithoutBagsIsTheUsualOne) {
  const Ranch ranch;
  const GreenUpEstimate found = ranch.series().green_up(Date(2026, 8, 1));
  EXPECT_EQ(found.date, Date(2026, 4, 15));
  EXPECT_NEAR(found.sd, 10, 1e-9);
}

TEST(DietSeriesGreenUp, ARecordedDateMovesTheCurveAndNarrowsTheBand) {
  Ranch usual, seen;
  seen.green_up(Date(2026, 5, 3));
  const Date june_1(2026, 6, 1);
  EXPECT_GT(seen.series().on(cp, june_1).median, usual.series().on(cp, june_1).median);
  EXPECT_LT(seen.series().sd_on(cp, june_1), usual.series().sd_on(cp, june_1));
  EXPECT_TRUE(seen.series().green_up(june_1).recorded);
  EXPECT_EQ(seen.series().green_up(june_1).date, Date(2026, 5, 3));
  EXPECT_NEAR(seen.series().green_up(june_1).sd, 3, 1e-9);
  EXPECT_NEAR(seen.series().class_curve(cp, Date(2026, 7, 2)).value(), 0.125, 1e-12);
}

TEST(DietSeriesGreenUp, OfThisYearSaysNothingOfTheNext) {
  Ranch ranch;
  ranch.green_up(Date(2026, 5, 10));
  EXPECT_EQ(ranch.series().green_up(Date(2027, 6, 1)).date, Date(2027, 4, 15));
}

TEST(DietSeriesEvents, WidenTheBandUntilABagTellsWhatCameOfThem) {
  Ranch calm;
  calm.bag(Date(2026, 7, 20), {{"cp", 8}, {"tdn", 57}});
  Ranch rained = calm;
  rained.book.events.push_back({Date(2026, 8, 10), "north", EventKind::rain, "", {}});
  const auto sd = [](const Ranch& ranch, Date day) { return ranch.series().sd_on(cp, day); };
  EXPECT_EQ(sd(rained, Date(2026, 8, 9)), sd(calm, Date(2026, 8, 9)));
  EXPECT_NEAR(sd(rained, Date(2026, 8, 10)), std::hypot(sd(calm, Date(2026, 8, 10)), 0.22), 1e-9);
  EXPECT_NEAR(rained.series().on(cp, late_august).median / calm.series().on(cp, late_august).median,
              1, 1e-9);
  // The next green-up's grass knows nothing of it.
  EXPECT_NEAR(sd(rained, Date(2027, 6, 1)), sd(calm, Date(2027, 6, 1)), 1e-9);
  // A bag after it finds the regrowth, and speaks for the weeks that follow.
  rained.bag(Date(2026, 8, 20), {{"cp", 11}, {"tdn", 62}});
  calm.bag(Date(2026, 8, 20), {{"cp", 11}, {"tdn", 62}});
  EXPECT_GT(rained.series().on(cp, Date(2026, 9, 20)).median,
            calm.series().on(cp, Date(2026, 9, 20)).median);
  EXPECT_LT(rained.series().on(cp, Date(2026, 8, 5)).median,
            calm.series().on(cp, Date(2026, 8, 5)).median);
}

TEST(DietSeriesEvents, OfAnotherPastureAreNotIts) {
  Ranch calm, elsewhere;
  elsewhere.book.events.push_back({Date(2026, 8, 10), "south", EventKind::fire, "", {}});
  EXPECT_EQ(elsewhere.series().sd_on(cp, late_august), calm.series().sd_on(cp, late_august));
}

TEST(DietSeriesBooks, WithOneBagAlonePassNearItAndWidenAwayFromIt) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 6}});
  const DietSeries series = ranch.series();
  EXPECT_LT(series.sd_on(cp, late_august), series.sd_on(cp, late_august + Days(30)));
  EXPECT_LT(series.sd_on(cp, late_august + Days(30)), series.sd_on(cp, late_august + Days(90)));
  expect_sound(series, Date(2026, 1, 1), Date(2027, 12, 31));
}

TEST(DietSeriesBooks, WithNoBagAreSound) {
  const Ranch ranch;
  expect_sound(ranch.series(), Date(2026, 1, 1), Date(2027, 12, 31));
}

TEST(DietSeriesBooks, WithFortyBagsKnowTheNextSeasonBetterThanWithTen) {
  Ranch forty, ten;
  for (const int year : {2023, 2024, 2025, 2026}) pluck_season(forty, year, 0, 10, 14);
  pluck_season(ten, 2026, 0, 10, 14);
  const Date target(2027, 6, 14);
  EXPECT_EQ(forty.book.bags.size(), 40U);
  EXPECT_LT(forty.series().sd_on(cp, target), 0.95 * ten.series().sd_on(cp, target));
  expect_sound(forty.series(), Date(2023, 1, 1), Date(2027, 12, 31));
}

TEST(DietSeriesBooks, WithTwoBagsOnOneDayStandBetweenThem) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 5}});
  ranch.bag(late_august, {{"cp", 9}});
  const Share median = ranch.series().on(cp, late_august).median;
  EXPECT_GT(median, Share(0.05));
  EXPECT_LT(median, Share(0.09));
}

TEST(DietSeriesBooks, WithBagsInTheWrongOrderSayTheSame) {
  Ranch straight, turned;
  pluck_season(straight, 2026, -5, 9, 17);
  turned.book.bags.assign(straight.book.bags.rbegin(), straight.book.bags.rend());
  for (const DietNutrient nutrient : {cp, tdn}) {
    EXPECT_EQ(straight.series().on(nutrient, late_august).median,
              turned.series().on(nutrient, late_august).median);
    EXPECT_EQ(straight.series().sd_on(nutrient, late_august),
              turned.series().sd_on(nutrient, late_august));
  }
}

TEST(DietSeriesBooks, WithABagOf1998StillLearnFromItWhatLasts) {
  Ranch ranch;
  ranch.bag(Date(1998, 8, 28), {{"cp", 5}});
  const DietSeries series = ranch.series();
  EXPECT_LT(series.on(cp, late_august).median.value(), usual_cp);  // its level and season stay
  EXPECT_GT(series.on(cp, late_august).median, series.on(cp, Date(1998, 8, 28)).median);
  EXPECT_GT(series.sd_on(cp, late_august), 0.8 * std::sqrt(cp_variance));
  EXPECT_LT(series.sd_on(cp, late_august), std::sqrt(cp_variance));
}

TEST(DietSeriesBooks, HaveALeapDayLikeAnyOther) {
  Ranch ranch;
  ranch.bag(Date(2024, 2, 29), {{"cp", 5}});
  const DietSeries series = ranch.series();
  EXPECT_EQ(series.days(cp, Date(2024, 2, 1), Date(2024, 3, 1)).size(), 30U);
  EXPECT_LT(series.sd_on(cp, Date(2024, 2, 29)), series.sd_on(cp, Date(2024, 3, 10)));
  EXPECT_NEAR(series.on(cp, Date(2024, 2, 28)).median / series.on(cp, Date(2024, 2, 29)).median, 1,
              0.02);
  expect_sound(series, Date(2024, 1, 1), Date(2025, 3, 1));
}

TEST(DietSeriesBooks, RunAcrossNewYearWithoutASeam) {
  Ranch ranch;
  pluck_season(ranch, 2025, 0, 12, 20);
  const DietSeries series = ranch.series();
  const auto step = [&](Date day) {
    return std::abs(series.on(cp, day + Days(1)).median / series.on(cp, day).median - 1);
  };
  const double new_year = step(Date(2025, 12, 31));
  EXPECT_LT(new_year, 2 * std::max(step(Date(2025, 12, 30)), step(Date(2026, 1, 1))));
  // A bag of December speaks for January: the season is one.
  Ranch with_december = ranch;
  with_december.bag(Date(2025, 12, 28), {{"cp", 6}});
  EXPECT_LT(with_december.series().sd_on(cp, Date(2026, 1, 10)),
            0.8 * series.sd_on(cp, Date(2026, 1, 10)));
}

TEST(DietSeriesBooks, SouthOfTheEquatorAreTheNorthernOnesHalfAYearOn) {
  Ranch north, south;
  south.pasture().green_up_month = 10;
  south.pasture().green_up_day = 15;
  const Date spring(2026, 4, 15), southern_spring(2026, 10, 15);
  for (const int day : {20, 50, 90, 140}) {
    north.bag(spring + Days(day), {{"cp", 12 - day / 20.0}});
    south.bag(southern_spring + Days(day), {{"cp", 12 - day / 20.0}});
  }
  for (const int day : {10, 60, 120, 200, 300}) {  // past New Year too
    const DietPoint a = north.series().on(cp, spring + Days(day));
    const DietPoint b = south.series().on(cp, southern_spring + Days(day));
    EXPECT_NEAR(a.median.value(), b.median.value(), 1e-9) << day;
    EXPECT_NEAR(a.high.value(), b.high.value(), 1e-9) << day;
  }
}

}  // namespace
}  // namespace pluckbook
