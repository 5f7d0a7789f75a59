#include "numeric/linear_features.h"

#include <cmath>
#include <numbers>
#include <vector>

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// exp(-2 sin^2(x/2) / l^2) = sum of q_k cos(k x), q_k = (2 -[k=0]) I_k(1/l^2) exp(-1/l^2). The sum
// is cut where what is left cannot be seen in a double. Source: Solin and Sarkka 2014, Explicit
// link between periodic covariance functions and state space models, AISTATS (recalled; the test
// sums it up again).
VectorXd amplitudes(double length) {
  constexpr double unseen = 1e-15;
  const double sharpness = 1 / (length * length);
  std::vector<double> found;
  double left = 1;
  for (int k = 0; left > unseen && k < 500; ++k) {
    const double q = (k == 0 ? 1 : 2) * std::cyl_bessel_i(k, sharpness) * std::exp(-sharpness);
    found.push_back(std::sqrt(q));
    left -= q;
    if (q < unseen * 1e-2) break;
  }
  return Eigen::Map<const VectorXd>(found.data(), static_cast<Index>(found.size()));
}

/// Derivatives of the amplitudes' logarithms by that of the length.
VectorXd amplitudes_by_length(double length, Index count) {
  const double sharpness = 1 / (length * length);
  VectorXd slopes(count);
  double here = std::cyl_bessel_i(0, sharpness);
  for (Index k = 0; k < count; ++k) {
    const double next = std::cyl_bessel_i(static_cast<double>(k + 1), sharpness);
    slopes(k) = sharpness * (1 - next / here) - static_cast<double>(k);
    here = next;
  }
  return slopes;
}

}  // namespace

Eigen::RowVector2d mixed(const Kernel& kernel, int series, double sd) {
  if (series == 0) return {sd, 0};
  return {sd * kernel.correlation, sd * std::sqrt(1 - kernel.correlation * kernel.correlation)};
}

Eigen::RowVector2d mixed_by_correlation(const Kernel& kernel, int series,
                                        const Eigen::RowVector2d& pair) {
  if (series == 0) return {0, 0};
  return {std::sqrt(1 - kernel.correlation * kernel.correlation) * pair(1),
          -kernel.correlation * pair(1)};
}

LinearFeatures::LinearFeatures(const Kernel& kernel, std::span<const Observation> seen,
                               const std::set<int>& sources)
    : kernel_(kernel), harmonics_(amplitudes(kernel.season_length)) {
  count_ = 2 + 2 * (2 * harmonics_.size() - 1);
  for (const int source : sources) sources_[source] = count_++;
  std::vector<TimePoint> points;
  for (const Observation& one : seen) points.push_back(one.when);
  make_room_for(points);
}

void LinearFeatures::make_room_for(std::span<const TimePoint> points) {
  for (const TimePoint& point : points) {
    if (years_.try_emplace(point.year, count_).second) count_ += 2;
    if (onsets_.try_emplace(point.onset_year, count_).second) count_ += 1;
    if (point.event != 0 && events_.try_emplace(point.event, count_).second) count_ += 2;
  }
}

Index LinearFeatures::onset_column(int onset_year) const {
  const auto found = onsets_.find(onset_year);
  return found == onsets_.end() ? -1 : found->second;
}

void LinearFeatures::fill(Eigen::Ref<Eigen::RowVectorXd> row, const TimePoint& point) const {
  const Scales& sd = kernel_.of[static_cast<std::size_t>(point.series)];
  const double angle = 2 * std::numbers::pi * point.day / days_per_year;
  const Eigen::RowVector2d season = mixed(kernel_, point.series, sd.season);
  row.setZero();
  row.head<2>() = mixed(kernel_, point.series, sd.offset);
  row.segment<2>(2) = harmonics_(0) * season;
  for (Index k = 1; k < harmonics_.size(); ++k) {
    const double turn = static_cast<double>(k) * angle;
    row.segment<2>(4 * k) = harmonics_(k) * std::cos(turn) * season;
    row.segment<2>(4 * k + 2) = harmonics_(k) * std::sin(turn) * season;
  }
  row.segment<2>(years_.at(point.year)) = mixed(kernel_, point.series, sd.year);
  row(onsets_.at(point.onset_year)) = kernel_.onset * point.onset_slope;
  if (point.event != 0)
    row.segment<2>(events_.at(point.event)) = mixed(kernel_, point.series, point.event_sd);
}

void LinearFeatures::add_gradient(const MatrixXd& rows, const MatrixXd& by_rows,
                                  std::span<const TimePoint> points,
                                  LikelihoodGradient& gradient) const {
  const VectorXd by_length = amplitudes_by_length(kernel_.season_length, harmonics_.size());
  KernelVector& sum = gradient.kernel;
  for (Index i = 0; i < rows.rows(); ++i) {
    const TimePoint& point = points[static_cast<std::size_t>(i)];
    // A pair of columns turns with the correlation and grows with its sd.
    const auto pair = [&](Index at) {
      const Eigen::RowVector2d row = rows.block<1, 2>(i, at), by_row = by_rows.block<1, 2>(i, at);
      sum(10) += by_row.dot(mixed_by_correlation(kernel_, point.series, row));
      return by_row.dot(row);
    };
    const Index own = 4 * Index{point.series}, onset = onsets_.at(point.onset_year);
    sum(own) += pair(0);
    for (Index at = 2; at < 4 * harmonics_.size(); at += 2) {
      const double season = pair(at);
      sum(own + 1) += season;
      sum(8) += season * by_length(at / 4);
    }
    sum(own + 2) += pair(years_.at(point.year));
    sum(11) += by_rows(i, onset) * rows(i, onset);
    gradient.onset_slope(i) += by_rows(i, onset) * kernel_.onset;
    if (point.event != 0) pair(events_.at(point.event));
  }
}

MatrixXd LinearFeatures::rows(std::span<const TimePoint> points) const {
  MatrixXd rows(static_cast<Index>(points.size()), count_);
  Eigen::RowVectorXd row(count_);
  for (Index i = 0; i < rows.rows(); ++i) {
    fill(row, points[static_cast<std::size_t>(i)]);
    rows.row(i) = row;
  }
  return rows;
}

MatrixXd LinearFeatures::rows(std::span<const Observation> seen) const {
  std::vector<TimePoint> points;
  for (const Observation& one : seen) points.push_back(one.when);
  MatrixXd all = rows(points);
  for (std::size_t i = 0; i < seen.size(); ++i)
    for (const SharedError& error : seen[i].shared)
      if (const auto at = sources_.find(error.source); at != sources_.end())
        all(static_cast<Index>(i), at->second) = error.sd;
  return all;
}

}  // namespace pluckbook
