// linear_program.cpp - walk to a vertex, solve that vertex afresh, believe it only when proven.
#include "numeric/linear_program.h"

#include <algorithm>
#include <cmath>

#include "numeric/lp_corner.h"
#include "numeric/lp_dictionary.h"
#include "numeric/lp_simplex.h"

namespace pluckbook {
namespace {

constexpr double believed = 1e-9;          // a certificate above this is not one
constexpr double first_tolerance = 1e-11;  // sharpened when the certificate fails
constexpr double sharpening = 0.03;
constexpr int attempts = 3;

bool holds(const LpCertificate& c) {
  return std::max({c.primal_infeasibility, c.dual_infeasibility, c.gap}) < believed;
}

bool crosses(const Eigen::VectorXd& lower, const Eigen::VectorXd& upper) {
  return (lower.array() > upper.array()).any();
}

/// Bounds that cross are their own proof; the ray only points at the row.
LpAnswer crossed(const LinearProgram& program) {
  LpAnswer answer;
  answer.status = LpStatus::infeasible;
  answer.ray = (program.row_lower.array() > program.row_upper.array()).cast<double>();
  answer.basis = LpDictionary(program).basis();
  return answer;
}

/// Rounding may leave a basic amount a hair outside its bounds, where it reads as "-0".
void tidy(const LinearProgram& program, const LpCorner& corner, Eigen::VectorXd& x) {
  for (int j : corner.columns()) {
    const double inside = std::clamp(x[j], program.lower[j], program.upper[j]);
    if (std::abs(x[j] - inside) <= 1e-12 * std::max(1.0, std::abs(inside))) x[j] = inside;
  }
}

void prove_optimal(const LinearProgram& program, const LpCorner& corner, LpAnswer& answer) {
  answer.x = corner.amounts();
  tidy(program, corner, answer.x);
  answer.y = corner.multipliers(program.cost, Eigen::VectorXd::Zero(program.a.rows()));
  answer.row_level = program.a * answer.x;
  answer.d = program.cost - program.a.transpose() * answer.y;
  for (int j : corner.columns()) answer.d[j] = 0;
  answer.objective = program.cost.dot(answer.x);
  answer.certificate = certify(program, answer.x, answer.y);
  answer.status = holds(answer.certificate) ? LpStatus::optimal : LpStatus::not_trusted;
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

// At the least sum of misses, with s = -1 or +1 on what is missed: s . z = sum_k g_k z_k + 0 for
// the nonbasic k. The same identity row by row, y . (a x - levels) = 0, is the ray.
void prove_infeasible(const LinearProgram& program, const LpDictionary& dictionary,
                      const LpCorner& corner, const LpWalk& end, LpAnswer& answer) {
  const auto n = program.a.cols();
  const auto m = program.a.rows();
  const Eigen::VectorXd missed = end.missed.cwiseQuotient(dictionary.units.variable);
  answer.ray = corner.multipliers(missed.head(n), -missed.tail(m));
  drop_rounding(program, dictionary.units.variable.tail(m), answer.ray);
  const double margin = farkas_margin(program, answer.ray);
  const bool proven = margin > 1e-12 * margin_scale(program, answer.ray);
  answer.status = proven ? LpStatus::infeasible : LpStatus::not_trusted;
}

// Along v the rows and bounds must never be met, and the cost must fall.
void prove_unbounded(const LinearProgram& program, const LpDictionary& dictionary,
                     const LpStep& step, LpAnswer& answer) {
  const int n = static_cast<int>(program.a.cols());
  Eigen::VectorXd z = Eigen::VectorXd::Zero(dictionary.value.size());
  for (int p = 0; p < dictionary.rows(); ++p) {
    const double rate = step.direction * dictionary.table(p, step.entering);
    z[dictionary.basic[static_cast<size_t>(p)]] = std::abs(rate) > believed ? rate : 0;
  }
  z[dictionary.nonbasic[static_cast<size_t>(step.entering)]] = step.direction;
  const Eigen::VectorXd v = z.head(n).cwiseProduct(dictionary.units.variable.head(n));
  Eigen::VectorXd levels =
      (program.a * v).cwiseQuotient(dictionary.units.variable.tail(z.size() - n));
  bool proven = program.cost.dot(v) < 0;
  for (int k = 0; k < z.size(); ++k) {
    const double moves = k < n ? z[k] : levels[k - n];
    const bool blocked = (moves > believed && std::isfinite(dictionary.upper[k])) ||
                         (moves < -believed && std::isfinite(dictionary.lower[k]));
    proven = proven && !blocked;
  }
  answer.status = proven ? LpStatus::unbounded : LpStatus::not_trusted;
}

LpAnswer attempt(const LinearProgram& program, const LpBasis* start, double tolerance) {
  LpDictionary dictionary(program);
  if (start != nullptr) dictionary.enter(*start);
  const LpWalk end = walk(dictionary, tolerance);
  LpAnswer answer;
  answer.basis = dictionary.basis();
  const LpCorner corner(program, dictionary.units, answer.basis);
  switch (end.end) {
    case LpWalk::End::optimal:
      prove_optimal(program, corner, answer);
      break;
    case LpWalk::End::infeasible:
      prove_infeasible(program, dictionary, corner, end, answer);
      break;
    case LpWalk::End::unbounded:
      prove_unbounded(program, dictionary, end.ray, answer);
      break;
    case LpWalk::End::gave_up:
      break;
  }
  return answer;
}

}  // namespace

LpAnswer solve(const LinearProgram& program, const LpBasis* start) {
  if (crosses(program.row_lower, program.row_upper) || crosses(program.lower, program.upper)) {
    return crossed(program);
  }
  double tolerance = first_tolerance;
  LpAnswer answer = attempt(program, start, tolerance);
  for (int n = 1; n < attempts && answer.status == LpStatus::not_trusted; ++n) {
    tolerance *= sharpening;
    const LpBasis reached = answer.basis;  // refactorised: its rounding is gone
    answer = attempt(program, &reached, tolerance);
  }
  return answer;
}

}  // namespace pluckbook
