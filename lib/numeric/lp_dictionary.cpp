#include "numeric/lp_dictionary.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace pluckbook {
namespace {

/// The power of two that brings `size` into [1/2, 1); 1 for an empty row or column.
double power_of_two_over(double size) {
  if (size == 0 || !std::isfinite(size)) return 1;
  return std::ldexp(1.0, std::clamp(-std::ilogb(size) - 1, -500, 500));
}

bool fits(const LpBasis& basis, int rows, int columns) {
  if (std::ssize(basis.basic) != rows || std::ssize(basis.at_upper) != rows + columns) return false;
  return std::ranges::all_of(basis.basic, [&](int k) { return k >= 0 && k < rows + columns; });
}

}  // namespace

double resting_at(bool at_upper, double lower, double upper) {
  if (std::isfinite(at_upper ? upper : lower)) return at_upper ? upper : lower;
  if (std::isfinite(at_upper ? lower : upper)) return at_upper ? lower : upper;
  return 0;
}

void LpDictionary::begin(const LinearProgram& program, const Eigen::VectorXd& row_weight) {
  const int m = static_cast<int>(program.a.rows());
  const int n = static_cast<int>(program.a.cols());
  choose_units(program, row_weight);
  lower.resize(n + m);
  upper.resize(n + m);
  lower << program.lower, program.row_lower;
  upper << program.upper, program.row_upper;
  lower.array() /= units.variable.array();
  upper.array() /= units.variable.array();

  basic.resize(static_cast<size_t>(m));
  nonbasic.resize(static_cast<size_t>(n));
  std::iota(basic.begin(), basic.end(), n);
  std::iota(nonbasic.begin(), nonbasic.end(), 0);
  at_upper.assign(static_cast<size_t>(n + m), 0);
  for (int j = 0; j < n; ++j) settle_at_upper(j, program.cost[j] < 0);
  value.resize(n + m);
  recompute_values();
}

// Rows first, so that a miss of 1 inside is a miss of about 1 as the certificate counts it.
void LpDictionary::choose_units(const LinearProgram& program, const Eigen::VectorXd& row_weight) {
  const int m = static_cast<int>(program.a.rows());
  const int n = static_cast<int>(program.a.cols());
  table.resize(m + 1, n);
  units.variable.resize(n + m);
  column_.resize(m + 1);
  for (int i = 0; i < m; ++i) column_[i] = power_of_two_over(1 / row_weight[i]);
  units.variable.tail(m) = column_.head(m).cwiseInverse();
  double largest_cost = 0;
  for (int j = 0; j < n; ++j) {
    auto column = table.col(j).head(m);
    column = program.a.col(j).cwiseProduct(column_.head(m));
    const double scale = m > 0 ? power_of_two_over(column.cwiseAbs().maxCoeff()) : 1;
    column *= scale;
    units.variable[j] = scale;
    table(m, j) = program.cost[j] * scale;
    largest_cost = std::max(largest_cost, std::abs(table(m, j)));
  }
  const double scale = power_of_two_over(largest_cost);
  if (n > 0) table.row(m) *= scale;
  units.cost = 1 / scale;
}

double LpDictionary::rest(int variable) const {
  return resting_at(at_upper[static_cast<size_t>(variable)] != 0, lower[variable], upper[variable]);
}

/// A variable rests at the bound wanted when it has that one, else at the one it has.
void LpDictionary::settle_at_upper(int variable, bool wanted) {
  const bool has_lower = std::isfinite(lower[variable]);
  const bool has_upper = std::isfinite(upper[variable]);
  at_upper[static_cast<size_t>(variable)] = has_upper && (wanted || !has_lower) ? 1 : 0;
}

void LpDictionary::recompute_values() {
  levels_.setZero(rows());
  for (int q = 0; q < columns(); ++q) {
    const int k = nonbasic[static_cast<size_t>(q)];
    value[k] = rest(k);
    if (value[k] != 0) levels_ += value[k] * table.col(q).head(rows());
  }
  for (int p = 0; p < rows(); ++p) value[basic[static_cast<size_t>(p)]] = levels_[p];
}

// z_p = sum_j t_pj z_j is solved for z_q and put into every other row.
void LpDictionary::pivot(int place, int entering) {
  column_ = table.col(entering);
  const double inverse = 1 / column_[place];
  for (int j = 0; j < columns(); ++j) {
    if (j == entering || table(place, j) == 0) continue;
    const double coefficient = -table(place, j) * inverse;
    table.col(j).noalias() += coefficient * column_;
    table(place, j) = coefficient;
  }
  table.col(entering) = column_ * inverse;
  table(place, entering) = inverse;
  std::swap(basic[static_cast<size_t>(place)], nonbasic[static_cast<size_t>(entering)]);
}

void LpDictionary::take(const LpStep& step) {
  const double change = step.direction * step.length;
  for (int p = 0; p < rows(); ++p) {
    value[basic[static_cast<size_t>(p)]] += change * table(p, step.entering);
  }
  const int entering = nonbasic[static_cast<size_t>(step.entering)];
  if (step.leaving < 0) {
    at_upper[static_cast<size_t>(entering)] = step.direction > 0 ? 1 : 0;
    value[entering] = rest(entering);
    return;
  }
  value[entering] += change;
  const int leaving = basic[static_cast<size_t>(step.leaving)];
  at_upper[static_cast<size_t>(entering)] = 0;
  at_upper[static_cast<size_t>(leaving)] = step.leaves_at_upper ? 1 : 0;
  value[leaving] = rest(leaving);
  pivot(step.leaving, step.entering);
}

void LpDictionary::enter(const LpBasis& wanted) {
  const int n = columns();
  if (!fits(wanted, rows(), n)) return;
  is_wanted_.assign(static_cast<size_t>(n + rows()), 0);
  for (int k : wanted.basic) is_wanted_[static_cast<size_t>(k)] = 1;
  for (int q = 0; q < n; ++q) {
    if (is_wanted_[static_cast<size_t>(nonbasic[static_cast<size_t>(q)])] == 0) continue;
    int best = -1;
    double size = smallest_pivot;
    for (int p = 0; p < rows(); ++p) {
      if (is_wanted_[static_cast<size_t>(basic[static_cast<size_t>(p)])] != 0) continue;
      if (std::abs(table(p, q)) <= size) continue;
      best = p;
      size = std::abs(table(p, q));
    }
    if (best >= 0) pivot(best, q);
  }
  std::ranges::fill(at_upper, static_cast<signed char>(0));
  for (int k : nonbasic) settle_at_upper(k, wanted.at_upper[static_cast<size_t>(k)] != 0);
  recompute_values();
}

void LpDictionary::write_basis(LpBasis& basis) const {
  basis.basic = basic;
  basis.at_upper = at_upper;
}

}  // namespace pluckbook
