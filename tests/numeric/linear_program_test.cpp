// linear_program_test.cpp - small programs whose answers can be checked with a pencil. All numbers
// are invented; expected values are computed in the comment above each.
#include "numeric/linear_program.h"

#include <gtest/gtest.h>

#include <cmath>

namespace pluckbook {
namespace {

/// min cost . x, x >= 0, rows at least `row_lower`: the shape most supplements have.
LinearProgram at_least(const Eigen::MatrixXd& a, const Eigen::VectorXd& cost,
                       const Eigen::VectorXd& row_lower) {
  return {.a = a,
          .cost = cost,
          .lower = Eigen::VectorXd::Zero(a.cols()),
          .upper = Eigen::VectorXd::Constant(a.cols(), no_bound),
          .row_lower = row_lower,
          .row_upper = Eigen::VectorXd::Constant(a.rows(), no_bound)};
}

/// min 0.40 cake + 0.15 hay;  cp: 0.36 cake + 0.08 hay >= 0.30
LinearProgram cake_or_hay() {
  return at_least(Eigen::RowVector2d(0.36, 0.08), Eigen::Vector2d(0.40, 0.15),
                  Eigen::VectorXd::Constant(1, 0.30));
}

void expect_proven(const LpAnswer& answer) {
  ASSERT_EQ(answer.status, LpStatus::optimal);
  EXPECT_LT(answer.certificate.primal_infeasibility, 1e-9);
  EXPECT_LT(answer.certificate.dual_infeasibility, 1e-9);
  EXPECT_LT(answer.certificate.gap, 1e-9);
}

// 0.30 kg CP: cake 0.30/0.36 = 0.8333 kg, $0.3333; hay 3.75 kg, $0.5625 -> cake.
// One more kg CP costs 0.40/0.36 = 1.1111; hay enters below 0.08 * 1.1111 = 0.0889.
TEST(LinearProgram, TheFeedWithTheCheaperProteinFillsTheGap) {
  const LpAnswer answer = solve(cake_or_hay());
  expect_proven(answer);
  EXPECT_NEAR(answer.objective, 1.0 / 3, 1e-12);
  EXPECT_NEAR(answer.x[0], 0.30 / 0.36, 1e-12);
  EXPECT_EQ(answer.x[1], 0);
  EXPECT_NEAR(answer.y[0], 0.40 / 0.36, 1e-12);
  EXPECT_EQ(answer.d[0], 0);
  EXPECT_NEAR(answer.d[1], 0.15 - 0.08 * 0.40 / 0.36, 1e-12);
}

// Cake stays the answer while 0.40 <= 0.15 * 0.36 / 0.08 = 0.675 and not below 0 (at a negative
// price more cake would always pay); hay while above 0.0889; any need from 0 up has the same price.
TEST(LinearProgram, RangingSaysWhenHayWouldComeIn) {
  const LinearProgram program = cake_or_hay();
  const LpRanging ranges = ranging(program, solve(program));
  EXPECT_NEAR(ranges.cost[0].low, 0, 1e-12);
  EXPECT_NEAR(ranges.cost[0].high, 0.675, 1e-12);
  EXPECT_NEAR(ranges.cost[1].low, 0.08 * 0.40 / 0.36, 1e-12);
  EXPECT_EQ(ranges.cost[1].high, no_bound);
  ASSERT_TRUE(ranges.rhs[0].has_value());
  EXPECT_NEAR(ranges.rhs[0]->low, 0, 1e-12);
  EXPECT_EQ(ranges.rhs[0]->high, no_bound);
}

// Cake at most 0.5 kg gives 0.18; hay the other 0.12 / 0.08 = 1.5 kg. 0.20 + 0.225 = 0.425.
// Protein now costs 0.15/0.08 = 1.875 a kg, so a kg more of cake saves 0.36 * 1.875 - 0.40 = 0.275.
TEST(LinearProgram, ACapSendsTheRestToTheNextFeed) {
  LinearProgram program = cake_or_hay();
  program.upper[0] = 0.5;
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_EQ(answer.x[0], 0.5);
  EXPECT_NEAR(answer.x[1], 1.5, 1e-12);
  EXPECT_NEAR(answer.objective, 0.425, 1e-12);
  EXPECT_NEAR(answer.y[0], 1.875, 1e-12);
  EXPECT_NEAR(answer.d[0], -0.275, 1e-12);
}

// Maximise 3 a + 5 b with a <= 4, 2 b <= 12, 3 a + 2 b <= 18: a 2, b 6, worth 36; the prices of
// the upper sides are 0, 3/2 and 1 (the Wyndor example of every textbook), here as costs < 0.
TEST(LinearProgram, UpperSidesHaveNegativePrices) {
  LinearProgram program;
  program.a = (Eigen::MatrixXd(3, 2) << 1, 0, 0, 2, 3, 2).finished();
  program.cost = Eigen::Vector2d(-3, -5);
  program.lower = Eigen::Vector2d::Zero();
  program.upper = Eigen::Vector2d::Constant(no_bound);
  program.row_lower = Eigen::Vector3d::Constant(-no_bound);
  program.row_upper = Eigen::Vector3d(4, 12, 18);
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_TRUE(answer.x.isApprox(Eigen::Vector2d(2, 6), 1e-12));
  EXPECT_NEAR(answer.objective, -36, 1e-12);
  EXPECT_TRUE(answer.y.isApprox(Eigen::Vector3d(0, -1.5, -1), 1e-12));
  const LpRanging ranges = ranging(program, answer);
  EXPECT_FALSE(ranges.rhs[0].has_value());    // 2 of 4: slack
  EXPECT_NEAR(ranges.rhs[1]->low, 6, 1e-12);  // a = (18 - b2) / 3 must stay within 0 and 4
  EXPECT_NEAR(ranges.rhs[1]->high, 18, 1e-12);
}

// A free amount may go below 0: min t with t >= x - 3, t >= 3 - x, x = 1 -> t = 2; and x alone
// at least -5 with no bound of its own -> -5.
TEST(LinearProgram, FreeAmountsMayGoBelowZero) {
  LinearProgram program = at_least((Eigen::MatrixXd(3, 2) << 1, -1, 1, 1, 0, 1).finished(),
                                   Eigen::Vector2d(1, 0), Eigen::Vector3d(-3, 3, 1));
  program.row_upper[2] = 1;
  program.lower.setConstant(-no_bound);
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_TRUE(answer.x.isApprox(Eigen::Vector2d(2, 1), 1e-12));

  LinearProgram alone = at_least(Eigen::MatrixXd::Ones(1, 1), Eigen::VectorXd::Ones(1),
                                 Eigen::VectorXd::Constant(1, -5));
  alone.lower[0] = -no_bound;
  EXPECT_NEAR(solve(alone).objective, -5, 1e-12);
}

// Kilograms of protein next to milligrams of copper (25 mg/kg cake, 5 mg/kg hay, asked 60 mg):
// the copper asks 2.4 kg of cake ($0.96) or 12 kg of hay ($1.80); cake meets the protein too.
TEST(LinearProgram, UnitsAMillionApartDoNotMatter) {
  const LinearProgram program =
      at_least((Eigen::MatrixXd(2, 2) << 0.36e-3, 0.08e-3, 25e6, 5e6).finished(),
               Eigen::Vector2d(0.40, 0.15), Eigen::Vector2d(0.30e-3, 60e6));
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_NEAR(answer.x[0], 2.4, 1e-12);
  EXPECT_NEAR(answer.y[1] * 60e6, 0.96, 1e-12);
}

TEST(LinearProgram, AWarmStartGivesTheSameAnswer) {
  LinearProgram program = cake_or_hay();
  const LpAnswer cold = solve(program);
  const LpAnswer again = solve(program, &cold.basis);
  EXPECT_EQ(again.x, cold.x);
  EXPECT_EQ(again.y, cold.y);
  EXPECT_EQ(again.basis.basic, cold.basis.basic);

  program.row_lower[0] = 0.9;
  program.upper[0] = 1;  // 0.36 from cake, 0.54 / 0.08 = 6.75 kg hay
  const LpAnswer warm = solve(program, &cold.basis);
  expect_proven(warm);
  EXPECT_NEAR(warm.x[1], 6.75, 1e-12);
  EXPECT_EQ(warm.x, solve(program).x);
}

TEST(LinearProgram, AStartOfAnotherShapeIsIgnored) {
  const LpBasis nonsense{.basic = {7, -3}, .at_upper = {1}};
  expect_proven(solve(cake_or_hay(), &nonsense));
  const LpBasis repeated{.basic = {9}, .at_upper = {1, 1, 1}};
  expect_proven(solve(cake_or_hay(), &repeated));
}

// Both feeds at most 0.4 kg reach 0.4 * 0.44 = 0.176 kg CP of the 0.30 asked.
TEST(LinearProgram, TooLittleOfEverythingIsProvenInfeasible) {
  LinearProgram program = cake_or_hay();
  program.upper.setConstant(0.4);
  const LpAnswer answer = solve(program);
  ASSERT_EQ(answer.status, LpStatus::infeasible);
  ASSERT_GT(answer.ray[0], 0);
  EXPECT_NEAR(farkas_margin(program, answer.ray) / answer.ray[0], 0.30 - 0.176, 1e-12);
  EXPECT_LE(farkas_margin(program, -answer.ray), 0) << "the opposite ray proves nothing";
}

TEST(LinearProgram, CrossingBoundsAreInfeasibleAndProveIt) {
  LinearProgram rows = cake_or_hay();
  rows.row_upper[0] = 0.25;  // at least 0.30, at most 0.25
  LpAnswer answer = solve(rows);
  EXPECT_EQ(answer.status, LpStatus::infeasible);
  EXPECT_EQ(answer.ray[0], 1);
  EXPECT_NEAR(farkas_margin(rows, answer.ray), 0.05, 1e-12);

  LinearProgram columns = cake_or_hay();
  columns.lower[1] = 2;
  columns.upper[1] = 1;
  answer = solve(columns);
  EXPECT_EQ(answer.status, LpStatus::infeasible);
  EXPECT_NEAR(farkas_margin(columns, answer.ray), 1, 1e-12);
}

TEST(LinearProgram, ACostThatFallsForEverIsUnbounded) {
  LinearProgram program = cake_or_hay();
  program.cost[1] = -0.01;
  EXPECT_EQ(solve(program).status, LpStatus::unbounded);
  program.upper[1] = 1e6;
  EXPECT_EQ(solve(program).status, LpStatus::optimal);
}

// A row without coefficients asks nothing at 0 and too much above; a column without coefficients
// stays at the bound where it costs least.
TEST(LinearProgram, EmptyRowsAndColumns) {
  LinearProgram program = at_least((Eigen::MatrixXd(2, 3) << 0.36, 0.08, 0, 0, 0, 0).finished(),
                                   Eigen::Vector3d(0.40, 0.15, -0.5), Eigen::Vector2d(0.30, 0));
  program.upper[2] = 2;
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_EQ(answer.x[2], 2);
  EXPECT_NEAR(answer.objective, 1.0 / 3 - 1, 1e-12);

  program.row_lower[1] = 0.1;
  const LpAnswer asked = solve(program);
  ASSERT_EQ(asked.status, LpStatus::infeasible);
  EXPECT_GT(farkas_margin(program, asked.ray), 0);
}

TEST(LinearProgram, NoRowsOrNoColumnsAtAll) {
  const LpAnswer no_rows =
      solve(at_least(Eigen::MatrixXd(0, 2), Eigen::Vector2d(1, 2), Eigen::VectorXd(0)));
  expect_proven(no_rows);
  EXPECT_EQ(no_rows.objective, 0);

  LinearProgram no_columns =
      at_least(Eigen::MatrixXd(2, 0), Eigen::VectorXd(0), Eigen::Vector2d(-1, 0));
  expect_proven(solve(no_columns));
  no_columns.row_lower[1] = 1;
  const LpAnswer asked = solve(no_columns);
  EXPECT_EQ(asked.status, LpStatus::infeasible);
  EXPECT_GT(farkas_margin(no_columns, asked.ray), 0);
}

// The same limit twice: the price may stand on either row, their sum is 1.1111.
TEST(LinearProgram, ADuplicatedRowIsPaidOnce) {
  LinearProgram program = at_least((Eigen::MatrixXd(2, 2) << 0.36, 0.08, 0.36, 0.08).finished(),
                                   Eigen::Vector2d(0.40, 0.15), Eigen::Vector2d(0.30, 0.30));
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_NEAR(answer.y.sum(), 0.40 / 0.36, 1e-12);

  program.row_upper = program.row_lower;  // and as equalities
  expect_proven(solve(program));
}

// Beale 1955 (recalled): the largest-slope rule alone cycles here for ever; the optimum is -0.05.
TEST(LinearProgram, BealesDegenerateExampleDoesNotCycle) {
  LinearProgram program;
  program.a =
      (Eigen::MatrixXd(3, 4) << 0.25, -60, -0.04, 9, 0.5, -90, -0.02, 3, 0, 0, 1, 0).finished();
  program.cost = Eigen::Vector4d(-0.75, 150, -0.02, 6);
  program.lower = Eigen::Vector4d::Zero();
  program.upper = Eigen::Vector4d::Constant(no_bound);
  program.row_lower = Eigen::Vector3d::Constant(-no_bound);
  program.row_upper = Eigen::Vector3d(0, 0, 1);
  const LpAnswer answer = solve(program);
  expect_proven(answer);
  EXPECT_NEAR(answer.objective, -0.05, 1e-12);
}

// The proof must notice an answer that is wrong: too little, too dear, or priced wrongly.
TEST(LinearProgram, TheCertificateNoticesAWrongAnswer) {
  const LinearProgram program = cake_or_hay();
  const LpAnswer right = solve(program);
  EXPECT_GT(certify(program, right.x * 0.99, right.y).primal_infeasibility, 1e-3);
  EXPECT_GT(certify(program, right.x * 1.01, right.y).gap, 1e-3);
  EXPECT_GT(certify(program, right.x, -right.y).dual_infeasibility, 1e-3);
  EXPECT_GT(certify(program, Eigen::Vector2d(0, 3.75), right.y).gap, 1e-1);
  Eigen::Vector2d broken = right.x;
  broken[1] = std::nan("");
  EXPECT_EQ(certify(program, broken, right.y).primal_infeasibility, no_bound);
}

}  // namespace
}  // namespace pluckbook
