#include "numeric/small_lu.h"

#include <cmath>
#include <utility>

namespace pluckbook {

void SmallLu::make_room(int most) {
  if (matrix_.rows() >= most) return;
  matrix_.resize(most, most);
  factors_.resize(most, most);
  order_.resize(static_cast<size_t>(most));
  for (Eigen::VectorXd* v : {&weight_, &permuted_, &left_}) v->resize(most);
}

Eigen::Block<Eigen::MatrixXd> SmallLu::start(int size) {
  size_ = size;
  return matrix_.topLeftCorner(size, size);
}

bool SmallLu::factor(const Eigen::VectorXd& weight) {
  const int k = size_;
  for (int j = 0; j < k; ++j) factors_.col(j).head(k) = matrix_.col(j).head(k);
  weight_.head(k) = weight.head(k);
  for (int i = 0; i < k; ++i) order_[static_cast<size_t>(i)] = i;
  for (int c = 0; c < k; ++c) {
    int best = c;
    double size = 0;
    for (int r = c; r < k; ++r) {
      const double weighed = std::abs(factors_(r, c)) * weight_[r];
      if (weighed > size) best = r, size = weighed;
    }
    if (size == 0) return false;
    if (best != c) {
      factors_.row(c).head(k).swap(factors_.row(best).head(k));
      std::swap(weight_[c], weight_[best]);
      std::swap(order_[static_cast<size_t>(c)], order_[static_cast<size_t>(best)]);
    }
    const int below = k - c - 1;
    factors_.col(c).segment(c + 1, below) /= factors_(c, c);
    for (int j = c + 1; j < k; ++j) {
      const double top = factors_(c, j);
      if (top != 0)
        factors_.col(j).segment(c + 1, below) -= top * factors_.col(c).segment(c + 1, below);
    }
  }
  return true;
}

void SmallLu::solve_once(Eigen::VectorXd& right) {
  const int k = size_;
  for (int i = 0; i < k; ++i) permuted_[i] = right[order_[static_cast<size_t>(i)]];
  for (int c = 0; c < k; ++c)
    for (int r = c + 1; r < k; ++r) permuted_[r] -= factors_(r, c) * permuted_[c];
  for (int c = k - 1; c >= 0; --c) {
    right[c] = permuted_[c] / factors_(c, c);
    for (int r = 0; r < c; ++r) permuted_[r] -= factors_(r, c) * right[c];
  }
}

void SmallLu::solve_transposed_once(Eigen::VectorXd& right) {
  const int k = size_;
  for (int c = 0; c < k; ++c) {
    double rest = right[c];
    for (int r = 0; r < c; ++r) rest -= factors_(r, c) * permuted_[r];
    permuted_[c] = rest / factors_(c, c);
  }
  for (int c = k - 1; c >= 0; --c) {
    double rest = permuted_[c];
    for (int r = c + 1; r < k; ++r) rest -= factors_(r, c) * permuted_[r];
    permuted_[c] = rest;
  }
  for (int i = 0; i < k; ++i) right[order_[static_cast<size_t>(i)]] = permuted_[i];
}

void SmallLu::solve(Eigen::VectorXd& right) {
  const int k = size_;
  left_.head(k) = right.head(k);
  solve_once(right);
  for (int j = 0; j < k; ++j) left_.head(k) -= right[j] * matrix_.col(j).head(k);
  solve_once(left_);
  right.head(k) += left_.head(k);
}

void SmallLu::solve_transposed(Eigen::VectorXd& right) {
  const int k = size_;
  left_.head(k) = right.head(k);
  solve_transposed_once(right);
  for (int j = 0; j < k; ++j) left_[j] -= matrix_.col(j).head(k).dot(right.head(k));
  solve_transposed_once(left_);
  right.head(k) += left_.head(k);
}

}  // namespace pluckbook
