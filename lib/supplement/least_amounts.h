// least_amounts.h - a linear program in which some amounts are 'none, or at least this much'.
#pragma once

#include <vector>

#include "numeric/linear_program.h"

namespace pluckbook {

struct LeastAnswer {
  LpStatus status = LpStatus::infeasible;  // not_trusted when any part of the search was
  LpAnswer answer;                         // of the branch that won, when optimal
};

/// Branch and bound on the relaxation without least amounts: exact.
///   least: one a column, 0 where there is none; columns beyond its size have none.
LeastAnswer solve_with_least(const LinearProgram& program, const std::vector<double>& least);

}  // namespace pluckbook
