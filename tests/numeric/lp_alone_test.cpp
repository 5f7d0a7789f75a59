// lp_alone_test.cpp - one amount in closed form answers as the simplex does.
#include "numeric/lp_alone.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "numeric/lp_random.h"

namespace pluckbook {
namespace {

constexpr unsigned alone_seed = 5;

/// One to three columns of an invented program, of which the first alone costs something.
LinearProgram one_that_costs(RandomPrograms& random) {
  const LpShape shape = random.once_in(4)   ? LpShape::infeasible
                        : random.once_in(3) ? LpShape::degenerate
                                            : LpShape::plain;
  const int columns = random.whole(1, 3);
  LinearProgram p = random.program(random.whole(2, 25), std::max(columns, 3), shape);
  p.a.conservativeResize(Eigen::NoChange, columns);
  for (Eigen::VectorXd* each : {&p.cost, &p.lower, &p.upper}) each->conservativeResize(columns);
  p.cost.tail(columns - 1).setZero();
  if (random.once_in(20)) p.cost[0] = -p.cost[0];
  if (random.once_in(20)) p.cost[0] = 0;
  return p;
}

void expect_same(const LinearProgram& p, const LpAnswer& alone, const LpAnswer& simplex) {
  ASSERT_EQ(alone.status, simplex.status);
  if (alone.status == LpStatus::infeasible) {
    EXPECT_GT(farkas_margin(p, alone.ray), 0);
  }
  if (alone.status != LpStatus::optimal) return;
  EXPECT_NEAR(alone.objective, simplex.objective, 1e-9 * std::max(1.0, simplex.objective));
  const LpCertificate c = certify(p, alone.x, alone.y);
  EXPECT_LT(std::max({c.primal_infeasibility, c.dual_infeasibility, c.gap}), 1e-9);
}

TEST(LpAlone, AgreesWithTheSimplexAndProvesIt) {
  RandomPrograms random(alone_seed);
  LpAlone alone;
  int possible = 0, impossible = 0, by_the_simplex = 0;
  for (int number = 0; number < 5000; ++number) {
    SCOPED_TRACE("seed " + std::to_string(alone_seed) + ", program " + std::to_string(number));
    const LinearProgram p = one_that_costs(random);
    ASSERT_TRUE(costs_one(p));
    const LpAnswer& answer = alone.solve(p);
    expect_same(p, answer, solve(p));
    if (HasFailure()) return;
    (answer.status == LpStatus::optimal ? possible : impossible) += 1;
    by_the_simplex += !answer.basis.basic.empty();
  }
  EXPECT_GT(possible, 500) << "or the test says little";
  EXPECT_GT(impossible, 500);
  EXPECT_LT(by_the_simplex, 50) << "the closed form is the rule";
}

TEST(LpAlone, AnIntervalPricesEveryFeedOfAMixAsItsOwnProgramDoes) {
  RandomPrograms random(alone_seed + 1);
  LpAlone alone;
  int possible = 0;
  for (int number = 0; number < 200; ++number) {
    const LinearProgram p = random.program(random.whole(2, 8), 12, LpShape::plain);
    for (int j = 0; j < p.a.cols(); ++j) {
      SCOPED_TRACE("seed " + std::to_string(alone_seed + 1) + ", program " +
                   std::to_string(number) + ", feed " + std::to_string(j));
      LinearProgram one = p;
      one.a = p.a.col(j);
      for (Eigen::VectorXd* each : {&one.cost, &one.lower, &one.upper})
        *each = each->segment(j, 1).eval();
      const Interval room = amounts_alone(p, ColumnIndex{j});
      const LpAnswer& answer = alone.solve(one);
      ASSERT_EQ(room.low <= room.high, answer.status == LpStatus::optimal);
      if (room.low > room.high) continue;
      ++possible;
      EXPECT_NEAR(room.low, answer.x[0], 1e-12 * std::max(1.0, room.low));
    }
  }
  EXPECT_GT(possible, 100) << "or the test says little";
}

/// A cube that brings 0.2 kg of protein a kilogram, where 0.3 is needed and 4 kg fill the cow.
LinearProgram a_cube() {
  LinearProgram p;
  p.a = Eigen::Vector2d(0.2, 1);
  p.cost = Eigen::VectorXd::Constant(1, 0.4);
  p.lower = Eigen::VectorXd::Zero(1);
  p.upper = Eigen::VectorXd::Constant(1, no_bound);
  p.row_lower = Eigen::Vector2d(0.3, -no_bound);
  p.row_upper = Eigen::Vector2d(no_bound, 4);
  return p;
}

TEST(LpAlone, IsTheCheapEndOfAnInterval) {
  const LpAnswer answer = LpAlone().solve(a_cube());
  EXPECT_DOUBLE_EQ(answer.x[0], 1.5);
  EXPECT_DOUBLE_EQ(answer.objective, 0.6);
  EXPECT_DOUBLE_EQ(answer.y[0], 2.0) << "money for one more kilogram of protein";
  EXPECT_DOUBLE_EQ(answer.y[1], 0);
  EXPECT_TRUE(answer.basis.basic.empty()) << "no simplex was asked";
}

TEST(LpAlone, NamesTheTwoRowsThatCross) {
  LinearProgram p = a_cube();
  p.row_lower[0] = 1;  // 5 kg, where 4 fill her
  const LpAnswer answer = LpAlone().solve(p);
  ASSERT_EQ(answer.status, LpStatus::infeasible);
  EXPECT_NEAR(farkas_margin(p, answer.ray), 1, 1e-12);
  EXPECT_NEAR(answer.ray[0], 5, 1e-12);
  EXPECT_NEAR(answer.ray[1], -1, 1e-12);
}

TEST(LpAlone, IsNotForSeveralFeeds) {
  LinearProgram two = a_cube();
  two.a = Eigen::MatrixXd::Ones(2, 2);
  two.cost = Eigen::Vector2d(0.4, 0.3);
  EXPECT_FALSE(costs_one(two));
  two.cost[1] = 0;
  EXPECT_TRUE(costs_one(two));
}

}  // namespace
}  // namespace pluckbook
