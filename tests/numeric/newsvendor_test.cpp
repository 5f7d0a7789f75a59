// The order that costs least is found here by trying all orders, not by the ratio.
#include "numeric/newsvendor.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace pluckbook {
namespace {

std::vector<double> outcomes_of(std::mt19937& random, int count) {
  std::gamma_distribution<double> use(4, 3);
  std::vector<double> outcomes;
  for (int i = 0; i < count; ++i) outcomes.push_back(use(random));
  std::sort(outcomes.begin(), outcomes.end());
  return outcomes;
}

// The textbook's case: 9 too little against 3 too much covers three quarters of the outcomes.
TEST(Newsvendor, TheRatioIsTheShareOfBothCostsThatTooLittleHas) {
  EXPECT_DOUBLE_EQ(critical_ratio({9, 3}), 0.75);
  EXPECT_DOUBLE_EQ(critical_ratio({1, 1}), 0.5);
}

TEST(Newsvendor, ADearShortageOrdersMore) {
  const std::vector<double> tons = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
  EXPECT_DOUBLE_EQ(covering(tons, critical_ratio({1, 9})), 1);
  EXPECT_DOUBLE_EQ(covering(tons, critical_ratio({1, 1})), 5);
  EXPECT_DOUBLE_EQ(covering(tons, critical_ratio({9, 1})), 9);
  EXPECT_DOUBLE_EQ(covering(tons, 0), 1);
  EXPECT_DOUBLE_EQ(covering(tons, 1), 10);
}

TEST(Newsvendor, NoOtherOrderIsExpectedToCostLess) {
  const unsigned seed = 20261125;
  SCOPED_TRACE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> money(0.1, 10);
  for (int round = 0; round < 200; ++round) {
    const std::vector<double> outcomes = outcomes_of(random, 1 + round % 40);
    const OrderCosts costs{money(random), money(random)};
    const double order = covering(outcomes, critical_ratio(costs));
    const double least = risk_of(order, outcomes, costs).sum();
    for (double other = 0; other < 40; other += 0.05)
      ASSERT_LE(least, risk_of(other, outcomes, costs).sum() + 1e-9) << round << " " << other;
  }
}

TEST(Newsvendor, TheRiskOfAnOrderIsTheMeanOfWhatIsShortAndWhatIsLeft) {
  const std::vector<double> outcomes = {2, 4, 9};
  const OrderRisk risk = risk_of(4, outcomes, {10, 1});
  EXPECT_DOUBLE_EQ(risk.too_little, 50.0 / 3);
  EXPECT_DOUBLE_EQ(risk.too_much, 2.0 / 3);
}

}  // namespace
}  // namespace pluckbook
