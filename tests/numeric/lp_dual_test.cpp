// lp_dual_test.cpp - where costs are 0 or more, the short way leads to the cheapest vertex itself.
#include "numeric/lp_dual.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <vector>

#include "numeric/lp_certificate.h"
#include "numeric/lp_random.h"
#include "numeric/lp_simplex.h"

namespace pluckbook {
namespace {

constexpr unsigned dual_seed = 91;
constexpr double tolerance = 1e-11;

LpDictionary begun(const LinearProgram& program) {
  Eigen::VectorXd row_weight;
  weigh_rows(program, row_weight);
  LpDictionary dictionary;
  dictionary.begin(program, row_weight);
  return dictionary;
}

TEST(BringWithinBounds, LeavesTheWalkNothingToDo) {
  RandomPrograms random(dual_seed);
  LpWalkRoom room;
  int possible = 0;
  for (int number = 0; number < 1000; ++number) {
    SCOPED_TRACE("seed " + std::to_string(dual_seed) + ", program " + std::to_string(number));
    const LpShape shape = number % 3 == 0 ? LpShape::degenerate : LpShape::plain;
    LpDictionary dictionary =
        begun(random.program(random.whole(8, 25), random.whole(12, 40), shape));
    bring_within_bounds(dictionary, tolerance);
    const LpWalk end = walk(dictionary, tolerance, room);
    if (end.end != LpWalk::End::optimal) continue;
    ++possible;
    EXPECT_EQ(end.steps, 0);
  }
  EXPECT_GT(possible, 900) << "some twists ask for what cannot be";
}

TEST(BringWithinBounds, LeavesADownhillCostAlone) {
  LinearProgram p;  // the more the better, and one unit is asked
  p.a = Eigen::MatrixXd::Ones(1, 1);
  p.cost = Eigen::VectorXd::Constant(1, -1);
  p.lower = Eigen::VectorXd::Zero(1);
  p.upper = Eigen::VectorXd::Constant(1, std::numeric_limits<double>::infinity());
  p.row_lower = Eigen::VectorXd::Constant(1, 1);
  p.row_upper = Eigen::VectorXd::Constant(1, 9);
  LpDictionary dictionary = begun(p);
  const std::vector<int> before = dictionary.basic;
  bring_within_bounds(dictionary, tolerance);
  EXPECT_EQ(dictionary.basic, before);
}

}  // namespace
}  // namespace pluckbook
