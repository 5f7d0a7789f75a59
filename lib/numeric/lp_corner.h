// lp_corner.h - the vertex a basis stands for, solved afresh from the program's own numbers. Only
// the columns that are basic and the rows that are not take part: a system as small as the number
// of limits that bind.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "numeric/lp_dictionary.h"
#include "numeric/small_lu.h"

namespace pluckbook {

class LpCorner {
 public:
  /// Goes to the corner of `basis`; false when the basis stands for none (another shape, a variable
  /// named twice, columns that are not independent). Keeps both until the next call.
  ///   row_weight: 1 / the largest coefficient of each row.
  bool go_to(const LinearProgram& program, const Eigen::VectorXd& row_weight, const LpBasis& basis);

  /// x: nonbasic columns at their bounds, basic ones such that every nonbasic row is at its side.
  void amounts(Eigen::VectorXd& x);

  /// y such that (target - y a)[j] = 0 for every basic column j, given y on the basic rows.
  ///   target: n.   y: m, read on the basic rows, written on the others.
  void multipliers(const Eigen::VectorXd& target, Eigen::VectorXd& y);

  /// Basic columns and nonbasic rows; of the same number.
  const std::vector<int>& columns() const { return columns_; }
  const std::vector<int>& binding() const { return binding_; }

 private:
  bool sort_out(const LpBasis& basis);
  double at_rest(double lower, double upper, int variable) const;

  const LinearProgram* program_ = nullptr;
  const LpBasis* basis_ = nullptr;
  std::vector<char> is_basic_;  // n + m
  std::vector<int> columns_, binding_;
  Eigen::VectorXd weight_, right_;  // of the binding rows
  SmallLu factors_;                 // of a[binding, columns]
};

}  // namespace pluckbook
