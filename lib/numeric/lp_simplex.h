// lp_simplex.h - walks a dictionary from vertex to vertex. Phase 1 lowers the sum of what the
// bounds are missed by, phase 2 lowers the cost; each step looks which of the two it is in.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "numeric/lp_dictionary.h"

namespace pluckbook {

struct LpWalk {
  enum class End { optimal, infeasible, unbounded, gave_up };
  End end = End::gave_up;
  Eigen::VectorXd missed;  // when infeasible, n + m: -1 below its lower bound, +1 above, else 0
  LpStep ray;              // the step without an end, when unbounded
  int steps = 0;
};

/// Memory of a walk, used again by the next one.
struct LpWalkRoom {
  struct Limit {
    double room;  // how far until the bound
    double give;  // how far beyond the bound the tolerance reaches
    bool at_upper;
  };
  Eigen::VectorXd give_low, give_high;  // n + m
  Eigen::VectorXd missed;               // m: -1 below, +1 above, else 0
  Eigen::VectorXd gradient;             // n
  std::vector<Limit> ahead;             // m
};

/// `tolerance`: misses and reduced costs up to this count as none, in the dictionary's units.
LpWalk walk(LpDictionary& dictionary, double tolerance, LpWalkRoom& room);

}  // namespace pluckbook
