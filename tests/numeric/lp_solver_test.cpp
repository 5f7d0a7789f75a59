// lp_solver_test.cpp - a solver that keeps its desk answers as one that begins with an empty one.
#include "numeric/lp_solver.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "numeric/lp_random.h"

namespace pluckbook {
namespace {

constexpr unsigned solver_seed = 77;

LpShape some_shape(RandomPrograms& random) {
  if (random.once_in(5)) return LpShape::infeasible;
  return random.once_in(3) ? LpShape::degenerate : LpShape::plain;
}

LinearProgram some_program(RandomPrograms& random) {
  return random.program(random.whole(8, 25), random.whole(12, 40), some_shape(random));
}

TEST(LpSolver, KeepsNothingOfAnEarlierProgramButItsMemory) {
  SCOPED_TRACE(solver_seed);
  RandomPrograms random(solver_seed);
  LpSolver solver;
  for (int k = 0; k < 500; ++k) {
    const LinearProgram program = some_program(random);
    const LpAnswer fresh = solve(program);
    const LpAnswer& kept = solver.solve(program);
    ASSERT_EQ(kept.status, fresh.status);
    EXPECT_EQ(kept.basis.basic, fresh.basis.basic);
    if (fresh.status == LpStatus::infeasible) {
      EXPECT_EQ(kept.ray, fresh.ray);
    } else {
      EXPECT_EQ(kept.x, fresh.x);
      EXPECT_EQ(kept.y, fresh.y);
    }
  }
}

TEST(LpSolver, ASeasonOnTheLastBasisIsAsCheapAsEachDayBegunAnew) {
  SCOPED_TRACE(solver_seed + 1);
  RandomPrograms random(solver_seed + 1);
  for (int season = 0; season < 20; ++season) {
    LpSolver solver;
    LinearProgram day = random.program(12, 20, LpShape::plain);
    LpBasis last = solver.solve(day).basis;
    for (int k = 0; k < 30; ++k) {
      day = random.next_day(day);
      const LpAnswer& warm = solver.solve(day, &last);
      const LpAnswer cold = solve(day);
      ASSERT_EQ(warm.status, cold.status);
      if (cold.status != LpStatus::optimal) break;
      EXPECT_NEAR(warm.objective, cold.objective, 1e-9 * std::max(1.0, cold.objective));
      EXPECT_LT(certify(day, warm.x, warm.y).gap, 1e-9);
      last = warm.basis;
    }
  }
}

TEST(LpSolver, ALastCornerThatIsNotCheapestAnyMoreIsLeft) {
  LinearProgram p;  // one unit of either feed
  p.a = Eigen::MatrixXd::Ones(1, 2);
  p.cost = Eigen::Vector2d(1, 2);
  p.lower = Eigen::Vector2d(0, 0);
  p.upper = Eigen::Vector2d(9, 9);
  p.row_lower = Eigen::VectorXd::Constant(1, 1);
  p.row_upper = Eigen::VectorXd::Constant(1, 9);
  LpSolver solver;
  const LpBasis last = solver.solve(p).basis;
  EXPECT_EQ(solver.solve(p, &last).x, Eigen::Vector2d(1, 0));
  p.cost = Eigen::Vector2d(3, 2);
  EXPECT_EQ(solver.solve(p, &last).x, Eigen::Vector2d(0, 1));
  p.row_lower[0] = 20;
  EXPECT_EQ(solver.solve(p, &last).status, LpStatus::infeasible);
}

}  // namespace
}  // namespace pluckbook
