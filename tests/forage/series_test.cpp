#include "forage/series.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace pluckbook {
namespace {

constexpr auto cp = DietNutrient::crude_protein;
constexpr auto tdn = DietNutrient::tdn;

// Semi-arid range (reference/seasonal_curves.yaml and sampling_error.yaml, computed or assumed
// there). Log CP: pasture 0.10, curve 0.12, year 0.15, wiggle 0.20, own season half of that.
constexpr double cp_variance = 0.01 + 0.0144 + 0.01 + 0.0225 + 0.04;
// Logit TDN: 0.08, 0.15, 0.12, 0.16, 0.08.
constexpr double tdn_variance = 0.0064 + 0.0225 + 0.0064 + 0.0144 + 0.0256;
constexpr double stop = 0.18 * 0.18, trip = 0.06 * 0.06, lab = 0.03 * 0.03;
constexpr double reach = 1.2815515655446004;  // of the 80 % range

const Date june_14(2026, 6, 14);  // 60 days after the class's green-up on 15 April

/// A book of one pasture of northern mixed prairie.
struct Ranch {
  Book book;

  Ranch() {
    Pasture pasture;
    pasture.id = "north";
    pasture.forage = "northern mixed-grass";
    pasture.origin = {"pastures.yaml", 3};
    book.pastures.push_back(pasture);
  }
  Pasture& pasture() { return book.pastures[0]; }

  Bag& bag(Date plucked, std::map<std::string, double> values, int stops = 20) {
    Bag one;
    one.id = "bag-" + std::to_string(book.bags.size());
    one.pasture = "north";
    one.plucked = plucked;
    one.stops = stops;
    if (!values.empty()) {
      one.results.emplace_back();
      one.results.back().received = plucked + Days(10);
      one.results.back().values = std::move(values);
    }
    book.bags.push_back(one);
    return book.bags.back();
  }

  DietSeries series() const&& = delete;  // the book must outlive its series
  DietSeries series() const& {
    auto made = DietSeries::of(book, book.pastures[0]);
    EXPECT_TRUE(made.ok());
    return *std::move(made);
  }
};

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
  const DietPoint protein = series.on(cp, june_14);
  EXPECT_NEAR(protein.median.value(), 0.125, 1e-12);
  EXPECT_NEAR(protein.low.value(), 0.125 * std::exp(-reach * std::sqrt(cp_variance)), 1e-9);
  EXPECT_NEAR(protein.high.value(), 0.125 * std::exp(reach * std::sqrt(cp_variance)), 1e-9);
  EXPECT_NEAR(series.on(tdn, june_14).median.value(), 0.64, 1e-12);
  EXPECT_NEAR(series.sd_on(tdn, june_14), std::sqrt(tdn_variance), 1e-12);
  EXPECT_NEAR(series.class_curve(cp, june_14).value(), 0.125, 1e-12);
  EXPECT_FALSE(series.linear(cp, june_14).has_value());
  EXPECT_FALSE(series.cubic(cp, june_14).has_value());
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
  EXPECT_GT(series.class_curve(cp, Date(2026, 11, 15)), series.class_curve(cp, june_14) * 1.5);
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
TEST(DietSeriesWithOneBag, MovesTowardsItByTheShareItsNoiseAllows) {
  Ranch ranch;
  ranch.bag(june_14, {{"cp", 10}});
  const DietSeries series = ranch.series();
  const double noise = stop / 20 + trip + lab;
  const double weight = cp_variance / (cp_variance + noise);
  const double expected = std::log(0.125) + weight * std::log(0.10 / 0.125);
  EXPECT_NEAR(series.on(cp, june_14).median.value(), std::exp(expected), 1e-12);
  EXPECT_NEAR(series.sd_on(cp, june_14), std::sqrt(cp_variance * (1 - weight)), 1e-12);
  EXPECT_NEAR(series.sd_on(tdn, june_14), std::sqrt(tdn_variance), 1e-12);  // no energy in it
}

TEST(DietSeriesWithOneBag, FewerStopsMoveItLess) {
  const auto median_with = [](std::optional<int> stops) {
    Ranch ranch;
    ranch.bag(june_14, {{"cp", 8}}).stops = stops;
    return ranch.series().on(cp, june_14).median;
  };
  EXPECT_LT(median_with(20), median_with(5));
  EXPECT_LT(median_with(5), median_with(1));
  EXPECT_EQ(median_with(std::nullopt), median_with(10));  // unwritten: taken as few
}

TEST(DietSeriesWithOneBag, TdnPredictedFromFibreMovesItLessThanAPrintedOne) {
  Ranch printed, predicted;
  printed.bag(june_14, {{"tdn", 57.74}});
  predicted.bag(june_14, {{"adf", 40}});  // 88.9 - 0.779 x 40 = 57.74
  const DietPoint by_lab = printed.series().on(tdn, june_14);
  const DietPoint by_fibre = predicted.series().on(tdn, june_14);
  EXPECT_LT(by_lab.median, by_fibre.median);
  EXPECT_LT(by_fibre.median, Share(0.64));
  EXPECT_LT(by_lab.high - by_lab.low, by_fibre.high - by_fibre.low);
}

// Two results of one bag share what was plucked: only the laboratory's part is halved.
TEST(DietSeriesReplicates, OfOneBagHalveTheLaboratorysErrorAndNotThePluckers) {
  Ranch ranch;
  Bag& bag = ranch.bag(june_14, {{"cp", 10}});
  bag.results.push_back(bag.results[0]);
  bag.results[1].received += Days(1);
  const double noise = stop / 20 + trip + lab / 2;
  EXPECT_NEAR(ranch.series().sd_on(cp, june_14),
              std::sqrt(cp_variance * noise / (cp_variance + noise)), 1e-12);
}

TEST(DietSeriesReplicates, OfTwoBagsOfOneDayHalveItAll) {
  Ranch ranch;
  ranch.bag(june_14, {{"cp", 9}});
  ranch.bag(june_14, {{"cp", 11}});
  const double noise = (stop / 20 + trip + lab) / 2;
  const double weight = cp_variance / (cp_variance + noise);
  EXPECT_NEAR(ranch.series().sd_on(cp, june_14), std::sqrt(cp_variance * (1 - weight)), 1e-12);
  const double middle = (std::log(0.09) + std::log(0.11)) / 2;
  EXPECT_NEAR(ranch.series().on(cp, june_14).median.value(),
              std::exp(std::log(0.125) + weight * (middle - std::log(0.125))), 1e-12);
}

// 0.045 for another laboratory than last time, computed: reference/sampling_error.yaml.
TEST(DietSeriesReplicates, OfAnotherLaboratoryCountLess) {
  Ranch ranch;
  ranch.bag(june_14, {{"cp", 10}}).results[0].lab = "county";
  Bag& second = ranch.bag(june_14, {{"cp", 10}});
  second.results[0].lab = "state";
  const double first = stop / 20 + trip + lab, other = stop / 20 + trip + 0.045 * 0.045;
  const double noise = 1 / (1 / first + 1 / other);
  EXPECT_NEAR(ranch.series().sd_on(cp, june_14),
              std::sqrt(cp_variance * noise / (cp_variance + noise)), 1e-12);
}

TEST(DietSeriesBags, AreReadInTheOrderTheyWerePlucked) {
  Ranch straight, turned;
  const std::vector<std::pair<Date, double>> bags = {
      {Date(2025, 7, 1), 11}, {Date(2025, 12, 30), 5}, {Date(2026, 6, 1), 14}};
  for (const auto& [day, value] : bags) straight.bag(day, {{"cp", value}, {"tdn", 60}});
  turned.book.bags.assign(straight.book.bags.rbegin(), straight.book.bags.rend());
  const DietSeries one = straight.series(), other = turned.series();
  EXPECT_EQ(one.on(cp, june_14).median, other.on(cp, june_14).median);
  EXPECT_EQ(one.sd_on(tdn, june_14), other.sd_on(tdn, june_14));
  EXPECT_EQ(other.bags()[0].bag->plucked, Date(2025, 7, 1));
}

TEST(DietSeriesBags, OfAnotherPastureAreNotIts) {
  Ranch ranch;
  ranch.bag(june_14, {{"cp", 6}}).pasture = "south";
  EXPECT_TRUE(ranch.series().bags().empty());
}

TEST(DietSeriesBags, SayWhyTheyAreNotUsed) {
  Ranch ranch;
  ranch.bag(Date(2026, 5, 1), {{"cp", 15}}).method = Method::clipped;
  ranch.bag(Date(2026, 5, 2), {});
  ranch.bag(Date(2026, 5, 3), {}).lost = Date(2026, 5, 30);
  ranch.bag(Date(2026, 5, 4), {{"cp", 15}}).spoiled = Date(2026, 5, 6);
  ranch.bag(Date(2026, 5, 5), {{"ndf", 60}});
  ranch.bag(Date(2026, 5, 6), {{"cp", 84}});
  ranch.bag(Date(2026, 5, 7), {{"cp", 15}});
  const DietSeries series = ranch.series();
  std::vector<std::string> why;
  for (const BagReading& bag : series.bags()) why.push_back(bag.used ? "used" : bag.why_not);
  EXPECT_EQ(why, (std::vector<std::string>{"clipped: stock select better than the sward",
                                           "no result yet", "lost", "spoiled",
                                           "the result holds neither protein nor energy",
                                           "crude protein 84 % is outside 0.5 to 45 %", "used"}));
  EXPECT_EQ(series.bags()[0].results.size(), 1U);  // kept and shown
  Ranch only_good;
  only_good.bag(Date(2026, 5, 7), {{"cp", 15}});
  EXPECT_EQ(series.on(cp, june_14).median, only_good.series().on(cp, june_14).median);
}

TEST(DietSeriesBags, AResultThatWasCorrectedIsNotUsed) {
  Ranch ranch, corrected;
  Bag& bag = ranch.bag(june_14, {{"cp", 16}});
  bag.results.push_back(bag.results[0]);
  bag.results[1].received = Date(2026, 7, 20);
  bag.results[1].values["cp"] = 10;
  bag.results[1].supersedes = to_iso(bag.results[0].received);
  corrected.bag(june_14, {{"cp", 10}});
  EXPECT_EQ(ranch.series().bags()[0].results.size(), 1U);
  EXPECT_EQ(ranch.series().on(cp, june_14).median, corrected.series().on(cp, june_14).median);
}

TEST(DietSeriesBags, OneBadResultDoesNotHideTheGoodOneBesideIt) {
  Ranch ranch;
  Bag& bag = ranch.bag(june_14, {{"cp", 10}});
  bag.results.push_back(bag.results[0]);
  bag.results[1].values["cp"] = 100;
  const DietSeries series = ranch.series();
  EXPECT_TRUE(series.bags()[0].used);
  EXPECT_EQ(series.bags()[0].results.size(), 1U);
  EXPECT_EQ(series.bags()[0].problems.size(), 1U);
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
  EXPECT_NEAR(series.tail_probability(cp, june_14, Share(0.125), 20), 1, 1e-12);
  const double z = std::log(0.06 / 0.125) / std::sqrt(cp_variance + stop / 20 + trip + lab);
  EXPECT_NEAR(series.tail_probability(cp, june_14, Share(0.06), 20), std::erfc(-z / std::sqrt(2.0)),
              1e-12);
  EXPECT_GT(series.tail_probability(cp, june_14, Share(0.06), 1),
            series.tail_probability(cp, june_14, Share(0.06), 20));
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
  const auto paths = series.paths(june_14, june_14 + Days(59), count, 4711);
  ASSERT_EQ(paths.crude_protein.rows(), 60);
  ASSERT_EQ(paths.tdn.cols(), count);
  EXPECT_EQ(paths.first, june_14);
  for (const int day : {0, 59}) {
    const Eigen::ArrayXd protein = paths.crude_protein.row(day).transpose().array().log();
    const Eigen::ArrayXd share = paths.tdn.row(day).transpose().array();
    const Eigen::ArrayXd energy = (share / (1 - share)).log();
    const Date date = june_14 + Days(day);
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
  const auto one = series.paths(june_14, june_14 + Days(20), 30, 1);
  const auto same = series.paths(june_14, june_14 + Days(20), 30, 1);
  const auto other = series.paths(june_14, june_14 + Days(20), 30, 2);
  EXPECT_EQ(one.crude_protein, same.crude_protein);
  EXPECT_EQ(one.tdn, same.tdn);
  EXPECT_NE(one.crude_protein, other.crude_protein);
}

}  // namespace
}  // namespace pluckbook
