#include "numeric/gaussian_process.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

namespace pluckbook {
namespace {

using Eigen::Matrix3d;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;

const Kernel one_series = {
    .of = {{{0.15, 0.1, 0.06, 0.12}, {}}}, .season_length = 1.2, .wiggle_length = 30};

// Three bags, the last a year after the first.
const std::vector<Observation> three_bags = {{{150, 2024}, -1.9, -2.0, 0.008},
                                             {{190, 2024}, -2.4, -2.2, 0.006},
                                             {{520, 2025}, -2.1, -2.05, 0.01}};
const std::vector<TimePoint> two_days = {{200, 2024}, {530, 2025}};
const VectorXd two_means{{-2.25, -2.08}};

GaussianProcess conditioned(const Kernel& k, std::vector<Observation> seen) {
  auto process = GaussianProcess::condition(k, std::move(seen));
  EXPECT_TRUE(process.ok());
  return *std::move(process);
}

// The one_series as the formula in the header reads, written a second time.
double formula(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  const double sine = std::sin(std::numbers::pi * (a.day - b.day) / 365.25);
  const double r = std::sqrt(3) * std::abs(a.day - b.day) / k.wiggle_length;
  const Scales& x = k.of[static_cast<std::size_t>(a.series)];
  const Scales& y = k.of[static_cast<std::size_t>(b.series)];
  const double together =
      x.offset * y.offset +
      x.season * y.season * std::exp(-2 * sine * sine / (k.season_length * k.season_length)) +
      (a.year == b.year ? x.year * y.year : 0) + x.wiggle * y.wiggle * (1 + r) * std::exp(-r) +
      (a.event == b.event && a.event > 0 ? a.event_sd * b.event_sd : 0);
  return (a.series == b.series ? 1 : k.correlation) * together +
         (a.onset_year == b.onset_year ? k.onset * k.onset * a.onset_slope * b.onset_slope : 0);
}

// The inverse by cofactors.
Matrix3d inverse_by_hand(const Matrix3d& m) {
  const auto minor = [&](int i, int j) {
    const int r = (i + 1) % 3, s = (i + 2) % 3, c = (j + 1) % 3, d = (j + 2) % 3;
    return m(r, c) * m(s, d) - m(r, d) * m(s, c);
  };
  const double determinant = m(0, 0) * minor(0, 0) + m(0, 1) * minor(0, 1) + m(0, 2) * minor(0, 2);
  Matrix3d inverse;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) inverse(j, i) = minor(i, j) / determinant;
  return inverse;
}

TEST(GaussianProcessPosterior, AgreesWithTheDenseFormulaWrittenOut) {
  Matrix3d c;
  Vector3d z;
  MatrixXd cross(3, 2), prior(2, 2);
  for (int i = 0; i < 3; ++i) {
    const Observation& o = three_bags[static_cast<std::size_t>(i)];
    z(i) = o.value - o.prior_mean;
    for (int j = 0; j < 3; ++j)
      c(i, j) = formula(one_series, o.when, three_bags[static_cast<std::size_t>(j)].when);
    c(i, i) += o.noise_variance;
    for (int j = 0; j < 2; ++j)
      cross(i, j) = formula(one_series, o.when, two_days[static_cast<std::size_t>(j)]);
  }
  for (int i = 0; i < 2; ++i)
    for (int j = 0; j < 2; ++j)
      prior(i, j) = formula(one_series, two_days[static_cast<std::size_t>(i)],
                            two_days[static_cast<std::size_t>(j)]);
  const Matrix3d inverse = inverse_by_hand(c);
  const VectorXd mean = two_means + cross.transpose() * inverse * z;
  const MatrixXd covariance = prior - cross.transpose() * inverse * cross;
  const double likelihood = -0.5 * z.dot(inverse * z) - 0.5 * std::log(c.determinant()) -
                            1.5 * std::log(2 * std::numbers::pi);

  const GaussianProcess process = conditioned(one_series, three_bags);
  const Posterior posterior = process.at(two_days, two_means);
  EXPECT_LT((posterior.mean - mean).cwiseAbs().maxCoeff(), 1e-12);
  EXPECT_LT((posterior.covariance - covariance).cwiseAbs().maxCoeff(), 1e-12);
  EXPECT_NEAR(process.log_likelihood(), likelihood, 1e-12);
}

TEST(GaussianProcessPosterior, WithNoBagIsThePrior) {
  const GaussianProcess process = conditioned(one_series, {});
  const Posterior posterior = process.at(two_days, two_means);
  EXPECT_EQ(posterior.mean, two_means);
  EXPECT_DOUBLE_EQ(posterior.covariance(0, 1), formula(one_series, two_days[0], two_days[1]));
  // offset^2 + season^2 + year^2 + wiggle^2 = 0.0225 + 0.01 + 0.0036 + 0.0144
  EXPECT_DOUBLE_EQ(posterior.covariance(0, 0), 0.0505);
  EXPECT_EQ(process.log_likelihood(), 0);
  EXPECT_EQ(process.log_likelihood_gradient().kernel, KernelVector::Zero());
}

// Two results of one day carry what one result with their mean and half the noise would.
TEST(GaussianProcessPosterior, TwoBagsOfOneDayAreOneBagWithHalfTheNoise) {
  const TimePoint day{170, 2024};
  const std::vector<Observation> both = {{day, -2.3, -2.1, 0.008}, {day, -2.1, -2.1, 0.008}};
  const std::vector<Observation> one = {{day, -2.2, -2.1, 0.004}};
  const Posterior of_both = conditioned(one_series, both).at(two_days, two_means);
  const Posterior of_one = conditioned(one_series, one).at(two_days, two_means);
  EXPECT_LT((of_both.mean - of_one.mean).cwiseAbs().maxCoeff(), 1e-14);
  EXPECT_LT((of_both.covariance - of_one.covariance).cwiseAbs().maxCoeff(), 1e-14);
}

TEST(GaussianProcessPosterior, RefusesWhatHasNoFactor) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(GaussianProcess::condition(one_series, {{{150, 2024}, nan, -2, 0.01}}).ok());
  EXPECT_FALSE(GaussianProcess::condition(one_series, {{{150, 2024}, -2, -2, nan}}).ok());
  const auto negative = GaussianProcess::condition(one_series, {{{150, 2024}, -2, -2, -1}});
  ASSERT_FALSE(negative.ok());
  EXPECT_EQ(negative.problems()[0].fault, Fault::input);
  EXPECT_EQ(negative.problems()[0].what, "these observations cannot be told apart from each other");
}

TEST(GaussianProcessPosterior, StandsBagsThatRepeatEachOtherAlmostWithoutNoise) {
  const Observation bag{{150, 2024}, -1.9, -2.0, 1e-18};
  const Posterior posterior = conditioned(one_series, {bag, bag, bag}).at(two_days, two_means);
  const Posterior single = conditioned(one_series, {bag}).at(two_days, two_means);
  EXPECT_LT((posterior.mean - single.mean).cwiseAbs().maxCoeff(), 1e-8);
}

/// Two series whose bags share errors, with everything that a one_series holds.
const Kernel joint = {.of = {{{0.15, 0.1, 0.06, 0.12}, {0.1, 0.07, 0.05, 0.16}}},
                      .season_length = 1.2,
                      .wiggle_length = 30,
                      .correlation = 0.6,
                      .onset = 10};
const std::vector<Observation> joint_bags = {
    {{150, 2024, 0, 2024, 0.01}, -1.9, -2.0, 0.008, {{1, 0.05}}},
    {{150, 2024, 1, 2024, 0.006}, 0.4, 0.3, 0.01},
    {{190, 2024, 0, 2024, 0.003, 1, 0.2}, -2.4, -2.2, 0.006, {{1, 0.05}, {2, 0.1}}},
    {{520, 2025, 0, 2025, -0.01}, -2.1, -2.05, 0.01, {{2, 0.1}}},
    {{521, 2025, 1, 2025, -0.004, 1, 0.1}, 0.35, 0.2, 0.01}};

TEST(GaussianProcessPosterior, OfTwoSeriesIsTheFormulaWithTheirCorrelationAndTheSharedErrors) {
  for (const Observation& a : joint_bags)
    for (const Observation& b : joint_bags)
      EXPECT_NEAR(covariance(joint, a.when, b.when), formula(joint, a.when, b.when), 1e-15);
  EXPECT_DOUBLE_EQ(shared_covariance(joint_bags[0], joint_bags[2]), 0.05 * 0.05);
  EXPECT_DOUBLE_EQ(shared_covariance(joint_bags[2], joint_bags[2]), 0.05 * 0.05 + 0.1 * 0.1);
  EXPECT_EQ(shared_covariance(joint_bags[0], joint_bags[3]), 0);
}

TEST(GaussianProcessLikelihood, GradientAgreesWithCentralDifferences) {
  const KernelVector start = free_parameters(joint);
  const KernelVector gradient = conditioned(joint, joint_bags).log_likelihood_gradient().kernel;
  constexpr double step = 1e-5;
  for (int i = 0; i < kernel_parameters; ++i) {
    const auto shifted = [&](double by) {
      const KernelVector moved = start + by * KernelVector::Unit(i);
      return conditioned(kernel_of(moved), joint_bags).log_likelihood();
    };
    const double difference = (shifted(step) - shifted(-step)) / (2 * step);
    EXPECT_NEAR(gradient(i), difference, 1e-6) << "parameter " << i;
    EXPECT_GT(std::abs(gradient(i)), 1e-4) << "parameter " << i << " is not tried by these bags";
  }
}

TEST(GaussianProcessLikelihood, GradientByEachObservationAgreesWithCentralDifferences) {
  const auto gradient = conditioned(joint, joint_bags).log_likelihood_gradient();
  constexpr double step = 1e-5;
  for (std::size_t i = 0; i < joint_bags.size(); ++i) {
    const auto shifted = [&](double mean, double slope) {
      auto bags = joint_bags;
      bags[i].prior_mean += mean;
      bags[i].when.onset_slope += slope;
      return conditioned(joint, bags).log_likelihood();
    };
    const auto at = static_cast<Eigen::Index>(i);
    EXPECT_NEAR(gradient.prior_mean(at), (shifted(step, 0) - shifted(-step, 0)) / (2 * step), 1e-6);
    EXPECT_NEAR(gradient.onset_slope(at), (shifted(0, step) - shifted(0, -step)) / (2 * step),
                1e-5);  // a slope of 0.01 moves it as 1 moves a mean
  }
}

TEST(Kernel, GoesToFreeParametersAndBack) {
  const Kernel back = kernel_of(free_parameters(joint));
  EXPECT_LT((free_parameters(back) - free_parameters(joint)).cwiseAbs().maxCoeff(), 1e-14);
  EXPECT_NEAR(back.of[1].year, 0.05, 1e-15);
  EXPECT_NEAR(back.correlation, 0.6, 1e-15);
  EXPECT_NEAR(back.onset, 10, 1e-13);
}

}  // namespace
}  // namespace pluckbook
