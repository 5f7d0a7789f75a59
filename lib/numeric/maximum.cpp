#include "numeric/maximum.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace pluckbook {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;
using Function = std::function<Slope(const VectorXd&)>;

constexpr double flat = 1e-7;         // gradient that counts as zero
constexpr double enough_gain = 1e-4;  // of what the slope promises
constexpr double longest_step = 1;    // of one coordinate: these are logarithms
constexpr double unseen = 1e-12;      // a promise so small a part of the value is none
constexpr int most_halvings = 34;     // of a step that climbs too little: to 1e-10 of it

struct Point {
  VectorXd at;
  Slope slope;
};

/// The gradient without what a side of the box holds.
VectorXd pull_of(const Point& here, const Box& box) {
  VectorXd pull = here.slope.gradient;
  for (Eigen::Index i = 0; i < pull.size(); ++i) {
    if (here.at(i) <= box.low(i)) pull(i) = std::max(pull(i), 0.0);
    if (here.at(i) >= box.high(i)) pull(i) = std::min(pull(i), 0.0);
  }
  return pull;
}

std::optional<Point> step_up(const Function& function, const Point& from, VectorXd step,
                             const Box& box) {
  const double widest = step.cwiseAbs().maxCoeff();
  if (widest > longest_step) step *= longest_step / widest;
  double share = 1;
  for (int i = 0; i < most_halvings; ++i) {
    Point next{(from.at + share * step).cwiseMax(box.low).cwiseMin(box.high), {}};
    const double promise = from.slope.gradient.dot(next.at - from.at);
    if (promise <= unseen * std::max(1.0, std::abs(from.slope.value))) return std::nullopt;
    next.slope = function(next.at);
    if (next.slope.value >= from.slope.value + enough_gain * promise) return next;
    share /= 2;
  }
  return std::nullopt;
}

// The inverse curvature after a step, from how the gradient fell along it.
void learn(MatrixXd& inverse, const VectorXd& step, const VectorXd& fall) {
  const double curvature = step.dot(fall);
  if (curvature <= 1e-12 * step.norm() * fall.norm()) return;
  const MatrixXd keep =
      MatrixXd::Identity(step.size(), step.size()) - fall * step.transpose() / curvature;
  inverse = keep.transpose() * inverse * keep + step * step.transpose() / curvature;
}

}  // namespace

Maximum climb(const Function& function, VectorXd start, const ClimbRules& rules, const Box& box) {
  Point here{std::move(start), {}};
  here.slope = function(here.at);
  // How far a slope reaches is not known yet: the first step is no longer than one.
  const double steep = std::max(1.0, here.slope.gradient.cwiseAbs().maxCoeff());
  const MatrixXd fresh = MatrixXd::Identity(here.at.size(), here.at.size()) / steep;
  MatrixXd inverse = fresh;
  for (int i = 0; i < rules.most_steps; ++i) {
    const VectorXd pull = pull_of(here, box);
    if (pull.cwiseAbs().maxCoeff() <= flat) break;
    const VectorXd step = (pull.array() != 0).select(inverse * pull, 0.0);
    // On a parabola of this slope and curvature the top is half of what the step promises.
    if (inverse != fresh && pull.dot(step) / 2 < rules.least_gain) break;
    std::optional<Point> next = step_up(function, here, step, box);
    if (!next) {
      if (inverse == fresh) break;
      inverse = fresh;  // the curvature was misjudged: try straight up once
      continue;
    }
    learn(inverse, next->at - here.at, here.slope.gradient - next->slope.gradient);
    here = *std::move(next);
  }
  return {here.at, here.slope.value};
}

Maximum climb(const Function& function, VectorXd start, const ClimbRules& rules) {
  const VectorXd far = VectorXd::Constant(start.size(), std::numeric_limits<double>::infinity());
  return climb(function, std::move(start), rules, {-far, far});
}

}  // namespace pluckbook
