#include "numeric/gaussian_process.h"

#include <Eigen/Cholesky>
#include <cmath>
#include <numbers>
#include <utility>

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

const TimePoint& when(std::span<const Observation> seen, Index i) {
  return seen[static_cast<std::size_t>(i)].when;
}

MatrixXd covariance_of(const Kernel& kernel, std::span<const Observation> seen) {
  const auto n = static_cast<Index>(seen.size());
  MatrixXd k(n, n);
  for (Index j = 0; j < n; ++j) {
    const Observation& b = seen[static_cast<std::size_t>(j)];
    for (Index i = j; i < n; ++i) {
      const Observation& a = seen[static_cast<std::size_t>(i)];
      k(i, j) = k(j, i) = covariance(kernel, a.when, b.when) + shared_covariance(a, b);
    }
    k(j, j) += b.noise_variance;
  }
  return k;
}

MatrixXd cross_covariance(const Kernel& kernel, std::span<const Observation> seen,
                          std::span<const TimePoint> asked) {
  MatrixXd k(static_cast<Index>(seen.size()), static_cast<Index>(asked.size()));
  for (Index j = 0; j < k.cols(); ++j)
    for (Index i = 0; i < k.rows(); ++i)
      k(i, j) = covariance(kernel, when(seen, i), asked[static_cast<std::size_t>(j)]);
  return k;
}

VectorXd residuals(std::span<const Observation> seen) {
  VectorXd z(static_cast<Index>(seen.size()));
  for (Index i = 0; i < z.size(); ++i) {
    const Observation& o = seen[static_cast<std::size_t>(i)];
    z(i) = o.value - o.prior_mean;
  }
  return z;
}

}  // namespace

Problem no_factor() {
  return input_problem("these observations cannot be told apart from each other",
                       "Look for a noise variance of nearly zero, a length of zero, or a value "
                       "that is not a number.");
}

Result<GaussianProcess> GaussianProcess::condition(const Kernel& kernel,
                                                   std::vector<Observation> seen) {
  const MatrixXd k = covariance_of(kernel, seen);
  const VectorXd z = residuals(seen);
  if (!k.allFinite() || !z.allFinite()) return no_factor();
  for (const double jitter : {0.0, 1e-13, 1e-12, 1e-11, 1e-10}) {
    const Eigen::LLT<MatrixXd> llt(k + MatrixXd(jitter * k.diagonal().asDiagonal()));
    if (llt.info() != Eigen::Success) continue;
    GaussianProcess process;
    process.kernel_ = kernel;
    process.seen_ = std::move(seen);
    process.factor_ = llt.matrixL();
    process.weights_ = llt.solve(z);
    return process;
  }
  return no_factor();
}

Posterior GaussianProcess::at(std::span<const TimePoint> asked, const VectorXd& prior_mean) const {
  const auto m = static_cast<Index>(asked.size());
  const MatrixXd cross = cross_covariance(kernel_, seen_, asked);
  Posterior posterior{prior_mean + cross.transpose() * weights_, MatrixXd(m, m)};
  MatrixXd& k = posterior.covariance;
  for (Index j = 0; j < m; ++j)
    for (Index i = j; i < m; ++i)
      k(i, j) = covariance(kernel_, asked[static_cast<std::size_t>(i)],
                           asked[static_cast<std::size_t>(j)]);
  const MatrixXd explained = factor_.triangularView<Eigen::Lower>().solve(cross);
  k.selfadjointView<Eigen::Lower>().rankUpdate(explained.transpose(), -1);
  k.triangularView<Eigen::StrictlyUpper>() = k.transpose();
  return posterior;
}

double GaussianProcess::log_likelihood() const {
  const double n = static_cast<double>(seen_.size());
  return -0.5 * residuals(seen_).dot(weights_) - factor_.diagonal().array().log().sum() -
         0.5 * n * std::log(2 * std::numbers::pi);
}

// Rasmussen and Williams 2006, equation 5.9: half the trace of (w w' - C^-1) dC.
GaussianProcess::Gradient GaussianProcess::log_likelihood_gradient() const {
  const Index n = factor_.rows();
  const MatrixXd half = factor_.triangularView<Eigen::Lower>().solve(MatrixXd::Identity(n, n));
  const MatrixXd pull = weights_ * weights_.transpose() - half.transpose() * half;
  Gradient gradient{KernelVector::Zero(), weights_, VectorXd::Zero(n)};
  for (Index j = 0; j < n; ++j) {
    const TimePoint& b = when(seen_, j);
    for (Index i = 0; i < n; ++i) {
      const TimePoint& a = when(seen_, i);
      if (i >= j)
        gradient.kernel += (i == j ? 0.5 : 1) * pull(i, j) * covariance_gradient(kernel_, a, b);
      if (a.onset_year == b.onset_year)
        gradient.onset_slope(j) += pull(i, j) * kernel_.onset * kernel_.onset * a.onset_slope;
    }
  }
  return gradient;
}

}  // namespace pluckbook
