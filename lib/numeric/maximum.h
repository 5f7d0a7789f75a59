// maximum.h - the highest point of a smooth function whose gradient is known.
#pragma once

#include <Eigen/Core>
#include <functional>

namespace pluckbook {

struct Slope {
  double value = 0;  // minus infinity where the function does not exist
  Eigen::VectorXd gradient;
};

struct Maximum {
  Eigen::VectorXd at;
  double value = 0;
};

struct ClimbRules {
  int most_steps = 100;
  double least_gain = 0;  // of the whole climb still ahead, as slope and curvature promise it
};

/// Climbs from `start` (where the function must exist) until little is left to gain, no step gains,
/// or the steps are used up. Finds the nearest hill, not the highest.
/// Source: Nocedal and Wright 2006, Numerical Optimization, algorithm 6.1 (BFGS), with steps
///         halved until they gain enough (algorithm 3.1).
Maximum climb(const std::function<Slope(const Eigen::VectorXd&)>& function, Eigen::VectorXd start,
              const ClimbRules& rules);

/// The lowest and highest value of each coordinate.
struct Box {
  Eigen::VectorXd low, high;
};
/// The same without leaving a box, in which `start` must lie: what is held at a side by a gradient
/// that points out of it waits there.
/// Source: Bertsekas 1982, Projected Newton methods for optimization problems with simple
///         constraints, SIAM Journal on Control and Optimization 20 (recalled).
Maximum climb(const std::function<Slope(const Eigen::VectorXd&)>& function, Eigen::VectorXd start,
              const ClimbRules& rules, const Box& box);

}  // namespace pluckbook
