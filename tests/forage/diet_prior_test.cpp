#include "forage/diet_prior.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forage/ranch.h"

namespace pluckbook {
namespace {

DietPrior prior_of(const Ranch& ranch) {
  return {ranch.book, ranch.book.pastures[0], prairie(), published_model(prairie())};
}

TEST(DietPrior, IsTheClassCurveWithoutARecordedGreenUp) {
  const Ranch ranch;
  const Expected expected = prior_of(ranch).on(cp, late_august);
  EXPECT_NEAR(expected.mean, std::log(usual_cp), 1e-12);
  EXPECT_NEAR(expected.when.onset_slope, cp_slope, 1e-12);
  EXPECT_EQ(expected.when.year, 2026);
  EXPECT_EQ(date_of(expected.when), late_august);
  EXPECT_EQ(nutrient_of(expected.when), cp);
}

TEST(DietPrior, MovesWithARecordedGreenUpAndIsSurerOfIt) {
  Ranch ranch;
  ranch.green_up(Date(2026, 4, 25));  // ten days late
  const DietPrior prior = prior_of(ranch);
  EXPECT_NEAR(prior.on(cp, Date(2026, 6, 24)).mean, std::log(0.125), 1e-12);  // day 60
  EXPECT_NEAR(prior.on(cp, Date(2026, 6, 24)).when.onset_slope,
              prior_of(Ranch()).on(cp, Date(2026, 6, 14)).when.onset_slope * 0.3, 2e-3);  // 3 of 10
  EXPECT_NEAR(prior.on(cp, Date(2025, 6, 14)).mean, std::log(0.125), 1e-12);  // another year
  EXPECT_TRUE(prior.onset(2026).recorded);
  EXPECT_FALSE(prior.onset(2025).recorded);
}

// Grass that rises before the usual date belongs to the green-up that comes, not the one long past.
TEST(DietPrior, TurnsFromOneGreenUpToTheNextWhereTheCurveIsLowest) {
  const Ranch ranch;
  const DietPrior prior = prior_of(ranch);
  EXPECT_EQ(prior.onset_year(Date(2026, 4, 15)), 2026);
  EXPECT_EQ(prior.onset_year(Date(2027, 1, 10)), 2026);  // day 270
  EXPECT_EQ(prior.onset_year(Date(2027, 1, 11)), 2027);
  EXPECT_EQ(prior.onset_year(Date(2027, 4, 14)), 2027);
  EXPECT_EQ(prior.on(cp, Date(2027, 4, 14)).when.year, 2026);  // the season's label is its own
  Ranch early;
  early.green_up(Date(2026, 4, 1));  // 14 days early: nearest to the usual day of 2026
  EXPECT_NEAR(prior_of(early).on(cp, Date(2026, 4, 10)).mean, ClassCurve(prairie(), cp).at(9),
              1e-12);
}

TEST(DietPrior, TurnedAboutAnEstimateAgreesWithTheCurveThere) {
  const Ranch ranch;
  DietPrior prior = prior_of(ranch);
  prior.turn_about(2026, 12);
  const Date june_14(2026, 6, 14);
  const Expected expected = prior.on(cp, june_14);
  // At the estimate the straight line and the curve meet.
  EXPECT_NEAR(expected.mean + 12 * expected.when.onset_slope, ClassCurve(prairie(), cp).at(48),
              1e-12);
}

TEST(DietPrior, LevelAndDepthMoveAndStretchTheCurve) {
  const Ranch ranch;
  DietModel model = published_model(prairie());
  model.level = {0.1, 0};
  model.depth = {0.5, 1};
  const DietPrior prior(ranch.book, ranch.book.pastures[0], prairie(), model);
  const double mean = ClassCurve(prairie(), cp).mean();
  const Expected expected = prior.on(cp, late_august);
  EXPECT_NEAR(expected.mean, mean + 0.1 + 0.5 * (std::log(usual_cp) - mean), 1e-12);
  EXPECT_NEAR(expected.when.onset_slope, 0.5 * cp_slope, 1e-12);
  EXPECT_NEAR(expected.swing, std::log(usual_cp) - mean, 1e-12);
  EXPECT_NEAR(expected.slope, cp_slope, 1e-12);
}

}  // namespace
}  // namespace pluckbook
