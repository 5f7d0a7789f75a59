// lp_dictionary.h - the simplex's state: every basic variable written in terms of the nonbasic
// ones. A variable is a column (0..n-1) or the level of a row (n + i), so that the program is
// "levels = a x, everything within its bounds" and a basis is a choice of m variables.
//
//   identity kept by every pivot:  z[basic] = table.topRows(m) * z[nonbasic]
//                                  cost     = table.row(m)     * z[nonbasic]
//
// Inside, units are powers of two chosen so that the coefficients are near 1: scaling never rounds.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "numeric/linear_program.h"

namespace pluckbook {

inline constexpr double smallest_pivot = 1e-9;  // coefficients are near 1

/// Where a variable rests that is not basic: at that bound, at the other when it has but that one,
/// at 0 when it has none.
double resting_at(bool at_upper, double lower, double upper);

/// z in the program's units = unit * z inside. Powers of two.
struct LpUnits {
  Eigen::VectorXd variable;  // n + m
  double cost = 1;
};

/// The entering variable, the basic one it replaces, and how far it moves.
struct LpStep {
  int entering = -1;  // place among the nonbasic
  int leaving = -1;   // place among the basic; -1 when the entering one crosses to its other bound
  double direction = 1;  // +1 up, -1 down
  double length = 0;
  bool leaves_at_upper = false;
};

class LpDictionary {
 public:
  /// Begins a program: all rows basic, all columns at the bound where their cost is least. Memory
  /// of an earlier program of the same shape is used again.
  ///   row_weight: 1 / the largest coefficient of each row.
  void begin(const LinearProgram& program, const Eigen::VectorXd& row_weight);

  /// Pivots `basis` in; what is singular in it stays out. Ignores a basis of another shape.
  void enter(const LpBasis& basis);
  void write_basis(LpBasis& basis) const;

  /// Moves along `step` and keeps the identity.
  void take(const LpStep& step);

  int rows() const { return static_cast<int>(basic.size()); }
  int columns() const { return static_cast<int>(nonbasic.size()); }
  bool fixed(int variable) const { return lower[variable] == upper[variable]; }
  /// Where a nonbasic variable rests: at a bound, or at 0 when it has none.
  double rest(int variable) const;

  LpUnits units;
  Eigen::MatrixXd table;         // (m + 1) x n
  Eigen::VectorXd lower, upper;  // n + m
  Eigen::VectorXd value;         // n + m
  std::vector<int> basic, nonbasic;
  std::vector<signed char> at_upper;  // n + m

 private:
  void choose_units(const LinearProgram& program, const Eigen::VectorXd& row_weight);
  void pivot(int place, int entering);
  void recompute_values();
  void settle_at_upper(int variable, bool wanted);

  // Kept so that neither a step nor a new program asks for memory.
  Eigen::VectorXd column_;       // of the pivot
  Eigen::VectorXd levels_;       // of the basic variables
  std::vector<char> is_wanted_;  // by the basis that is entered
};

}  // namespace pluckbook
