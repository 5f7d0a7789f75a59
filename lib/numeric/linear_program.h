// linear_program.h - least cost over a few feeds and a few limits, proven. Knows no cattle: columns
// are amounts with bounds and a cost, rows are limits with a side below, a side above, or both.
//
//   minimise    cost . x
//   subject to  row_lower <= a x <= row_upper,   lower <= x <= upper
//
// An infinite bound is +-infinity. Rows may be scaled as badly as the user's units make them.
#pragma once

#include <Eigen/Core>
#include <limits>
#include <optional>
#include <vector>

namespace pluckbook {

inline constexpr double no_bound = std::numeric_limits<double>::infinity();

/// A row and a column are different things; no bare int says which is meant.
enum class RowIndex : int {};
enum class ColumnIndex : int {};
constexpr int index(RowIndex i) {
  return static_cast<int>(i);
}
constexpr int index(ColumnIndex j) {
  return static_cast<int>(j);
}

struct LinearProgram {
  Eigen::MatrixXd a;                     // m rows, n columns
  Eigen::VectorXd cost, lower, upper;    // n
  Eigen::VectorXd row_lower, row_upper;  // m
};

/// What was proven, not what was hoped for.
enum class LpStatus {
  optimal,      // the certificate below holds: nothing cheaper satisfies every row and bound
  infeasible,   // `ray` proves that no x does
  unbounded,    // cost falls for ever along a direction (cannot happen with costs >= 0)
  not_trusted,  // solved, but the answer failed its own check: do not use
};

/// How far an answer is from being its own proof; each is 0 for a perfect one. Recomputed from
/// the program and the answer alone, never from what the solver kept.
struct LpCertificate {
  double primal_infeasibility = 0;  // largest miss of a row or bound, rows scaled to 1; a share of
                                    //    the bound where that is above 1
  double dual_infeasibility = 0;    // largest wrong sign of y or d, scaled alike; a share of the
                                    //    largest cost where that is above 1
  double gap = 0;                   // |primal - dual objective| / max(1, |primal|)
};

struct Interval {
  double low, high;
};

struct LpRanging {
  std::vector<Interval> cost;                // n: the answer's x stays optimal in between
  std::vector<std::optional<Interval>> rhs;  // m: y stays, for the active side; none when slack
};

/// The simplex's place to start the next solve of a program of the same shape.
struct LpBasis {
  std::vector<int> basic;             // m: variable in each place; n + i is the slack of row i
  std::vector<signed char> at_upper;  // n + m: 1 at the upper bound, 0 at the lower or basic
};

struct LpAnswer {
  LpStatus status = LpStatus::not_trusted;
  double objective = 0;
  Eigen::VectorXd x;          // n, valid when optimal
  Eigen::VectorXd row_level;  // m, a x
  Eigen::VectorXd y;          // m: change of the objective per unit of the active side; >= 0 at a
                              //    lower side, <= 0 at an upper side, else 0
  Eigen::VectorXd d;          // n: cost - y a; >= 0 at the lower bound, <= 0 at the upper
  Eigen::VectorXd ray;        // m, valid when infeasible: a Farkas certificate
  LpCertificate certificate;
  LpBasis basis;
};

/// Solves by a dense bounded simplex: deterministic, scaled, safe against cycling.
/// `start` is the basis of an earlier answer of the same shape, when there is one.
/// Requires: sizes agree, no NaN, lower <= upper and row_lower <= row_upper are allowed to cross
///           (then the answer is infeasible and the ray says so).
LpAnswer solve(const LinearProgram& program, const LpBasis* start = nullptr);

/// Between which costs and which right-hand sides an optimal answer stays as it is, one changed at
/// a time. A side goes no further than the other side of its row; an equality's sides move
/// together. Where several bases give the same answer the intervals are those of answer.basis,
/// hence safe but perhaps not the widest.
/// Requires: answer.status == optimal.
LpRanging ranging(const LinearProgram& program, const LpAnswer& answer);

/// The certificate of (x, y) recomputed from the program.
LpCertificate certify(const LinearProgram& program, const Eigen::VectorXd& x,
                      const Eigen::VectorXd& y);

/// By how much the ray proves infeasibility: asked - reach (positive is a proof), where the
/// columns reach at most `reach` within their bounds while the rows, added up by the ray, ask
/// at least `asked`. A column without a bound whose products cancel to rounding reaches nothing.
/// Bounds that cross prove it without a ray: the margin is then the crossing.
double farkas_margin(const LinearProgram& program, const Eigen::VectorXd& ray);

}  // namespace pluckbook
