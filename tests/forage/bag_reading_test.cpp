#include "forage/bag_reading.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>
#include <vector>

#include "forage/ranch.h"

namespace pluckbook {
namespace {

/// The sd that an observation with so much noise leaves of the diet on its day.
double sd_after(double noise) {
  return std::sqrt(cp_variance * noise / (cp_variance + noise));
}

// Two results of one bag share what was plucked: only the laboratory's part is halved.
TEST(BagErrors, OfTwoResultsOfOneBagHalveTheLaboratorysPartAlone) {
  Ranch ranch;
  Bag& bag = ranch.bag(late_august, {{"cp", 7}});
  bag.results.push_back(bag.results[0]);
  bag.results[1].received += Days(1);
  EXPECT_NEAR(ranch.series().sd_on(cp, late_august), sd_after(stop / 20 + trip + lab / 2), 1e-12);
}

// One walk, two bags: the day's picker is off by the same amount in both.
TEST(BagErrors, OfTwoBagsOfOneDayHalveAllButTheTrip) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 6}});
  ranch.bag(late_august, {{"cp", 8}});
  const double noise = (stop / 20 + lab) / 2 + trip;
  EXPECT_NEAR(ranch.series().sd_on(cp, late_august), sd_after(noise), 1e-12);
  const double middle = (std::log(0.06) + std::log(0.08)) / 2;
  EXPECT_NEAR(ranch.series().on(cp, late_august).median.value(),
              std::exp(std::log(usual_cp) +
                       cp_variance / (cp_variance + noise) * (middle - std::log(usual_cp))),
              1e-12);
}

// 0.045 for another laboratory than last time, computed: reference/sampling_error.yaml.
TEST(BagErrors, OfAnotherLaboratoryThanTheUsualCountMore) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 7}}).results[0].lab = "county";
  ranch.bag(late_august, {{"cp", 7}}).results[0].lab = "state";
  const double first = stop / 20 + lab, other = stop / 20 + 0.045 * 0.045;
  EXPECT_NEAR(ranch.series().sd_on(cp, late_august), sd_after(trip + 1 / (1 / first + 1 / other)),
              1e-12);
}

// A laboratory that reads 20 % high all summer: its own later bags move the diet less than bags of
// the usual one would, since they are off together.
TEST(BagErrors, OfOneLaboratoryAreAlikeOnAllItsResults) {
  const auto sd_with = [](const std::string& second, const std::string& third) {
    Ranch ranch;
    const std::vector<std::string> labs = {"county", "county", "county", second, third};
    for (std::size_t i = 0; i < labs.size(); ++i)
      ranch.bag(Date(2026, 8, 1) + Days(static_cast<long>(i)), {{"cp", 8}}).results[0].lab =
          labs[i];
    return ranch.series().sd_on(cp, Date(2026, 8, 4));
  };
  EXPECT_LT(sd_with("county", "county"), sd_with("state", "campus"));
  EXPECT_LT(sd_with("state", "campus"), sd_with("state", "state"));
}

TEST(BagErrors, OfProteinAndEnergyAreApart) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 7}, {"tdn", 54}});
  const DietSeries series = ranch.series();
  const ForageClass& forage = *find_forage_class("northern_mixed_grass");
  const DietPrior prior(ranch.book, ranch.pasture(), forage, published_model(forage));
  const auto seen = observations_of(series.bags(), prior);
  ASSERT_EQ(seen.size(), 2U);
  EXPECT_EQ(shared_covariance(seen[0], seen[1]), 0);
  EXPECT_NEAR(shared_covariance(seen[0], seen[0]), stop / 20 + trip, 1e-15);
}

TEST(DietSeriesBags, AreReadInTheOrderTheyWerePlucked) {
  Ranch straight, turned;
  const std::vector<std::pair<Date, double>> bags = {
      {Date(2025, 7, 1), 11}, {Date(2025, 12, 30), 5}, {Date(2026, 6, 1), 14}};
  for (const auto& [day, value] : bags) straight.bag(day, {{"cp", value}, {"tdn", 60}});
  turned.book.bags.assign(straight.book.bags.rbegin(), straight.book.bags.rend());
  const DietSeries one = straight.series(), other = turned.series();
  EXPECT_EQ(one.on(cp, late_august).median, other.on(cp, late_august).median);
  EXPECT_EQ(one.sd_on(tdn, late_august), other.sd_on(tdn, late_august));
  EXPECT_EQ(other.bags()[0].bag->plucked, Date(2025, 7, 1));
}

TEST(DietSeriesBags, OfAnotherPastureAreNotIts) {
  Ranch ranch;
  ranch.bag(late_august, {{"cp", 6}}).pasture = "south";
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
  EXPECT_EQ(series.on(cp, late_august).median, only_good.series().on(cp, late_august).median);
}

TEST(DietSeriesBags, AResultThatWasCorrectedIsNotUsed) {
  Ranch ranch, corrected;
  Bag& bag = ranch.bag(late_august, {{"cp", 16}});
  bag.results.push_back(bag.results[0]);
  bag.results[1].received = Date(2026, 7, 20);
  bag.results[1].values["cp"] = 10;
  bag.results[1].supersedes = to_iso(bag.results[0].received);
  corrected.bag(late_august, {{"cp", 10}});
  EXPECT_EQ(ranch.series().bags()[0].results.size(), 1U);
  EXPECT_EQ(ranch.series().on(cp, late_august).median,
            corrected.series().on(cp, late_august).median);
}

TEST(DietSeriesBags, OneBadResultDoesNotHideTheGoodOneBesideIt) {
  Ranch ranch;
  Bag& bag = ranch.bag(late_august, {{"cp", 10}});
  bag.results.push_back(bag.results[0]);
  bag.results[1].values["cp"] = 100;
  const DietSeries series = ranch.series();
  EXPECT_TRUE(series.bags()[0].used);
  EXPECT_EQ(series.bags()[0].results.size(), 1U);
  EXPECT_EQ(series.bags()[0].problems.size(), 1U);
}

}  // namespace
}  // namespace pluckbook
