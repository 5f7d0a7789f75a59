// linear_program_glpk_test.cpp - the same answer as GLPK on invented programs, and ranges that hold
// just inside their ends and no longer just outside.
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "numeric/linear_program.h"
#include "numeric/lp_glpk.h"
#include "numeric/lp_random.h"

namespace pluckbook {
namespace {

constexpr unsigned seed = 4711;
constexpr int programs = 5000;
constexpr double tight = 1e-9;

/// One in ten infeasible, a quarter of the others degenerate.
LpShape shape_of(int number) {
  if (number % 10 == 0) return LpShape::infeasible;
  return number % 4 == 0 ? LpShape::degenerate : LpShape::plain;
}

/// 8 to 25 limits and 12 to 40 feeds.
LinearProgram next(RandomPrograms& random, int number) {
  const int rows = random.whole(8, 25);
  return random.program(rows, random.whole(12, 40), shape_of(number));
}

/// asked - reach with every product written out; the test's own arithmetic.
double margin_by_hand(const LinearProgram& p, const Eigen::VectorXd& ray) {
  long double asked = 0, reach = 0;
  for (int i = 0; i < ray.size(); ++i) {
    if (ray[i] > 0) asked += static_cast<long double>(ray[i]) * p.row_lower[i];
    if (ray[i] < 0) asked += static_cast<long double>(ray[i]) * p.row_upper[i];
  }
  for (int j = 0; j < p.a.cols(); ++j) {
    long double g = 0, size = 0;
    for (int i = 0; i < ray.size(); ++i) {
      g += static_cast<long double>(ray[i]) * p.a(i, j);
      size += std::abs(static_cast<long double>(ray[i]) * p.a(i, j));
    }
    if (std::abs(g) > 1e-13L * size) reach += g * (g > 0 ? p.upper[j] : p.lower[j]);
  }
  return static_cast<double>(asked - reach);
}

void expect_proven(const LinearProgram& p, const LpAnswer& answer) {
  if (answer.status == LpStatus::infeasible) {
    EXPECT_GT(farkas_margin(p, answer.ray), 0);
    EXPECT_GT(margin_by_hand(p, answer.ray), 0);
    return;
  }
  ASSERT_EQ(answer.status, LpStatus::optimal);
  const LpCertificate c = certify(p, answer.x, answer.y);
  EXPECT_LT(c.primal_infeasibility, 1e-9);
  EXPECT_LT(c.dual_infeasibility, 1e-9);
  EXPECT_LT(c.gap, 1e-9);
}

void expect_same(const LpAnswer& ours, LpStatus status, double objective) {
  ASSERT_EQ(ours.status, status);
  if (status != LpStatus::optimal) return;
  EXPECT_NEAR(ours.objective, objective, 1e-9 * std::max(0.001, std::abs(objective)));
}

TEST(LinearProgramGlpk, StatusAndObjectiveAgreeAndEveryAnswerIsProven) {
  RandomPrograms random(seed);
  int infeasible = 0;
  for (int number = 0; number < programs; ++number) {
    SCOPED_TRACE("seed " + std::to_string(seed) + ", program " + std::to_string(number));
    const LinearProgram p = next(random, number);
    Glpk glpk(p);
    glpk.scale();
    const LpStatus status = glpk.solve(GLP_PRIMAL, tight);
    const LpAnswer ours = solve(p);
    expect_same(ours, status, glpk.objective());
    expect_proven(p, ours);
    if (status == LpStatus::infeasible) ++infeasible;
    if (HasFailure()) return;
  }
  EXPECT_GE(infeasible, programs / 10);
  EXPECT_LE(infeasible, programs / 5);
}

TEST(LinearProgramGlpk, EveryFeedAloneAgrees) {
  RandomPrograms random(seed + 1);
  int possible = 0;
  for (int number = 0; number < 500; ++number) {
    LinearProgram p = next(random, number);
    const Eigen::VectorXd upper = p.upper;
    p.upper.setZero();
    Glpk glpk(p);
    glpk.scale();
    for (int j = 0; j < p.a.cols(); ++j) {
      SCOPED_TRACE("seed " + std::to_string(seed + 1) + ", program " + std::to_string(number) +
                   ", feed " + std::to_string(j));
      p.upper[j] = upper[j];
      glpk.bound(j, 0, upper[j]);
      glpk.from_scratch();
      const LpStatus status = glpk.solve(GLP_PRIMAL, tight);
      const LpAnswer ours = solve(p);
      expect_same(ours, status, glpk.objective());
      expect_proven(p, ours);
      if (HasFailure()) return;
      if (status == LpStatus::optimal) ++possible;
      p.upper[j] = 0;
      glpk.bound(j, 0, 0);
    }
  }
  EXPECT_GT(possible, 50) << "some feeds do it alone, or the test says little";
}

TEST(LinearProgramGlpk, AWarmStartAgreesWithAColdOne) {
  RandomPrograms random(seed + 2);
  for (int number = 0; number < 200; ++number) {
    SCOPED_TRACE("seed " + std::to_string(seed + 2) + ", program " + std::to_string(number));
    LinearProgram p = next(random, number);
    const LpBasis start = solve(p).basis;
    for (int j = 0; j < p.a.cols(); ++j) p.cost[j] *= random.between(0.7, 1.3);
    for (int i = 0; i < p.a.rows(); ++i) {
      if (p.row_lower[i] < p.row_upper[i]) p.row_lower[i] -= 0.1 * std::abs(p.row_lower[i]);
    }
    const LpAnswer cold = solve(p);
    const LpAnswer warm = solve(p, &start);
    expect_same(warm, cold.status, cold.objective);
    expect_proven(p, warm);
  }
}

double apart(double a, double b) {
  return std::abs(a - b) / std::max(1e-3, std::abs(b));
}

/// At a cost inside the range x is still the cheapest; outside something else is cheaper.
void check_cost(LinearProgram p, const LpAnswer& answer, int j, double end, int& ends) {
  const double now = p.cost[j];
  if (!std::isfinite(end) || std::abs(end - now) < 1e-6) return;
  ++ends;
  p.cost[j] = now + 0.999 * (end - now);
  EXPECT_LT(apart(solve(p).objective, p.cost.dot(answer.x)), 1e-9) << "inside, column " << j;
  p.cost[j] = end + 1e-3 * std::max(1.0, std::abs(end)) * (end > now ? 1 : -1);
  EXPECT_LT(solve(p).objective, p.cost.dot(answer.x) - 1e-9) << "outside, column " << j;
}

/// At a side inside the range the objective moves by y; outside it moves by more.
void check_side(LinearProgram p, const LpAnswer& answer, int i, double end, int& ends) {
  const bool at_lower = answer.y[i] > 0;
  double& side = at_lower ? p.row_lower[i] : p.row_upper[i];
  const double now = side;
  const double other = at_lower ? p.row_upper[i] : p.row_lower[i];
  const double size = p.a.row(i).cwiseAbs().maxCoeff();
  if (!std::isfinite(end) || end == other || std::abs(end - now) < 1e-6 * size) return;
  ++ends;
  side = now + 0.999 * (end - now);
  EXPECT_LT(apart(solve(p).objective, answer.objective + answer.y[i] * (side - now)), 1e-9)
      << "inside, row " << i;
  side = end + (end > now ? 1e-3 : -1e-3) * size;
  const LpAnswer outside = solve(p);
  if (outside.status == LpStatus::infeasible) return;
  EXPECT_GT(outside.objective, answer.objective + answer.y[i] * (side - now) + 1e-10)
      << "outside, row " << i;
}

TEST(LinearProgramRanging, HoldsJustInsideAndNoLongerOutside) {
  RandomPrograms random(seed + 3);
  int cost_ends = 0, side_ends = 0;
  for (int number = 0; number < 60; ++number) {
    SCOPED_TRACE("seed " + std::to_string(seed + 3) + ", program " + std::to_string(number));
    const int rows = random.whole(8, 25);
    const LinearProgram p = random.program(rows, random.whole(12, 40), LpShape::plain);
    const LpAnswer answer = solve(p);
    ASSERT_EQ(answer.status, LpStatus::optimal);
    const LpRanging ranges = ranging(p, answer);
    for (int j = 0; j < p.a.cols(); ++j) {
      const Interval& cost = ranges.cost[static_cast<size_t>(j)];
      check_cost(p, answer, j, cost.low, cost_ends);
      check_cost(p, answer, j, cost.high, cost_ends);
    }
    for (int i = 0; i < p.a.rows(); ++i) {
      const std::optional<Interval>& side = ranges.rhs[static_cast<size_t>(i)];
      EXPECT_EQ(side.has_value(), answer.y[i] != 0);
      if (!side) continue;
      check_side(p, answer, i, side->low, side_ends);
      check_side(p, answer, i, side->high, side_ends);
    }
    if (HasFailure()) return;
  }
  EXPECT_GT(cost_ends, 300);
  EXPECT_GT(side_ends, 50);
}

}  // namespace
}  // namespace pluckbook
