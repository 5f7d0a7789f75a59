#include "numeric/lp_corner.h"

#include <cmath>

namespace pluckbook {
namespace {

constexpr int solves = 2;  // the second takes out the rounding of the first

}  // namespace

LpCorner::LpCorner(const LinearProgram& program, const LpUnits& units, const LpBasis& basis)
    : program_(program), basis_(basis) {
  const int m = static_cast<int>(program.a.rows());
  const int n = static_cast<int>(program.a.cols());
  std::vector<char> is_basic(static_cast<size_t>(n + m), 0);
  for (int k : basis.basic) is_basic[static_cast<size_t>(k)] = 1;
  for (int j = 0; j < n; ++j) {
    if (is_basic[static_cast<size_t>(j)] != 0) columns_.push_back(j);
  }
  for (int i = 0; i < m; ++i) {
    if (is_basic[static_cast<size_t>(n + i)] == 0) binding_.push_back(i);
  }
  column_unit_ = units.variable.head(n)(columns_);
  row_unit_ = units.variable.tail(m)(binding_).cwiseInverse();
  if (binding_.empty()) return;
  factors_.compute(row_unit_.asDiagonal() * program.a(binding_, columns_) *
                   column_unit_.asDiagonal());
}

double LpCorner::resting(double lower, double upper, int variable) const {
  const double bound = basis_.at_upper[static_cast<size_t>(variable)] != 0 ? upper : lower;
  return std::isfinite(bound) ? bound : 0;
}

Eigen::VectorXd LpCorner::amounts() const {
  const int n = static_cast<int>(program_.a.cols());
  Eigen::VectorXd x(n);
  for (int j = 0; j < n; ++j) x[j] = resting(program_.lower[j], program_.upper[j], j);
  if (binding_.empty()) return x;
  for (int j : columns_) x[j] = 0;
  Eigen::VectorXd side(std::ssize(binding_));
  for (int b = 0; b < side.size(); ++b) {
    const int i = binding_[static_cast<size_t>(b)];
    side[b] = resting(program_.row_lower[i], program_.row_upper[i], n + i);
  }
  Eigen::VectorXd level(program_.a.rows()), missing, correction;
  for (int round = 0; round < solves; ++round) {
    level.noalias() = program_.a * x;
    missing = (side - level(binding_)).cwiseProduct(row_unit_);
    correction = factors_.solve(missing);
    x(columns_) += correction.cwiseProduct(column_unit_);
  }
  return x;
}

Eigen::VectorXd LpCorner::multipliers(const Eigen::VectorXd& target,
                                      const Eigen::VectorXd& y_basic) const {
  Eigen::VectorXd y = y_basic;
  if (binding_.empty()) return y;
  y(binding_).setZero();
  Eigen::VectorXd left(target.size()), missing, correction;
  for (int round = 0; round < solves; ++round) {
    left = target;
    left.noalias() -= program_.a.transpose() * y;
    missing = left(columns_).cwiseProduct(column_unit_);
    correction = factors_.transpose().solve(missing);
    y(binding_) += correction.cwiseProduct(row_unit_);
  }
  return y;
}

}  // namespace pluckbook
