// gaussian_process.h - exact Gaussian-process regression of one series that runs over several
// years. Knows no forage: values live on whatever scale the caller chose (log CP, logit TDN).
//
//   k(a,b) = offset^2 + season^2 exp(-2 sin^2(pi (t_a - t_b) / 365.25) / season_length^2)
//          + year^2 [year_a = year_b] + wiggle^2 (1 + r) exp(-r),  r = sqrt(3) |t_a - t_b| / length
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <span>
#include <vector>

#include "base/problem.h"

namespace pluckbook {

/// Hyperparameters: standard deviations on the values' scale, lengths as said.
struct Kernel {
  double offset = 0;         // the pasture's own level
  double season = 0;         // its own seasonal shape
  double season_length = 1;  // of the periodic term, no unit
  double year = 0;           // level of one year
  double wiggle = 0;         // within-year wandering, Matern 3/2
  double wiggle_length = 1;  // days
};
inline constexpr int kernel_parameters = 6;

/// When: a day number and the season (year label) it belongs to.
struct TimePoint {
  double day = 0;
  int year = 0;
};

double covariance(const Kernel& kernel, const TimePoint& a, const TimePoint& b);

struct Observation {
  TimePoint when;
  double value = 0;
  double prior_mean = 0;
  double noise_variance = 0;  // > 0
};

/// The posterior of the noise-free curve at the days asked for.
struct Posterior {
  Eigen::VectorXd mean;        // m
  Eigen::MatrixXd covariance;  // m x m, symmetric
};

/// Regression on one series; conditioned once, asked many times.
class GaussianProcess {
 public:
  /// n = 0 observations is allowed and leaves the prior. Order does not matter.
  /// Fails: a Problem (Fault::input) when the covariance has no Cholesky factor at the largest
  ///        jitter tried (1e-10 of its diagonal).
  /// Source: Rasmussen and Williams 2006, Gaussian Processes for Machine Learning, algorithm 2.1.
  static Result<GaussianProcess> condition(const Kernel& kernel, std::vector<Observation> seen);

  Posterior at(std::span<const TimePoint> asked, const Eigen::VectorXd& prior_mean) const;

  /// Mean and variance only; cost grows linearly in the days asked for.
  struct Marginals {
    Eigen::VectorXd mean, variance;
  };
  Marginals marginals_at(std::span<const TimePoint> asked, const Eigen::VectorXd& prior_mean) const;

  double log_likelihood() const;
  /// Derivatives of log_likelihood by the natural logarithm of each field of Kernel, in order.
  Eigen::VectorXd log_likelihood_gradient() const;

 private:
  GaussianProcess() = default;
  Kernel kernel_;
  std::vector<Observation> seen_;
  Eigen::MatrixXd factor_;   // lower Cholesky factor of K + noise, n x n
  Eigen::VectorXd weights_;  // (K + noise)^-1 (value - prior mean)
};

/// `count` joint draws from a posterior, one a column (m x count). The same seed gives the same
/// numbers on every run and machine: normals come from our own generator, not the library's. The
/// first paths stay the same when more are drawn.
/// Requires: covariance symmetric and, but for rounding, positive semi-definite.
Eigen::MatrixXd sample_paths(const Posterior& posterior, int count, std::uint64_t seed);

}  // namespace pluckbook
