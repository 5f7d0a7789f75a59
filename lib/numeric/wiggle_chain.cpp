#include "numeric/wiggle_chain.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <cmath>
#include <numbers>
#include <utility>

#include "numeric/linear_features.h"

namespace pluckbook {
namespace {

using Eigen::Matrix2d;
using Eigen::Matrix4d;
using Rows = Eigen::Matrix<double, 2, 4>;

/// A day after the evidence up to it, and as it was foreseen before its own.
struct Filtered {
  WiggleStates mean, foreseen_mean;
  Matrix4d covariance, foreseen, step;  // step: from the day before
};

// exp of the equation's matrix over u = sqrt(3) days / length, slopes measured in that unit.
Matrix4d step_over(double days, double length) {
  const double u = std::numbers::sqrt3 * days / length;
  Matrix2d one;
  one << 1 + u, u, -u, 1 - u;
  Matrix4d step = Matrix4d::Zero();
  step.topLeftCorner<2, 2>() = step.bottomRightCorner<2, 2>() = std::exp(-u) * one;
  return step;
}

/// Its derivative by the logarithm of the length.
Matrix4d step_by_length(double days, double length) {
  const double u = std::numbers::sqrt3 * days / length;
  Matrix2d one;
  one << u * u, u * (u - 1), u * (1 - u), u * (2 - u);
  Matrix4d slope = Matrix4d::Zero();
  slope.topLeftCorner<2, 2>() = slope.bottomRightCorner<2, 2>() = std::exp(-u) * one;
  return slope;
}

Filtered foresee(const Filtered& before, double days, double length) {
  Filtered next;
  next.step = step_over(days, length);
  next.foreseen_mean = next.step * before.mean;
  // The process is stationary with unit covariance: what a step forgets, chance puts back.
  next.foreseen = Matrix4d::Identity() +
                  next.step * (before.covariance - Matrix4d::Identity()) * next.step.transpose();
  return next;
}

/// Takes in a day's evidence; returns its share of the log determinant.
double take_in(Filtered& day, const DayEvidence& evidence, const Rows& rows) {
  const Matrix4d& p = day.foreseen;
  const Matrix2d seen = Matrix2d::Identity() + evidence.information * rows * p * rows.transpose();
  const Matrix2d inverse = seen.inverse();
  const Eigen::Matrix<double, 4, 2> gain = p * rows.transpose() * inverse;
  day.mean = day.foreseen_mean +
             gain * (evidence.pull - evidence.information * (rows * day.foreseen_mean));
  day.covariance = p - gain * evidence.information * rows * p;
  day.covariance = ((day.covariance + day.covariance.transpose()) / 2).eval();
  return std::log(seen.determinant());
}

}  // namespace

Rows wiggle_rows(const Kernel& kernel) {
  Rows rows = Rows::Zero();
  for (const int series : {0, 1}) {
    const double sd = kernel.of[static_cast<std::size_t>(series)].wiggle;
    const Eigen::RowVector2d mix = mixed(kernel, series, sd);
    rows(series, 0) = mix(0);
    rows(series, 2) = mix(1);
  }
  return rows;
}

double wiggle_length_gradient(const Kernel& kernel, const std::vector<DayEvidence>& days,
                              const std::vector<WiggleStates>& pulls) {
  if (days.empty()) return 0;
  const Rows rows = wiggle_rows(kernel);
  // What the later days pull at each day, after its own step back.
  std::vector<WiggleStates> later(days.size());
  later.back() = pulls.back();
  for (std::size_t i = days.size() - 1; i-- > 0;)
    later[i] =
        pulls[i] +
        step_over(days[i + 1].day - days[i].day, kernel.wiggle_length).transpose() * later[i + 1];
  double gradient = 0;
  WiggleStates earlier = pulls[0];
  Matrix4d covariance, foreseen = Matrix4d::Identity(), by_length = Matrix4d::Zero();
  for (std::size_t i = 0; i < days.size(); ++i) {
    if (i > 0) {
      const double apart = days[i].day - days[i - 1].day;
      const Matrix4d step = step_over(apart, kernel.wiggle_length);
      const Matrix4d slope = step_by_length(apart, kernel.wiggle_length);
      gradient += later[i].cwiseProduct(slope * earlier).sum();
      earlier = (pulls[i] + step * earlier).eval();
      const Matrix4d known = covariance - Matrix4d::Identity();
      const Matrix4d turned = slope * known * step.transpose();
      by_length = (turned + turned.transpose() + step * by_length * step.transpose()).eval();
      foreseen = Matrix4d::Identity() + step * known * step.transpose();
    }
    const Eigen::Matrix<double, 2, 4> informed = days[i].information * rows;
    const Matrix2d inverse =
        (Matrix2d::Identity() + informed * foreseen * rows.transpose()).inverse();
    gradient -= 0.5 * (inverse * informed * by_length * rows.transpose()).trace();
    const Matrix4d left = Matrix4d::Identity() - foreseen * rows.transpose() * inverse * informed;
    covariance = left * foreseen;
    by_length = (left * by_length * left.transpose()).eval();
  }
  return gradient;
}

SmoothedWiggle smooth_wiggle(const Kernel& kernel, const std::vector<DayEvidence>& days) {
  const Rows rows = wiggle_rows(kernel);
  SmoothedWiggle smoothed;
  std::vector<Filtered> filtered;
  for (std::size_t i = 0; i < days.size(); ++i) {
    Filtered today;
    if (i == 0) {
      today.foreseen_mean = WiggleStates::Zero(4, days[0].pull.cols());
      today.foreseen = Matrix4d::Identity();
    } else {
      today = foresee(filtered.back(), days[i].day - days[i - 1].day, kernel.wiggle_length);
    }
    smoothed.log_determinant += take_in(today, days[i], rows);
    filtered.push_back(std::move(today));
  }
  smoothed.days.resize(days.size());
  for (std::size_t i = days.size(); i-- > 0;) {
    const Filtered& here = filtered[i];
    WiggleDay& day = smoothed.days[i];
    day = {here.mean, here.covariance, Matrix4d::Zero(), here.covariance};
    if (i + 1 == days.size()) continue;
    const Filtered& next = filtered[i + 1];
    const WiggleDay& after = smoothed.days[i + 1];
    const Matrix4d ahead = next.step * here.covariance;
    day.gain = next.foreseen.ldlt().solve(ahead).transpose();
    day.given_next = here.covariance - day.gain * ahead;
    day.mean += day.gain * (after.mean - next.foreseen_mean);
    day.covariance = day.given_next + day.gain * after.covariance * day.gain.transpose();
  }
  return smoothed;
}

}  // namespace pluckbook
