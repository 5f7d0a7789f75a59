// wiggle_chain.h - the wiggle of two series as a chain of states from day to day: what lies before
// a day and what lies after it are independent once the state of that day is known, so a sweep
// forward and one back give what a matrix of all days would.
//
// A Matern 3/2 process is the solution of a second-order stochastic differential equation; its
// state is value and slope. Source: Sarkka and Solin 2019, Applied Stochastic Differential
// Equations, sections 6.3, 10.2 and 10.4, and 12.3 (recalled; tests compare with the dense route).
#pragma once

#include <Eigen/Core>
#include <vector>

#include "numeric/kernel.h"

namespace pluckbook {

/// Of two independent unit processes: value, slope x length / sqrt 3, value, slope.
using WiggleCovariance = Eigen::Matrix4d;
using WiggleStates = Eigen::Matrix<double, 4, Eigen::Dynamic>;  // one right-hand side a column

/// What the values of one day say of the two series, as information: precision, and precision
/// times value for each right-hand side. Zero where nothing was seen.
struct DayEvidence {
  double day = 0;
  Eigen::Matrix2d information = Eigen::Matrix2d::Zero();
  Eigen::Matrix<double, 2, Eigen::Dynamic> pull;
};

/// One day after all evidence: its states, and how they follow from the next day's:
/// state = mean + gain (next state - next mean) + an error of covariance `given_next`.
struct WiggleDay {
  WiggleStates mean;
  WiggleCovariance covariance, gain, given_next;
};

struct SmoothedWiggle {
  std::vector<WiggleDay> days;
  double log_determinant = 0;  // sum over the days of log |I + information x what was foreseen|
};

/// The wiggle's part of each series (rows) in the state.
Eigen::Matrix<double, 2, 4> wiggle_rows(const Kernel& kernel);

/// Requires: days in ascending order without repeats, as many right-hand sides in each `pull`.
SmoothedWiggle smooth_wiggle(const Kernel& kernel, const std::vector<DayEvidence>& days);

/// With K the covariance of all days' states: the derivative by the logarithm of the wiggle's
/// length of half the trace of pulls' K pulls, pulls held, less half the log determinant. One of
/// `pulls` a day. Source: product rule over the steps; for the determinant, over the filter.
double wiggle_length_gradient(const Kernel& kernel, const std::vector<DayEvidence>& days,
                              const std::vector<WiggleStates>& pulls);

}  // namespace pluckbook
