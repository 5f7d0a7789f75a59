// lp_solver.h - the solver with its desk: what it writes on is kept from one program to the next,
// so that a season of days asks for memory once.
#pragma once

#include <Eigen/Core>

#include "numeric/linear_program.h"
#include "numeric/lp_corner.h"
#include "numeric/lp_dictionary.h"
#include "numeric/lp_simplex.h"

namespace pluckbook {

class LpSolver {
 public:
  /// solve() of linear_program.h: the same answers. `start` may be the basis of the last answer.
  /// The answer stands until the next call.
  const LpAnswer& solve(const LinearProgram& program, const LpBasis* start = nullptr);
  friend LpAnswer solve(const LinearProgram& program, const LpBasis* start);

 private:
  bool holds_at(const LinearProgram& program, const LpBasis& start);
  void attempt(const LinearProgram& program, const LpBasis* start, double tolerance);
  void prove_optimal(const LinearProgram& program);
  void prove_infeasible(const LinearProgram& program, const Eigen::VectorXd& missed);
  void prove_unbounded(const LinearProgram& program, const LpStep& step);
  void crossed(const LinearProgram& program);

  Eigen::VectorXd row_weight_;
  LpCorner corner_;
  LpDictionary dictionary_;
  LpWalkRoom room_;
  LpBasis start_;
  LpAnswer answer_;
};

}  // namespace pluckbook
