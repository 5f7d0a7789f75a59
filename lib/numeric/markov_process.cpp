#include "numeric/markov_process.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>
#include <set>
#include <tuple>
#include <utility>

#include "numeric/gaussian_process.h"
#include "numeric/random.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// Sums run in one order whatever order the bags came in, so answers agree to the last digit.
std::vector<Index> order_of(std::span<const Observation> given) {
  const auto key = [&](Index i) {
    const Observation& o = given[static_cast<std::size_t>(i)];
    return std::tuple(o.when.day, o.when.series, o.when.year, o.value, o.prior_mean,
                      o.noise_variance);
  };
  std::vector<Index> order(given.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](Index a, Index b) { return key(a) < key(b); });
  return order;
}

/// Sources of error named on more than one day; the others stay within their day's errors.
std::set<int> sources_across_days(std::span<const Observation> seen) {
  std::map<int, double> first_day;
  std::set<int> across;
  for (const Observation& one : seen)
    for (const SharedError& error : one.shared)
      if (first_day.try_emplace(error.source, one.when.day).first->second != one.when.day)
        across.insert(error.source);
  return across;
}

/// Covariance of the errors of one day's observations, without the sources that cross days.
MatrixXd errors_of_day(std::span<const Observation> seen, const std::set<int>& across) {
  std::vector<Observation> own(seen.begin(), seen.end());
  for (Observation& one : own)
    std::erase_if(one.shared, [&](const SharedError& e) { return across.contains(e.source); });
  MatrixXd errors(static_cast<Index>(own.size()), static_cast<Index>(own.size()));
  for (std::size_t i = 0; i < own.size(); ++i)
    for (std::size_t j = 0; j < own.size(); ++j)
      errors(static_cast<Index>(i), static_cast<Index>(j)) =
          shared_covariance(own[i], own[j]) + (i == j ? own[i].noise_variance : 0);
  return errors;
}

// A draw's covariance may be so small in some direction that rounding makes it negative there; the
// jitter (1e-13 of the largest, 3e-7 of a deviation) covers that and is always added, because paths
// must not jump when the last digit of a covariance does.
Eigen::Matrix4d draw_factor(Eigen::Matrix4d covariance) {
  covariance.diagonal().array() += 1e-13 * covariance.diagonal().maxCoeff();
  return covariance.llt().matrixL();
}

/// A column a path: independent standard normal numbers, each path from a stream of its own.
MatrixXd normals(Index rows, int count, std::uint64_t seed) {
  MatrixXd drawn(rows, count);
  Random seeds(seed);
  for (Index path = 0; path < drawn.cols(); ++path) {
    Random random(seeds.bits());
    for (Index i = 0; i < rows; ++i) drawn(i, path) = random.normal();
  }
  return drawn;
}

}  // namespace

/// The posterior at some points: mean + spread x (independent normals) + the wiggle's own part,
/// `rows` of whose state of day `step` make the point.
struct MarkovProcess::Answer {
  VectorXd mean;  // without the prior mean
  MatrixXd spread;
  std::vector<std::size_t> step;
  Eigen::Matrix<double, Eigen::Dynamic, 4> rows;
  std::vector<WiggleDay> days;
};

Result<MarkovProcess> MarkovProcess::condition(const Kernel& kernel,
                                               std::vector<Observation> given) {
  if (!have_days(given)) return no_factor();
  const std::vector<Index> order = order_of(given);
  std::vector<Observation> seen;
  for (const Index i : order) seen.push_back(std::move(given[static_cast<std::size_t>(i)]));
  const std::set<int> across = sources_across_days(seen);
  MarkovProcess process(kernel, LinearFeatures(kernel, seen, across));
  process.given_ = order;
  for (const Observation& one : seen) process.when_.push_back(one.when);
  if (!process.read_days(seen, across) || !process.solve()) return no_factor();
  return process;
}

bool MarkovProcess::read_days(std::span<const Observation> seen, const std::set<int>& across) {
  const auto n = static_cast<Index>(seen.size());
  seen_.resize(n, layout_.count() + 1);
  seen_.leftCols(layout_.count()) = layout_.rows(seen);
  for (Index i = 0; i < n; ++i) {
    const Observation& one = seen[static_cast<std::size_t>(i)];
    seen_(i, layout_.count()) = one.value - one.prior_mean;
  }
  for (std::size_t first = 0, end = 0; first < seen.size(); first = end) {
    const double day = seen[first].when.day;
    while (end < seen.size() && seen[end].when.day == day) ++end;
    const auto today = seen.subspan(first, end - first);
    const Eigen::LLT<MatrixXd> errors(errors_of_day(today, across));
    if (errors.info() != Eigen::Success) return false;
    const auto count = static_cast<Index>(today.size());
    MatrixXd picks = MatrixXd::Zero(count, 2);
    for (Index i = 0; i < count; ++i) picks(i, today[static_cast<std::size_t>(i)].when.series) = 1;
    SeenDay one{day, static_cast<Index>(first), count, {}, {}, {}};
    one.precision = errors.solve(MatrixXd::Identity(count, count));
    one.weights = picks.transpose() * one.precision;
    one.information = one.weights * picks;
    log_likelihood_ -= MatrixXd(errors.matrixL()).diagonal().array().log().sum();
    days_.push_back(std::move(one));
  }
  return seen_.allFinite();
}

/// What was seen, on its days, among other days where nothing was.
std::vector<DayEvidence> MarkovProcess::evidence(std::span<const double> other_days) const {
  std::map<double, const SeenDay*> timeline;
  for (const double day : other_days) timeline[day] = nullptr;
  for (const SeenDay& day : days_) timeline[day.day] = &day;
  std::vector<DayEvidence> evidence;
  for (const auto& [day, seen] : timeline) {
    evidence.push_back({day, Eigen::Matrix2d::Zero(), {}});
    if (seen == nullptr) {
      evidence.back().pull.setZero(2, seen_.cols());
    } else {
      evidence.back().information = seen->information;
      evidence.back().pull = seen->weights * seen_.middleRows(seen->first, seen->count);
    }
  }
  return evidence;
}

// With C = features features' + M, M the wiggle and the errors: M^-1 r is the errors' precision
// times what the smoothed wiggle leaves of r, and Woodbury's identity does the rest.
bool MarkovProcess::solve() {
  const Index p = layout_.count(), n = seen_.rows();
  wiggle_ = smooth_wiggle(kernel_, evidence({}));
  const Eigen::Matrix<double, 2, 4> rows = wiggle_rows(kernel_);
  freed_.resize(n, p + 1);
  for (std::size_t i = 0; i < days_.size(); ++i) {
    const SeenDay& day = days_[i];
    freed_.middleRows(day.first, day.count) =
        day.precision * seen_.middleRows(day.first, day.count) -
        day.weights.transpose() * (rows * wiggle_.days[i].mean);
  }
  const MatrixXd gram = seen_.transpose() * freed_;
  const Eigen::LLT<MatrixXd> llt(MatrixXd::Identity(p, p) + gram.topLeftCorner(p, p));
  if (llt.info() != Eigen::Success) return false;
  factor_ = llt.matrixL();
  weights_ = llt.solve(gram.col(p).head(p));
  log_likelihood_ -= 0.5 * (gram(p, p) - gram.col(p).head(p).dot(weights_)) +
                     0.5 * wiggle_.log_determinant + factor_.diagonal().array().log().sum() +
                     0.5 * static_cast<double>(n) * std::log(2 * std::numbers::pi);
  return std::isfinite(log_likelihood_);
}

// The wiggle answers to the residuals less what the features explain, so a day's value is
// features x numbers + wiggle(residuals) - wiggle(features) x numbers + the wiggle's own part.
MarkovProcess::Answer MarkovProcess::answer(std::span<const TimePoint> asked) const {
  const Index p = layout_.count(), m = static_cast<Index>(asked.size());
  LinearFeatures layout = layout_;
  layout.make_room_for(asked);
  Answer answer;
  answer.spread = layout.rows(asked);
  answer.mean.resize(m);
  answer.rows.resize(m, 4);
  std::vector<double> other_days;
  for (const TimePoint& point : asked) other_days.push_back(point.day);
  const std::vector<DayEvidence> timeline = evidence(other_days);
  answer.days = smooth_wiggle(kernel_, timeline).days;
  const Eigen::Matrix<double, 2, 4> rows = wiggle_rows(kernel_);
  for (Index i = 0; i < m; ++i) {
    const TimePoint& point = asked[static_cast<std::size_t>(i)];
    const auto at = std::lower_bound(timeline.begin(), timeline.end(), point.day,
                                     [](const DayEvidence& e, double day) { return e.day < day; });
    answer.step.push_back(static_cast<std::size_t>(at - timeline.begin()));
    answer.rows.row(i) = rows.row(point.series);
    const Eigen::RowVectorXd smoothed = answer.rows.row(i) * answer.days[answer.step.back()].mean;
    answer.spread.row(i).head(p) -= smoothed.head(p);
    answer.mean(i) = smoothed(p) + answer.spread.row(i).head(p).dot(weights_);
  }
  answer.spread.leftCols(p) = factor_.triangularView<Eigen::Lower>()
                                  .solve(answer.spread.leftCols(p).transpose())
                                  .transpose();
  return answer;
}

MarkovProcess::Marginals MarkovProcess::marginals_at(std::span<const TimePoint> asked,
                                                     const VectorXd& prior_mean) const {
  const Answer found = answer(asked);
  Marginals marginals{prior_mean + found.mean, found.spread.rowwise().squaredNorm()};
  for (Index i = 0; i < found.mean.size(); ++i) {
    const WiggleDay& day = found.days[found.step[static_cast<std::size_t>(i)]];
    marginals.variance(i) += found.rows.row(i) * day.covariance * found.rows.row(i).transpose();
  }
  return marginals;
}

Posterior MarkovProcess::at(std::span<const TimePoint> asked, const VectorXd& prior_mean) const {
  const Answer found = answer(asked);
  const Index m = found.mean.size();
  Posterior posterior{prior_mean + found.mean, found.spread * found.spread.transpose()};
  for (Index j = 0; j < m; ++j) {
    // From day to day backward: the covariance of an earlier state with this one's.
    std::size_t step = found.step[static_cast<std::size_t>(j)];
    std::map<std::size_t, Eigen::Vector4d> with_earlier;
    Eigen::Vector4d carried = found.days[step].covariance * found.rows.row(j).transpose();
    with_earlier[step] = carried;
    while (step-- > 0) with_earlier[step] = carried = found.days[step].gain * carried;
    for (Index i = 0; i < m; ++i) {
      const auto earlier = with_earlier.find(found.step[static_cast<std::size_t>(i)]);
      if (earlier == with_earlier.end()) continue;  // later: met from the other side
      const double wiggle = found.rows.row(i).dot(earlier->second);
      posterior.covariance(i, j) += wiggle;
      if (found.step[static_cast<std::size_t>(i)] != found.step[static_cast<std::size_t>(j)])
        posterior.covariance(j, i) += wiggle;
    }
  }
  return posterior;
}

MatrixXd MarkovProcess::paths_at(std::span<const TimePoint> asked, const VectorXd& prior_mean,
                                 int count, std::uint64_t seed) const {
  const Answer found = answer(asked);
  if (asked.empty()) return MatrixXd(0, count);
  const auto [first, last] = std::minmax_element(found.step.begin(), found.step.end());
  const Index p = found.spread.cols();
  const auto steps = static_cast<Index>(*last - *first + 1);
  const MatrixXd drawn = normals(p + 4 * steps, count, seed);
  MatrixXd paths = found.spread * drawn.topRows(p);
  paths.colwise() += prior_mean + found.mean;
  std::multimap<std::size_t, Index> points;
  for (std::size_t i = 0; i < found.step.size(); ++i)
    points.emplace(found.step[i], static_cast<Index>(i));
  WiggleStates state = WiggleStates::Zero(4, count);
  for (Index back = 0; back < steps; ++back) {
    const std::size_t step = *last - static_cast<std::size_t>(back);
    const WiggleDay& day = found.days[step];
    const Eigen::Matrix4d factor = draw_factor(back == 0 ? day.covariance : day.given_next);
    state = (day.gain * state + factor * drawn.middleRows(p + 4 * back, 4)).eval();
    const auto [begin, end] = points.equal_range(step);
    for (auto point = begin; point != end; ++point)
      paths.row(point->second) += found.rows.row(point->second) * state;
  }
  return paths;
}

MarkovProcess::Onset MarkovProcess::onset(int onset_year) const {
  const Index column = layout_.onset_column(onset_year);
  if (column < 0) return {0, kernel_.onset};
  VectorXd unit = VectorXd::Unit(layout_.count(), column);
  factor_.triangularView<Eigen::Lower>().solveInPlace(unit);
  return {kernel_.onset * weights_(column), kernel_.onset * unit.norm()};
}

}  // namespace pluckbook
