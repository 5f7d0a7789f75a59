// lp_corner.h - the vertex a basis stands for, solved afresh from the program's own numbers. Only
// the columns that are basic and the rows that are not take part: a system as small as the number
// of limits that bind.
#pragma once

#include <Eigen/Core>
#include <Eigen/LU>
#include <vector>

#include "numeric/lp_dictionary.h"

namespace pluckbook {

class LpCorner {
 public:
  LpCorner(const LinearProgram& program, const LpUnits& units, const LpBasis& basis);

  /// x: nonbasic columns at their bounds, basic ones such that every nonbasic row is at its side.
  Eigen::VectorXd amounts() const;

  /// y such that (target - y a)[j] = 0 for every basic column j, given y on the basic rows.
  ///   target: n.   y_basic: m, read on the basic rows only.
  Eigen::VectorXd multipliers(const Eigen::VectorXd& target, const Eigen::VectorXd& y_basic) const;

  /// Basic columns and nonbasic rows; of the same number.
  const std::vector<int>& columns() const { return columns_; }
  const std::vector<int>& binding() const { return binding_; }

 private:
  double resting(double lower, double upper, int variable) const;

  const LinearProgram& program_;
  const LpBasis& basis_;
  std::vector<int> columns_, binding_;
  Eigen::VectorXd column_unit_, row_unit_;
  Eigen::PartialPivLU<Eigen::MatrixXd> factors_;  // of a[binding, columns], scaled
};

}  // namespace pluckbook
