// Walk to a vertex, solve that vertex afresh, believe it only when proven. From an earlier basis
// the vertex is tried first: where its proof holds, no step is needed.
#include "numeric/lp_solver.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "numeric/lp_certificate.h"
#include "numeric/lp_dual.h"

namespace pluckbook {
namespace {

constexpr double first_tolerance = 1e-11;  // sharpened when the certificate fails
constexpr double sharpening = 0.03;
constexpr int attempts = 3;

bool crosses(const Eigen::VectorXd& lower, const Eigen::VectorXd& upper) {
  return (lower.array() > upper.array()).any();
}

/// Rounding may leave a basic amount a hair outside its bounds, where it reads as "-0".
void tidy(const LinearProgram& program, const LpCorner& corner, Eigen::VectorXd& x) {
  for (int j : corner.columns()) {
    const double inside = std::clamp(x[j], program.lower[j], program.upper[j]);
    if (std::abs(x[j] - inside) <= 1e-12 * std::max(1.0, std::abs(inside))) x[j] = inside;
  }
}

/// The size of the numbers a Farkas margin is the difference of.
double margin_scale(const LinearProgram& program, const Eigen::VectorXd& ray) {
  const auto finite = [](double v) { return std::isfinite(v) ? std::abs(v) : 0.0; };
  double size = 0;
  for (int i = 0; i < ray.size(); ++i) {
    size += std::abs(ray[i]) * finite(ray[i] > 0 ? program.row_lower[i] : program.row_upper[i]);
  }
  const Eigen::VectorXd g = program.a.transpose() * ray;
  for (int j = 0; j < g.size(); ++j) {
    size += std::abs(g[j]) * finite(g[j] > 0 ? program.upper[j] : program.lower[j]);
  }
  return size;
}

/// What is left of a zero must not ask anything of a row, least of all of a side it has not.
void drop_rounding(const LinearProgram& program, const Eigen::VectorXd& row_unit,
                   Eigen::VectorXd& ray) {
  const Eigen::VectorXd size = ray.cwiseProduct(row_unit).cwiseAbs();
  const double largest = size.size() > 0 ? size.maxCoeff() : 0;
  for (int i = 0; i < ray.size(); ++i) {
    const double side = ray[i] > 0 ? program.row_lower[i] : program.row_upper[i];
    if (size[i] <= largest * (std::isfinite(side) ? 1e-15 : 1e-11)) ray[i] = 0;
  }
}

}  // namespace

/// Bounds that cross are their own proof; the ray only points at the row.
void LpSolver::crossed(const LinearProgram& program) {
  answer_.status = LpStatus::infeasible;
  answer_.ray = (program.row_lower.array() > program.row_upper.array()).cast<double>();
  dictionary_.begin(program, row_weight_);
  dictionary_.write_basis(answer_.basis);
}

/// The answer at the corner, and how far it is from being optimal.
void LpSolver::prove_optimal(const LinearProgram& program) {
  corner_.amounts(answer_.x);
  tidy(program, corner_, answer_.x);
  answer_.y.setZero(program.a.rows());
  corner_.multipliers(program.cost, answer_.y);
  levels_of(program, answer_.x, answer_.row_level);
  reduced_costs_of(program, answer_.y, answer_.d);
  answer_.certificate =
      certificate_of(program, row_weight_, {answer_.x, answer_.row_level, answer_.y, answer_.d});
  for (int j : corner_.columns()) answer_.d[j] = 0;
  answer_.objective = program.cost.dot(answer_.x);
  answer_.status =
      worst_of(answer_.certificate) < believed ? LpStatus::optimal : LpStatus::not_trusted;
}

// At the least sum of misses, with s = -1 or +1 on what is missed: s . z = sum_k g_k z_k + 0 for
// the nonbasic k. The same identity row by row, y . (a x - levels) = 0, is the ray.
void LpSolver::prove_infeasible(const LinearProgram& program, const Eigen::VectorXd& misses) {
  const auto n = program.a.cols();
  const auto m = program.a.rows();
  const Eigen::VectorXd missed = misses.cwiseQuotient(dictionary_.units.variable);
  answer_.ray = -missed.tail(m);
  corner_.multipliers(missed.head(n), answer_.ray);
  drop_rounding(program, dictionary_.units.variable.tail(m), answer_.ray);
  const double margin = farkas_margin(program, answer_.ray);
  const bool proven = margin > 1e-12 * margin_scale(program, answer_.ray);
  answer_.status = proven ? LpStatus::infeasible : LpStatus::not_trusted;
}

// Along v the rows and bounds must never be met, and the cost must fall.
void LpSolver::prove_unbounded(const LinearProgram& program, const LpStep& step) {
  const int n = static_cast<int>(program.a.cols());
  Eigen::VectorXd z = Eigen::VectorXd::Zero(dictionary_.value.size());
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const double rate = step.direction * dictionary_.table(p, step.entering);
    z[dictionary_.basic[static_cast<size_t>(p)]] = std::abs(rate) > believed ? rate : 0;
  }
  z[dictionary_.nonbasic[static_cast<size_t>(step.entering)]] = step.direction;
  const Eigen::VectorXd v = z.head(n).cwiseProduct(dictionary_.units.variable.head(n));
  Eigen::VectorXd levels =
      (program.a * v).cwiseQuotient(dictionary_.units.variable.tail(z.size() - n));
  bool proven = program.cost.dot(v) < 0;
  for (int k = 0; k < z.size(); ++k) {
    const double moves = k < n ? z[k] : levels[k - n];
    const bool blocked = (moves > believed && std::isfinite(dictionary_.upper[k])) ||
                         (moves < -believed && std::isfinite(dictionary_.lower[k]));
    proven = proven && !blocked;
  }
  answer_.status = proven ? LpStatus::unbounded : LpStatus::not_trusted;
}

void LpSolver::attempt(const LinearProgram& program, const LpBasis* start, double tolerance) {
  dictionary_.begin(program, row_weight_);
  if (start != nullptr) dictionary_.enter(*start);
  bring_within_bounds(dictionary_, tolerance);
  const LpWalk end = walk(dictionary_, tolerance, room_);
  dictionary_.write_basis(answer_.basis);
  answer_.status = LpStatus::not_trusted;
  if (!corner_.go_to(program, row_weight_, answer_.basis)) return;
  switch (end.end) {
    case LpWalk::End::optimal:
      prove_optimal(program);
      break;
    case LpWalk::End::infeasible:
      prove_infeasible(program, end.missed);
      break;
    case LpWalk::End::unbounded:
      prove_unbounded(program, end.ray);
      break;
    case LpWalk::End::gave_up:
      break;
  }
}

/// Whether the corner of an earlier basis is optimal still, as sharply as a walk would ask.
bool LpSolver::holds_at(const LinearProgram& program, const LpBasis& start) {
  if (!corner_.go_to(program, row_weight_, start)) return false;
  prove_optimal(program);
  if (!(worst_of(answer_.certificate) < first_tolerance)) return false;
  answer_.basis = start;
  return true;
}

const LpAnswer& LpSolver::solve(const LinearProgram& program, const LpBasis* start) {
  weigh_rows(program, row_weight_);
  if (crosses(program.row_lower, program.row_upper) || crosses(program.lower, program.upper)) {
    crossed(program);
    return answer_;
  }
  if (start != nullptr && holds_at(program, *start)) return answer_;
  double tolerance = first_tolerance;
  attempt(program, start, tolerance);
  for (int n = 1; n < attempts && answer_.status == LpStatus::not_trusted; ++n) {
    tolerance *= sharpening;
    start_ = answer_.basis;  // refactorised: its rounding is gone
    attempt(program, &start_, tolerance);
  }
  return answer_;
}

LpAnswer solve(const LinearProgram& program, const LpBasis* start) {
  LpSolver solver;
  solver.solve(program, start);
  return std::move(solver.answer_);
}

}  // namespace pluckbook
