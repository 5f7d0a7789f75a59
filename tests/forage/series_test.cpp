#include "forage/series.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "forage/ranch.h"

namespace pluckbook {
namespace {

constexpr double reach = 1.2815515655446004;  // of the 80 % range

TEST(Scale, GoesThereAndBack) {
  EXPECT_NEAR(to_scale(cp, Share(0.10)), std::log(0.10), 1e-15);
  EXPECT_NEAR(to_scale(tdn, Share(0.60)), std::log(1.5), 1e-15);
  for (const double share : {0.02, 0.3, 0.6, 0.9}) {
    EXPECT_NEAR(from_scale(cp, to_scale(cp, Share(share))).value(), share, 1e-15);
    EXPECT_NEAR(from_scale(tdn, to_scale(tdn, Share(share))).value(), share, 1e-15);
  }
}

TEST(DietSeriesWithNoBag, IsTheClassCurveWithItsWideBand) {
  const Ranch ranch;
  const DietSeries series = ranch.series();
  const DietPoint protein = series.on(cp, late_august);
  EXPECT_NEAR(protein.median.value(), usual_cp, 1e-12);
  EXPECT_NEAR(protein.low.value(), usual_cp * std::exp(-reach * std::sqrt(cp_variance)), 1e-9);
  EXPECT_NEAR(protein.high.value(), usual_cp * std::exp(reach * std::sqrt(cp_variance)), 1e-9);
  EXPECT_NEAR(to_scale(tdn, series.on(tdn, late_august).median), usual_logit_tdn, 1e-12);
  EXPECT_NEAR(series.sd_on(tdn, late_august), std::sqrt(tdn_variance), 1e-12);
  EXPECT_NEAR(series.class_curve(cp, late_august).value(), usual_cp, 1e-12);
  EXPECT_FALSE(series.model().refit.has_value());
  EXPECT_FALSE(series.linear(cp, late_august).has_value());
  EXPECT_FALSE(series.cubic(cp, late_august).has_value());
  EXPECT_TRUE(series.bags().empty());
}

TEST(DietSeriesCurve, MovesWithThePasturesGreenUp) {
  Ranch ranch;
  ranch.pasture().green_up_month = 5;
  ranch.pasture().green_up_day = 1;
  EXPECT_NEAR(ranch.series().class_curve(cp, Date(2026, 6, 30)).value(), 0.125, 1e-12);
}

TEST(DietSeriesCurve, StandsOnItsHeadSouthOfTheEquator) {
  Ranch ranch;
  ranch.pasture().green_up_month = 10;
  ranch.pasture().green_up_day = 1;
  const DietSeries series = ranch.series();
  EXPECT_NEAR(series.class_curve(cp, Date(2026, 11, 30)).value(), 0.125, 1e-12);  // day 60
  EXPECT_NEAR(series.class_curve(cp, Date(2027, 1, 29)).value(), 0.080, 1e-12);   // day 120
  EXPECT_GT(series.class_curve(cp, Date(2026, 11, 15)),
            series.class_curve(cp, Date(2026, 6, 14)) * 1.5);
}

TEST(DietSeriesCurve, HasEveryDayOfALeapYear) {
  const Ranch ranch;
  const auto days = ranch.series().days(cp, Date(2024, 1, 1), Date(2024, 12, 31));
  ASSERT_EQ(days.size(), 366U);
  EXPECT_EQ(days[59].date, Date(2024, 2, 29));
  for (const DietPoint& day : days) {
    EXPECT_LT(day.low, day.median);
    EXPECT_LT(day.median, day.high);
  }
}

// One observation in closed form: the median moves by variance / (variance + noise) of the way.
TEST(DietSeriesCurve, HasItsMedianAndItsBandAmongItsQuantiles) {
  Ranch ranch;
  ranch.bag(Date(2026, 8, 1), {{"cp", 7.5}, {"tdn", 55}});
  const DietSeries series = ranch.series();
  const auto expect = [&](double share, Share DietPoint::*of) {
    const DietSeries::Both both = series.quantiles(late_august, share);
    EXPECT_NEAR(both.crude_protein.value(), (series.on(cp, late_august).*of).value(), 1e-12);
    EXPECT_NEAR(both.tdn.value(), (series.on(tdn, late_august).*of).value(), 1e-12);
  };
  expect(0.1, &DietPoint::low);
  expect(0.5, &DietPoint::median);
  expect(0.9, &DietPoint::high);
}

TEST(DietSeriesWithOneBag, MovesTowardsItByTheShareItsNoiseAllows) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 6.5}});
  const DietSeries series = ranch.series();
  const double noise = stop / 20 + trip + lab;
  const double weight = cp_variance / (cp_variance + noise);
  const double expected = std::log(usual_cp) + weight * std::log(0.065 / usual_cp);
  EXPECT_NEAR(series.on(cp, late_august).median.value(), std::exp(expected), 1e-12);
  EXPECT_NEAR(series.sd_on(cp, late_august), std::sqrt(cp_variance * (1 - weight)), 1e-12);
  // No energy in it, but the two fall together.
  EXPECT_NEAR(to_scale(tdn, series.on(tdn, late_august).median),
              usual_logit_tdn + cp_with_tdn / (cp_variance + noise) * std::log(0.065 / usual_cp),
              1e-12);
  EXPECT_NEAR(series.sd_on(tdn, late_august),
              std::sqrt(tdn_variance - cp_with_tdn * cp_with_tdn / (cp_variance + noise)), 1e-12);
}

TEST(DietSeriesWithOneBag, FewerStopsMoveItLess) {
  const auto median_with = [](std::optional<int> stops) {
    Ranch ranch;
    ranch.bag(late_august, {{"cp", 6}}).stops = stops;
    return ranch.series().on(cp, late_august).median;
  };
  EXPECT_LT(median_with(20), median_with(5));
  EXPECT_LT(median_with(5), median_with(1));
  EXPECT_EQ(median_with(std::nullopt), median_with(10));  // unwritten: taken as few
}

TEST(DietSeriesWithOneBag, TdnPredictedFromFibreMovesItLessThanAPrintedOne) {
  Ranch printed, predicted;
  printed.bag(late_august, {{"tdn", 50.729}});
  predicted.bag(late_august, {{"adf", 49}});  // 88.9 - 0.779 x 49 = 50.729
  const DietPoint by_lab = printed.series().on(tdn, late_august);
  const DietPoint by_fibre = predicted.series().on(tdn, late_august);
  EXPECT_LT(by_lab.median, by_fibre.median);
  EXPECT_LT(by_fibre.median, from_scale(tdn, usual_logit_tdn));
  EXPECT_LT(by_lab.high - by_lab.low, by_fibre.high - by_fibre.low);
}

TEST(DietSeriesForage, MustBeAPublishedClass) {
  Ranch ranch;
  ranch.pasture().forage = "tallgras";
  const auto series = DietSeries::of(ranch.book, ranch.pasture());
  ASSERT_FALSE(series.ok());
  EXPECT_EQ(to_text(series.problems()[0]),
            "pastures.yaml:3:1: pasture 'north': no forage class 'tallgras'\n"
            "  did you mean 'tallgrass'?\n");
}

// The season runs on through New Year; a new year's level begins at green-up.
TEST(DietSeriesSeason, DoesNotBreakAtNewYearButAtGreenUp) {
  Ranch ranch;
  ranch.bag(Date(2025, 12, 31), {{"cp", 4}});
  ranch.bag(Date(2026, 4, 14), {{"cp", 7}});
  const DietSeries series = ranch.series();
  const auto step = [&](Date day) {
    return series.sd_on(cp, day + Days(1)) - series.sd_on(cp, day);
  };
  EXPECT_LT(std::abs(step(Date(2025, 12, 31))), 0.005);
  EXPECT_GT(step(Date(2026, 4, 14)), 0.05);
  EXPECT_TRUE(series.linear(cp, Date(2026, 1, 15)).has_value());
  EXPECT_FALSE(series.linear(cp, Date(2026, 4, 15)).has_value());
}

TEST(DietSeriesLines, RunStraightAndSmoothBetweenTheSeasonsBags) {
  Ranch ranch;
  ranch.bag(Date(2025, 6, 1), {{"cp", 20}});  // last season: not in this one's lines
  ranch.bag(Date(2026, 6, 1), {{"cp", 14}});
  ranch.bag(Date(2026, 7, 1), {{"cp", 9}});
  ranch.bag(Date(2026, 7, 1), {{"cp", 11}});
  ranch.bag(Date(2026, 8, 30), {{"cp", 7}});
  const DietSeries series = ranch.series();
  EXPECT_NEAR(series.linear(cp, Date(2026, 6, 16))->value(), 0.12, 1e-14);
  EXPECT_NEAR(series.linear(cp, Date(2026, 7, 1))->value(), 0.10, 1e-14);  // of 9 and 11
  EXPECT_NEAR(series.linear(cp, Date(2026, 10, 1))->value(), 0.07, 1e-14);
  EXPECT_NEAR(series.cubic(cp, Date(2026, 7, 1))->value(), 0.10, 1e-14);
  EXPECT_LT(series.cubic(cp, Date(2026, 6, 16))->value(), 0.12);  // steep first, then flatter
  EXPECT_FALSE(series.linear(tdn, Date(2026, 7, 1)).has_value());
}

TEST(DietSeriesSurprise, IsTheTwoSidedTailWithTheErrorOfOneBag) {
  const Ranch ranch;
  const DietSeries series = ranch.series();
  EXPECT_NEAR(series.tail_probability(cp, late_august, Share(usual_cp), 20), 1, 1e-12);
  const double z = std::log(0.05 / usual_cp) / std::sqrt(cp_variance + stop / 20 + trip + lab);
  EXPECT_NEAR(series.tail_probability(cp, late_august, Share(0.05), 20),
              std::erfc(-z / std::sqrt(2.0)), 1e-12);
  EXPECT_GT(series.tail_probability(cp, late_august, Share(0.05), 1),
            series.tail_probability(cp, late_august, Share(0.05), 20));
}

// Two routes: the formula for one more bag, and a book that really holds it.
TEST(DietSeriesNextBag, LeavesWhatABookHoldingItWouldLeave) {
  Ranch now;
  now.bag(Date(2026, 5, 20), {{"cp", 15}, {"tdn", 66}});
  Ranch later = now;
  later.bag(Date(2026, 7, 20), {{"cp", 9}, {"tdn", 58}}, 15);
  const Date target(2026, 8, 10);
  for (const DietNutrient nutrient : {cp, tdn}) {
    const double after = now.series().sd_after_bag(nutrient, target, Date(2026, 7, 20), 15);
    EXPECT_NEAR(after, later.series().sd_on(nutrient, target), 1e-12);
    EXPECT_LT(after, now.series().sd_on(nutrient, target));
  }
}

double correlation(const Eigen::ArrayXd& a, const Eigen::ArrayXd& b) {
  const Eigen::ArrayXd x = a - a.mean(), y = b - b.mean();
  return (x * y).sum() / std::sqrt(x.square().sum() * y.square().sum());
}

TEST(DietSeriesPaths, SpreadAsTheSeriesSaysAndFallTogether) {
  Ranch ranch;
  ranch.bag(Date(2026, 6, 1), {{"cp", 12}, {"tdn", 62}});
  const DietSeries series = ranch.series();
  constexpr int count = 4000;
  const auto paths = series.paths(late_august, late_august + Days(59), count, 4711);
  ASSERT_EQ(paths.crude_protein.rows(), 60);
  ASSERT_EQ(paths.tdn.cols(), count);
  EXPECT_EQ(paths.first, late_august);
  for (const int day : {0, 59}) {
    const Eigen::ArrayXd protein = paths.crude_protein.row(day).transpose().array().log();
    const Eigen::ArrayXd share = paths.tdn.row(day).transpose().array();
    const Eigen::ArrayXd energy = (share / (1 - share)).log();
    const Date date = late_august + Days(day);
    const double sd = series.sd_on(cp, date), energy_sd = series.sd_on(tdn, date);
    // Five standard errors: sd / sqrt(n) of a mean, sd / sqrt(2 n) of an sd.
    const double error = 5 / std::sqrt(count);
    EXPECT_NEAR(protein.mean(), to_scale(cp, series.on(cp, date).median), error * sd);
    EXPECT_NEAR(energy.mean(), to_scale(tdn, series.on(tdn, date).median), error * energy_sd);
    EXPECT_NEAR(std::sqrt((protein - protein.mean()).square().mean()), sd, error * sd);
    EXPECT_NEAR(std::sqrt((energy - energy.mean()).square().mean()), energy_sd, error * energy_sd);
    // 0.57 at most: the two stray over weeks of slightly different length.
    EXPECT_NEAR(correlation(protein, energy), 0.55, 0.07);
  }
}

TEST(DietSeriesPaths, AreTheSameForTheSameSeed) {
  const Ranch ranch;
  const DietSeries series = ranch.series();
  const auto one = series.paths(late_august, late_august + Days(20), 30, 1);
  const auto same = series.paths(late_august, late_august + Days(20), 30, 1);
  const auto other = series.paths(late_august, late_august + Days(20), 30, 2);
  EXPECT_EQ(one.crude_protein, same.crude_protein);
  EXPECT_EQ(one.tdn, same.tdn);
  EXPECT_NE(one.crude_protein, other.crude_protein);
}

}  // namespace
}  // namespace pluckbook
