#include "forage/walk.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

// Stops for the mean within a share of the pasture's own, 19 times in 20, at the stop-to-stop CV of
// 18 % of single clips on 22 Florida pastures (computed): (1.96 x 18 / share)^2 by hand.
TEST(Walk, StopsByThePublishedStopToStopVariation) {
  EXPECT_EQ(plan_walk(0.05).stops, 50);  // 49.8
  EXPECT_EQ(plan_walk(0.10).stops, 13);  // 12.4
  EXPECT_EQ(plan_walk(0.15).stops, 6);   // 5.5
  EXPECT_EQ(plan_walk(0.20).stops, 4);   // 3.1
  EXPECT_EQ(plan_walk(0.08).stops, 20);  // 19.4
}

// The table beside the error model: sd of log CP 0.085 at 20 stops with another laboratory than
// last time (0.045); with the same one (0.03) sqrt(0.18^2 / 20 + 0.06^2 + 0.03^2) = 0.0782.
TEST(Walk, MoreStopsDoNotMendTheTripAndTheLaboratory) {
  EXPECT_NEAR(plan_walk(0.08).bag_within, 1.96 * 0.0782, 0.0005);
  EXPECT_GT(plan_walk(0.04).bag_within, 1.96 * 0.067);  // trip and laboratory alone: 0.0671
}

// One mile is 5280 ft; 20 stops part it into 264 ft, which is 105.6 paces of 2.5 ft.
TEST(Walk, PacesPartTheWalkEvenly) {
  EXPECT_EQ(paces_between(1609.344, 20), 106);
}

}  // namespace
}  // namespace pluckbook
