// markov_process.h - the same regression as gaussian_process.h at a cost linear in observations and
// days: all of the kernel but the wiggle is a few straight-line terms (linear_features.h), and the
// wiggle is a chain from day to day (wiggle_chain.h). Exact: the two differ by rounding alone.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <set>
#include <span>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "numeric/kernel.h"
#include "numeric/linear_features.h"
#include "numeric/wiggle_chain.h"

namespace pluckbook {

/// Regression on two series; conditioned once, asked many times.
class MarkovProcess {
 public:
  /// No observations are allowed and leave the prior. Order does not matter.
  /// Fails: a Problem (Fault::input) when errors have no factor or a value is not a number.
  static Result<MarkovProcess> condition(const Kernel& kernel, std::vector<Observation> given);

  double log_likelihood() const { return log_likelihood_; }
  LikelihoodGradient log_likelihood_gradient() const;

  /// Of the error-free curve. Points may come in any order and repeat a day.
  struct Marginals {
    Eigen::VectorXd mean, variance;
  };
  Marginals marginals_at(std::span<const TimePoint> asked, const Eigen::VectorXd& prior_mean) const;

  /// With all covariances: grows with the square of the points asked for.
  Posterior at(std::span<const TimePoint> asked, const Eigen::VectorXd& prior_mean) const;

  /// `count` joint draws of the curve, one a column. The same seed gives the same numbers on every
  /// run; the first paths stay the same when more are drawn.
  Eigen::MatrixXd paths_at(std::span<const TimePoint> asked, const Eigen::VectorXd& prior_mean,
                           int count, std::uint64_t seed) const;

  /// How many days a year came late, and how sure that is.
  struct Onset {
    double days, sd;
  };
  Onset onset(int onset_year) const;

 private:
  /// The observations of one day: rows of `features_`, and their errors.
  struct SeenDay {
    double day;
    Eigen::Index first, count;
    Eigen::MatrixXd precision;                         // of their errors
    Eigen::Matrix<double, 2, Eigen::Dynamic> weights;  // of each value in the two series' evidence
    Eigen::Matrix2d information;
  };
  struct Answer;  // to a set of points: see the source

  MarkovProcess(const Kernel& kernel, LinearFeatures features)
      : kernel_(kernel), layout_(std::move(features)) {}
  bool read_days(std::span<const Observation> seen, const std::set<int>& across);
  bool solve();
  Answer answer(std::span<const TimePoint> asked) const;
  std::vector<DayEvidence> evidence(std::span<const double> other_days) const;

  Kernel kernel_;
  LinearFeatures layout_;
  std::vector<SeenDay> days_;
  std::vector<TimePoint> when_;      // of the observations by date
  std::vector<Eigen::Index> given_;  // which of those given each is
  SmoothedWiggle wiggle_;
  Eigen::MatrixXd seen_;     // one row an observation: its features, then its residual
  Eigen::MatrixXd freed_;    // (wiggle and errors)^-1 of that
  Eigen::MatrixXd factor_;   // lower Cholesky factor of the features' posterior precision
  Eigen::VectorXd weights_;  // posterior mean of the features' numbers
  double log_likelihood_ = 0;
};

}  // namespace pluckbook
