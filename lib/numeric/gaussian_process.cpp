#include "numeric/gaussian_process.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>
#include <utility>

#include "numeric/interpolation.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double days_per_year = 365.25;
constexpr auto lower = Eigen::Lower;

double square(double x) {
  return x * x;
}

// 2 sin^2(pi (t_a - t_b) / 365.25) / season_length^2: how far apart in the season.
double season_distance(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  return 2 * square(std::sin(std::numbers::pi * (a.day - b.day) / days_per_year) / k.season_length);
}

double wiggle_distance(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  return std::numbers::sqrt3 * std::abs(a.day - b.day) / k.wiggle_length;
}

// Derivatives of covariance(k, a, b) by the logarithm of each field of Kernel.
VectorXd covariance_gradient(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  const double s = season_distance(k, a, b), r = wiggle_distance(k, a, b);
  const double season = square(k.season) * std::exp(-s);
  const double decay = square(k.wiggle) * std::exp(-r);
  return VectorXd{{2 * square(k.offset), 2 * season, 2 * season * s,
                   a.year == b.year ? 2 * square(k.year) : 0.0, 2 * decay * (1 + r),
                   decay * square(r)}};
}

MatrixXd covariance_of(const Kernel& kernel, std::span<const Observation> seen) {
  const auto n = static_cast<Index>(seen.size());
  MatrixXd k(n, n);
  for (Index j = 0; j < n; ++j) {
    const Observation& b = seen[static_cast<std::size_t>(j)];
    for (Index i = j; i < n; ++i)
      k(i, j) = k(j, i) = covariance(kernel, seen[static_cast<std::size_t>(i)].when, b.when);
    k(j, j) += b.noise_variance;
  }
  return k;
}

MatrixXd cross_covariance(const Kernel& kernel, std::span<const Observation> seen,
                          std::span<const TimePoint> asked) {
  MatrixXd k(static_cast<Index>(seen.size()), static_cast<Index>(asked.size()));
  for (Index j = 0; j < k.cols(); ++j)
    for (Index i = 0; i < k.rows(); ++i)
      k(i, j) = covariance(kernel, seen[static_cast<std::size_t>(i)].when,
                           asked[static_cast<std::size_t>(j)]);
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

// Sums run in one order whatever order the bags came in, so answers agree to the last digit.
void put_in_order(std::vector<Observation>& seen) {
  std::sort(seen.begin(), seen.end(), [](const Observation& a, const Observation& b) {
    const auto key = [](const Observation& o) {
      return std::tuple(o.when.day, o.when.year, o.value, o.prior_mean, o.noise_variance);
    };
    return key(a) < key(b);
  });
}

Problem no_factor() {
  return input_problem("these observations cannot be told apart from each other",
                       "Look for a noise variance of nearly zero, a length of zero, or a value "
                       "that is not a number.");
}

// A posterior may be known so well in some direction that rounding makes it negative there; the
// jitter (1e-10 of the variance, 1e-5 of the deviation) covers that and is always added, because
// paths must not jump when the last digit of a covariance does.
MatrixXd sampling_factor(const MatrixXd& covariance) {
  const double largest = covariance.size() == 0 ? 0 : covariance.diagonal().maxCoeff();
  for (double jitter = 1e-10; largest > 0 && jitter < 10; jitter *= 10) {
    MatrixXd padded = covariance;
    padded.diagonal().array() += jitter * largest;
    const Eigen::LLT<MatrixXd> llt(padded);
    if (llt.info() == Eigen::Success) return llt.matrixL();
  }
  return MatrixXd::Zero(covariance.rows(), covariance.cols());
}

// SplitMix64. Source: Steele, Lea and Flood 2014, Fast splittable pseudorandom number generators,
// OOPSLA (constants recalled; the test holds the first outputs).
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  double normal() { return normal_quantile(uniform()); }

 private:
  // Strictly inside (0, 1): the middles of 2^52 equal parts.
  double uniform() { return (static_cast<double>(next() >> 12U) + 0.5) * 0x1p-52; }

  std::uint64_t next() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
  }

  std::uint64_t state_;
};

}  // namespace

double covariance(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  const double r = wiggle_distance(k, a, b);
  return square(k.offset) + square(k.season) * std::exp(-season_distance(k, a, b)) +
         (a.year == b.year ? square(k.year) : 0.0) + square(k.wiggle) * (1 + r) * std::exp(-r);
}

Result<GaussianProcess> GaussianProcess::condition(const Kernel& kernel,
                                                   std::vector<Observation> seen) {
  put_in_order(seen);
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
  const MatrixXd explained = factor_.triangularView<lower>().solve(cross);
  k.selfadjointView<lower>().rankUpdate(explained.transpose(), -1);
  k.triangularView<Eigen::StrictlyUpper>() = k.transpose();
  return posterior;
}

GaussianProcess::Marginals GaussianProcess::marginals_at(std::span<const TimePoint> asked,
                                                         const VectorXd& prior_mean) const {
  const MatrixXd cross = cross_covariance(kernel_, seen_, asked);
  const MatrixXd explained = factor_.triangularView<lower>().solve(cross);
  VectorXd variance(static_cast<Index>(asked.size()));
  for (Index i = 0; i < variance.size(); ++i) {
    const TimePoint& when = asked[static_cast<std::size_t>(i)];
    variance(i) = covariance(kernel_, when, when) - explained.col(i).squaredNorm();
  }
  return {prior_mean + cross.transpose() * weights_, variance.cwiseMax(0)};
}

double GaussianProcess::log_likelihood() const {
  const double n = static_cast<double>(seen_.size());
  return -0.5 * residuals(seen_).dot(weights_) - factor_.diagonal().array().log().sum() -
         0.5 * n * std::log(2 * std::numbers::pi);
}

// Rasmussen and Williams 2006, equation 5.9: half the trace of (w w' - C^-1) dC.
VectorXd GaussianProcess::log_likelihood_gradient() const {
  const Index n = factor_.rows();
  const MatrixXd half = factor_.triangularView<lower>().solve(MatrixXd::Identity(n, n));
  const MatrixXd pull = weights_ * weights_.transpose() - half.transpose() * half;
  VectorXd gradient = VectorXd::Zero(kernel_parameters);
  for (Index j = 0; j < n; ++j)
    for (Index i = 0; i < n; ++i)
      gradient += 0.5 * pull(i, j) *
                  covariance_gradient(kernel_, seen_[static_cast<std::size_t>(i)].when,
                                      seen_[static_cast<std::size_t>(j)].when);
  return gradient;
}

MatrixXd sample_paths(const Posterior& posterior, int count, std::uint64_t seed) {
  const MatrixXd factor = sampling_factor(posterior.covariance);
  Random random(seed);
  MatrixXd normals(posterior.mean.size(), count);
  for (Index path = 0; path < normals.cols(); ++path)
    for (Index day = 0; day < normals.rows(); ++day) normals(day, path) = random.normal();
  MatrixXd paths = factor.triangularView<lower>() * normals;
  paths.colwise() += posterior.mean;
  return paths;
}

}  // namespace pluckbook
