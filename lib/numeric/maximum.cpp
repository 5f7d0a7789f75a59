#include "numeric/maximum.h"

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
constexpr int most_halvings = 34;     // of a step that climbs too little: to 1e-10 of it

struct Point {
  VectorXd at;
  Slope slope;
};

std::optional<Point> step_up(const Function& function, const Point& from, VectorXd step) {
  const double widest = step.cwiseAbs().maxCoeff();
  if (widest > longest_step) step *= longest_step / widest;
  const double promise = from.slope.gradient.dot(step);
  double share = 1;
  for (int i = 0; i < most_halvings; ++i) {
    Point next{from.at + share * step, {}};
    next.slope = function(next.at);
    if (next.slope.value >= from.slope.value + enough_gain * share * promise) return next;
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

Maximum climb(const Function& function, VectorXd start, const ClimbRules& rules) {
  Point here{std::move(start), {}};
  here.slope = function(here.at);
  const MatrixXd fresh = MatrixXd::Identity(here.at.size(), here.at.size());
  MatrixXd inverse = fresh;
  for (int i = 0; i < rules.most_steps; ++i) {
    const VectorXd step = inverse * here.slope.gradient;
    // On a parabola of this slope and curvature the top is half of the promise above.
    const bool judged = inverse != fresh;
    if (here.slope.gradient.cwiseAbs().maxCoeff() <= flat ||
        (judged && here.slope.gradient.dot(step) / 2 < rules.least_gain))
      break;
    std::optional<Point> next = step_up(function, here, step);
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

}  // namespace pluckbook
