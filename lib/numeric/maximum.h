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

/// Climbs from `start` (where the function must exist) until the gradient is all but zero, no step
/// gains, or `most_steps` were taken. Finds the nearest hill, not the highest.
/// Source: Nocedal and Wright 2006, Numerical Optimization, algorithm 6.1 (BFGS), with steps
///         halved until they gain enough (algorithm 3.1).
Maximum climb(const std::function<Slope(const Eigen::VectorXd&)>& function, Eigen::VectorXd start,
              int most_steps);

}  // namespace pluckbook
