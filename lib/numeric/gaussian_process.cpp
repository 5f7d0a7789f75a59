#include "numeric/gaussian_process.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <map>
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

/// (L L')^-1, the lower half of it. Blocks pass over what is zero in L^-1.
MatrixXd lower_inverse(const MatrixXd& factor) {
  constexpr Index block = 32;
  const Index n = factor.rows();
  MatrixXd half = MatrixXd::Zero(n, n);
  for (Index at = 0; at < n; at += block) {
    const Index width = std::min(block, n - at), below = n - at;
    auto columns = half.block(at, at, below, width);
    columns.topRows(width).setIdentity();
    factor.bottomRightCorner(below, below).triangularView<Eigen::Lower>().solveInPlace(columns);
  }
  MatrixXd inverse(n, n);
  for (Index at = 0; at < n; at += block) {
    const Index width = std::min(block, n - at), below = n - at, left = at + width;
    inverse.block(at, 0, width, left).noalias() =
        half.block(at, at, below, width).transpose() * half.block(at, 0, below, left);
  }
  return inverse;
}

}  // namespace

Problem no_factor() {
  return input_problem("these observations cannot be told apart from each other",
                       "Look for a noise variance of nearly zero, a length of zero, or a value "
                       "that is not a number.");
}

GaussianProcess::GaussianProcess(const Kernel& kernel, std::vector<Observation> seen)
    : kernel_(kernel), seen_(std::move(seen)) {
  std::map<double, std::size_t> places;
  for (const Observation& one : seen_)
    day_.push_back(places.try_emplace(one.when.day, places.size()).first->second);
  std::vector<double> days(places.size());
  for (const auto& [day, place] : places) days[place] = day;
  for (std::size_t i = 0; i < days.size(); ++i)
    for (std::size_t j = 0; j <= i; ++j) pairs_.push_back(day_pair(kernel, days[i], days[j]));
}

const DayPair& GaussianProcess::days_of(Index i, Index j) const {
  const auto [low, high] =
      std::minmax(day_[static_cast<std::size_t>(i)], day_[static_cast<std::size_t>(j)]);
  return pairs_[high * (high + 1) / 2 + low];
}

MatrixXd GaussianProcess::covariance_of_seen() const {
  const auto n = static_cast<Index>(seen_.size());
  MatrixXd k(n, n);
  for (Index j = 0; j < n; ++j) {
    const Observation& b = seen_[static_cast<std::size_t>(j)];
    for (Index i = j; i < n; ++i) {
      const Observation& a = seen_[static_cast<std::size_t>(i)];
      k(i, j) = k(j, i) =
          covariance(kernel_, a.when, b.when, days_of(i, j)) + shared_covariance(a, b);
    }
    k(j, j) += b.noise_variance;
  }
  return k;
}

Result<GaussianProcess> GaussianProcess::condition(const Kernel& kernel,
                                                   std::vector<Observation> seen) {
  if (!have_days(seen)) return no_factor();
  GaussianProcess process(kernel, std::move(seen));
  const MatrixXd k = process.covariance_of_seen();
  const VectorXd z = residuals(process.seen_);
  if (!k.allFinite() || !z.allFinite()) return no_factor();
  for (const double jitter : {0.0, 1e-13, 1e-12, 1e-11, 1e-10}) {
    const Eigen::LLT<MatrixXd> llt(k + MatrixXd(jitter * k.diagonal().asDiagonal()));
    if (llt.info() != Eigen::Success) continue;
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
LikelihoodGradient GaussianProcess::log_likelihood_gradient() const {
  const Index n = factor_.rows();
  const MatrixXd inverse = lower_inverse(factor_);
  LikelihoodGradient gradient{KernelVector::Zero(), weights_, VectorXd::Zero(n)};
  for (Index j = 0; j < n; ++j) {
    const TimePoint& b = when(seen_, j);
    for (Index i = j; i < n; ++i) {
      const TimePoint& a = when(seen_, i);
      const double pull = weights_(i) * weights_(j) - inverse(i, j);
      gradient.kernel +=
          (i == j ? 0.5 : 1) * pull * covariance_gradient(kernel_, a, b, days_of(i, j));
      if (a.onset_year != b.onset_year) continue;
      const double pulled = pull * kernel_.onset * kernel_.onset;
      gradient.onset_slope(j) += pulled * a.onset_slope;
      if (i != j) gradient.onset_slope(i) += pulled * b.onset_slope;
    }
  }
  return gradient;
}

}  // namespace pluckbook
