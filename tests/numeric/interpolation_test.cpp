#include "numeric/interpolation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <utility>
#include <vector>

namespace pluckbook {
namespace {

const std::vector<Knot> steps = {{0, 1}, {10, 3}, {14, 3}, {30, -1}};

TEST(Linear, PassesTheKnotsAndTheMiddles) {
  for (const Knot& knot : steps) EXPECT_DOUBLE_EQ(linear_at(steps, knot.x), knot.y);
  EXPECT_DOUBLE_EQ(linear_at(steps, 5), 2);
  EXPECT_DOUBLE_EQ(linear_at(steps, 12), 3);
  EXPECT_DOUBLE_EQ(linear_at(steps, 18), 2);  // 3 - 4 x 4/16
}

TEST(Linear, KeepsTheNearestValueOutside) {
  EXPECT_EQ(linear_at(steps, -100), 1);
  EXPECT_EQ(linear_at(steps, 100), -1);
  EXPECT_EQ(linear_at(std::vector<Knot>{{4, 2}}, 9), 2);
}

TEST(MonotoneCubicCurve, PassesTheKnotsAndKeepsTheNearestValueOutside) {
  const MonotoneCubic curve(steps);
  for (const Knot& knot : steps) EXPECT_DOUBLE_EQ(curve.at(knot.x), knot.y);
  EXPECT_EQ(curve.at(-1), 1);
  EXPECT_EQ(curve.at(31), -1);
}

TEST(MonotoneCubicCurve, IsStraightThroughPointsOnALine) {
  const MonotoneCubic line({{0, 1}, {1, 3}, {5, 11}, {6, 13}});
  for (double x = 0; x <= 6; x += 0.25) EXPECT_NEAR(line.at(x), 1 + 2 * x, 1e-13);
  const MonotoneCubic two({{0, 4}, {8, 0}});
  EXPECT_DOUBLE_EQ(two.at(2), 3);
  EXPECT_EQ(MonotoneCubic({{3, 7}}).at(1), 7);
}

// Knots 0, 1, 3 with secants 2 and 1/2. Fritsch and Butland's weight at the middle knot is
// (1 + 2/3)/3 = 5/9, so its slope is 1 / (5/9 / 2 + 4/9 / 0.5) = 6/7. The first slope is
// 2 + (2 - 1/2) 1/3 = 5/2. Half way: (0 + 2)/2 + 1 (5/2 - 6/7)/8 = 1 + 23/112.
TEST(MonotoneCubicCurve, AgreesWithTheSlopesWorkedByHand) {
  const MonotoneCubic curve({{0, 0}, {1, 2}, {3, 3}});
  EXPECT_NEAR(curve.at(0.5), 1 + 23.0 / 112, 1e-14);
}

TEST(MonotoneCubicCurve, NeverOvershootsTheKnotsOnEitherSide) {
  constexpr unsigned seed = 4711;
  SCOPED_TRACE(::testing::Message() << "seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> gap(0.01, 30), height(-5, 5);
  for (int round = 0; round < 300; ++round) {
    std::vector<Knot> knots{{gap(random), height(random)}};
    while (knots.size() < 9) knots.push_back({knots.back().x + gap(random), height(random)});
    const MonotoneCubic curve(knots);
    for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
      const auto [low, high] = std::minmax(knots[i].y, knots[i + 1].y);
      double last = knots[i].y;
      for (int step = 1; step <= 40; ++step) {
        const double y = curve.at(knots[i].x + step * (knots[i + 1].x - knots[i].x) / 40);
        ASSERT_GE(y, low - 1e-12);
        ASSERT_LE(y, high + 1e-12);
        ASSERT_GE((y - last) * (knots[i + 1].y - knots[i].y), -1e-11);  // monotone in between
        last = y;
      }
    }
  }
}

// The slope is the same from both sides of a knot: no kinks, unlike straight lines.
TEST(MonotoneCubicCurve, HasNoKinks) {
  const MonotoneCubic curve({{0, 0}, {1, 2}, {3, 3}, {4, 6}});
  for (const double x : {1.0, 3.0}) {
    const double before = (curve.at(x) - curve.at(x - 1e-6)) / 1e-6;
    const double after = (curve.at(x + 1e-6) - curve.at(x)) / 1e-6;
    EXPECT_NEAR(before, after, 1e-4);
  }
}

// Standard normal quantiles as tabulated: Abramowitz and Stegun 1964, tables 26.5 and 26.6
// (recalled), the digits beyond the tables computed with 40-digit arithmetic.
TEST(Normal, QuantilesAreTheTabulatedOnes) {
  const std::vector<std::pair<double, double>> table = {{0.5, 0},
                                                        {0.6, 0.25334710313579974},
                                                        {0.75, 0.6744897501960817},
                                                        {0.9, 1.2815515655446006},
                                                        {0.975, 1.9599639845400539},
                                                        {0.99, 2.3263478740408408},
                                                        {0.999, 3.0902323061678133},
                                                        {1e-4, -3.7190164854556806},
                                                        {1e-9, -5.9978070150076869},
                                                        {1e-20, -9.2623400897984076},
                                                        {1e-300, -37.047096299361199}};
  for (const auto& [p, z] : table)
    EXPECT_NEAR(normal_quantile(p), z, 1e-14 * std::max(1.0, std::abs(z))) << "p = " << p;
}

TEST(Normal, QuantileInvertsTheDistributionOverItsWholeRange) {
  for (double z = -37; z <= 0; z += 0.03125)
    EXPECT_NEAR(normal_quantile(normal_cdf(z)), z, 4e-15 * std::max(1.0, -z)) << "z = " << z;
}

TEST(Normal, TailsMirrorEachOther) {
  for (const double p : {0.001953125, 0.0625, 0.25, 0.4375})  // 1 - p is exact
    EXPECT_EQ(normal_quantile(p), -normal_quantile(1 - p));
  EXPECT_EQ(normal_cdf(0), 0.5);
  EXPECT_DOUBLE_EQ(normal_cdf(1.5) + normal_cdf(-1.5), 1);
}

}  // namespace
}  // namespace pluckbook
