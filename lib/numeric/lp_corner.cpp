#include "numeric/lp_corner.h"

#include <cmath>

namespace pluckbook {

bool LpCorner::sort_out(const LpBasis& basis) {
  const int m = static_cast<int>(program_->a.rows());
  const int n = static_cast<int>(program_->a.cols());
  if (std::ssize(basis.basic) != m || std::ssize(basis.at_upper) != n + m) return false;
  is_basic_.assign(static_cast<size_t>(n + m), 0);
  for (int k : basis.basic) {
    if (k < 0 || k >= n + m || is_basic_[static_cast<size_t>(k)] != 0) return false;
    is_basic_[static_cast<size_t>(k)] = 1;
  }
  columns_.clear();
  binding_.clear();
  for (int j = 0; j < n; ++j) {
    if (is_basic_[static_cast<size_t>(j)] != 0) columns_.push_back(j);
  }
  for (int i = 0; i < m; ++i) {
    if (is_basic_[static_cast<size_t>(n + i)] == 0) binding_.push_back(i);
  }
  return true;
}

bool LpCorner::go_to(const LinearProgram& program, const Eigen::VectorXd& row_weight,
                     const LpBasis& basis) {
  program_ = &program;
  basis_ = &basis;
  if (!sort_out(basis)) return false;
  const int m = static_cast<int>(program.a.rows());
  const int size = static_cast<int>(binding_.size());
  factors_.make_room(m);
  weight_.resize(m);
  right_.resize(m);
  auto matrix = factors_.start(size);
  for (int b = 0; b < size; ++b) {
    const int i = binding_[static_cast<size_t>(b)];
    weight_[b] = row_weight[i];
    for (int c = 0; c < size; ++c) matrix(b, c) = program.a(i, columns_[static_cast<size_t>(c)]);
  }
  return factors_.factor(weight_);
}

double LpCorner::at_rest(double lower, double upper, int variable) const {
  return resting_at(basis_->at_upper[static_cast<size_t>(variable)] != 0, lower, upper);
}

void LpCorner::amounts(Eigen::VectorXd& x) {
  const int n = static_cast<int>(program_->a.cols());
  const int size = static_cast<int>(binding_.size());
  for (int b = 0; b < size; ++b) {
    const int i = binding_[static_cast<size_t>(b)];
    right_[b] = at_rest(program_->row_lower[i], program_->row_upper[i], n + i);
  }
  x.resize(n);
  for (int j = 0; j < n; ++j) {
    if (is_basic_[static_cast<size_t>(j)] != 0) continue;
    x[j] = at_rest(program_->lower[j], program_->upper[j], j);
    if (x[j] == 0) continue;
    for (int b = 0; b < size; ++b)
      right_[b] -= program_->a(binding_[static_cast<size_t>(b)], j) * x[j];
  }
  factors_.solve(right_);
  for (int c = 0; c < size; ++c) x[columns_[static_cast<size_t>(c)]] = right_[c];
}

void LpCorner::multipliers(const Eigen::VectorXd& target, Eigen::VectorXd& y) {
  const int size = static_cast<int>(binding_.size());
  for (int i : binding_) y[i] = 0;
  for (int c = 0; c < size; ++c) {
    const int j = columns_[static_cast<size_t>(c)];
    right_[c] = target[j] - program_->a.col(j).dot(y);
  }
  factors_.solve_transposed(right_);
  for (int b = 0; b < size; ++b) y[binding_[static_cast<size_t>(b)]] = right_[b];
}

}  // namespace pluckbook
