// lp_simplex.h - walks a dictionary from vertex to vertex. Phase 1 lowers the sum of what the
// bounds are missed by, phase 2 lowers the cost; each step looks which of the two it is in.
#pragma once

#include <Eigen/Core>

#include "numeric/lp_dictionary.h"

namespace pluckbook {

struct LpWalk {
  enum class End { optimal, infeasible, unbounded, gave_up };
  End end = End::gave_up;
  Eigen::VectorXd missed;  // when infeasible, n + m: -1 below its lower bound, +1 above, else 0
  LpStep ray;              // the step without an end, when unbounded
  int steps = 0;
};

/// `tolerance`: misses and reduced costs up to this count as none, in the dictionary's units.
LpWalk walk(LpDictionary& dictionary, double tolerance);

}  // namespace pluckbook
