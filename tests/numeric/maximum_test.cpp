#include "numeric/maximum.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace pluckbook {
namespace {

using Eigen::Vector2d;
using Eigen::VectorXd;

TEST(Climb, FindsTheTopOfABentRidge) {
  // Rosenbrock's valley upside down, its top at (1, 1).
  const auto ridge = [](const VectorXd& x) {
    const double across = x(1) - x(0) * x(0);
    return Slope{-100 * across * across - (1 - x(0)) * (1 - x(0)),
                 Vector2d(400 * x(0) * across + 2 * (1 - x(0)), -200 * across)};
  };
  const Maximum top = climb(ridge, Vector2d(-1.2, 1), {200});
  EXPECT_NEAR(top.at(0), 1, 1e-6);
  EXPECT_NEAR(top.at(1), 1, 1e-6);
  EXPECT_NEAR(top.value, 0, 1e-12);
  EXPECT_LT(climb(ridge, Vector2d(-1.2, 1), {3}).value, -1);  // the steps ran out
}

TEST(Climb, StaysWhereTheFunctionExists) {
  // log x - x, which has its top at 1 and does not exist below 0.
  const auto hill = [](const VectorXd& x) {
    if (x(0) <= 0) return Slope{-std::numeric_limits<double>::infinity(), VectorXd::Zero(1)};
    return Slope{std::log(x(0)) - x(0), VectorXd::Constant(1, 1 / x(0) - 1)};
  };
  EXPECT_NEAR(climb(hill, VectorXd::Constant(1, 0.05), {50}).at(0), 1, 1e-6);
}

TEST(Climb, WaitsAtTheSidesOfABox) {
  // The top of the box is on its side x = 0.5 at y = x^2, a way around the corner from the start.
  int outside = 0;
  const Box box{Vector2d(-1.5, -0.5), Vector2d(0.5, 1.2)};
  const auto ridge = [&](const VectorXd& x) {
    outside += (x.array() < box.low.array()).any() || (x.array() > box.high.array()).any();
    const double across = x(1) - x(0) * x(0);
    return Slope{-100 * across * across - (1 - x(0)) * (1 - x(0)),
                 Vector2d(400 * x(0) * across + 2 * (1 - x(0)), -200 * across)};
  };
  const Maximum top = climb(ridge, Vector2d(-1.2, 1), {200}, box);
  EXPECT_EQ(top.at(0), 0.5);
  EXPECT_NEAR(top.at(1), 0.25, 1e-6);
  EXPECT_NEAR(top.value, -0.25, 1e-12);
  EXPECT_EQ(outside, 0);
}

TEST(Climb, StopsAtOnceOnTheTop) {
  const auto flat = [](const VectorXd& x) { return Slope{3, VectorXd::Zero(x.size())}; };
  const Maximum top = climb(flat, Vector2d(4, 5), {10});
  EXPECT_EQ(top.at, Vector2d(4, 5));
  EXPECT_EQ(top.value, 3);
}

}  // namespace
}  // namespace pluckbook
