// gaussian_process.h - exact Gaussian-process regression by the textbook: one dense matrix of all
// observations. It fits hyperparameters and is the second opinion on markov_process.h, which gives
// the same answers at a cost linear in the days.
#pragma once

#include <Eigen/Core>
#include <span>
#include <vector>

#include "base/problem.h"
#include "numeric/kernel.h"

namespace pluckbook {

/// What regression refuses: errors of nearly zero, lengths of zero, values that are not numbers.
Problem no_factor();

class GaussianProcess {
 public:
  /// n = 0 observations is allowed and leaves the prior.
  /// Fails: a Problem (Fault::input) when the covariance has no Cholesky factor at the largest
  ///        jitter tried (1e-10 of its diagonal).
  /// Source: Rasmussen and Williams 2006, Gaussian Processes for Machine Learning, algorithm 2.1.
  static Result<GaussianProcess> condition(const Kernel& kernel, std::vector<Observation> seen);

  Posterior at(std::span<const TimePoint> asked, const Eigen::VectorXd& prior_mean) const;

  double log_likelihood() const;
  LikelihoodGradient log_likelihood_gradient() const;

 private:
  GaussianProcess(const Kernel& kernel, std::vector<Observation> seen);
  Eigen::MatrixXd covariance_of_seen() const;
  const DayPair& days_of(Eigen::Index i, Eigen::Index j) const;

  Kernel kernel_;
  std::vector<Observation> seen_;
  std::vector<std::size_t> day_;  // of each observation: its place among the different days
  std::vector<DayPair> pairs_;    // of the different days: (0,0), (1,0), (1,1), (2,0) ...
  Eigen::MatrixXd factor_;        // lower Cholesky factor of K + errors, n x n
  Eigen::VectorXd weights_;       // (K + errors)^-1 (value - prior mean)
};

}  // namespace pluckbook
