#include "numeric/gaussian_process.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include "numeric/interpolation.h"

namespace pluckbook {
namespace {

using Eigen::Matrix3d;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;

const Kernel kernel = {.offset = 0.15,
                       .season = 0.1,
                       .season_length = 1.2,
                       .year = 0.06,
                       .wiggle = 0.12,
                       .wiggle_length = 30};

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

// The kernel as the formula in the header reads, written a second time.
double formula(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  const double sine = std::sin(std::numbers::pi * (a.day - b.day) / 365.25);
  const double r = std::sqrt(3) * std::abs(a.day - b.day) / k.wiggle_length;
  return k.offset * k.offset +
         k.season * k.season * std::exp(-2 * sine * sine / (k.season_length * k.season_length)) +
         (a.year == b.year ? k.year * k.year : 0) + k.wiggle * k.wiggle * (1 + r) * std::exp(-r);
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
      c(i, j) = formula(kernel, o.when, three_bags[static_cast<std::size_t>(j)].when);
    c(i, i) += o.noise_variance;
    for (int j = 0; j < 2; ++j)
      cross(i, j) = formula(kernel, o.when, two_days[static_cast<std::size_t>(j)]);
  }
  for (int i = 0; i < 2; ++i)
    for (int j = 0; j < 2; ++j)
      prior(i, j) = formula(kernel, two_days[static_cast<std::size_t>(i)],
                            two_days[static_cast<std::size_t>(j)]);
  const Matrix3d inverse = inverse_by_hand(c);
  const VectorXd mean = two_means + cross.transpose() * inverse * z;
  const MatrixXd covariance = prior - cross.transpose() * inverse * cross;
  const double likelihood = -0.5 * z.dot(inverse * z) - 0.5 * std::log(c.determinant()) -
                            1.5 * std::log(2 * std::numbers::pi);

  const GaussianProcess process = conditioned(kernel, three_bags);
  const Posterior posterior = process.at(two_days, two_means);
  EXPECT_LT((posterior.mean - mean).cwiseAbs().maxCoeff(), 1e-12);
  EXPECT_LT((posterior.covariance - covariance).cwiseAbs().maxCoeff(), 1e-12);
  EXPECT_NEAR(process.log_likelihood(), likelihood, 1e-12);
}

TEST(GaussianProcessPosterior, MarginalsAreTheDiagonalOfTheJoint) {
  const GaussianProcess process = conditioned(kernel, three_bags);
  const auto marginals = process.marginals_at(two_days, two_means);
  const Posterior posterior = process.at(two_days, two_means);
  EXPECT_LT((marginals.mean - posterior.mean).cwiseAbs().maxCoeff(), 1e-14);
  EXPECT_LT((marginals.variance - posterior.covariance.diagonal()).cwiseAbs().maxCoeff(), 1e-14);
  EXPECT_EQ(posterior.covariance, posterior.covariance.transpose());
}

TEST(GaussianProcessPosterior, WithNoBagIsThePrior) {
  const GaussianProcess process = conditioned(kernel, {});
  const Posterior posterior = process.at(two_days, two_means);
  EXPECT_EQ(posterior.mean, two_means);
  EXPECT_DOUBLE_EQ(posterior.covariance(0, 1), formula(kernel, two_days[0], two_days[1]));
  // offset^2 + season^2 + year^2 + wiggle^2 = 0.0225 + 0.01 + 0.0036 + 0.0144
  EXPECT_DOUBLE_EQ(posterior.covariance(0, 0), 0.0505);
  EXPECT_NEAR(process.marginals_at(two_days, two_means).variance(1), 0.0505, 1e-16);
  EXPECT_EQ(process.log_likelihood(), 0);
  EXPECT_EQ(process.log_likelihood_gradient(), VectorXd::Zero(kernel_parameters));
}

TEST(GaussianProcessPosterior, DoesNotDependOnTheOrderOfTheBags) {
  const Posterior one = conditioned(kernel, three_bags).at(two_days, two_means);
  auto turned = three_bags;
  do {
    const Posterior other = conditioned(kernel, turned).at(two_days, two_means);
    EXPECT_EQ(one.mean, other.mean);  // to the last digit
    EXPECT_EQ(one.covariance, other.covariance);
    std::rotate(turned.begin(), turned.begin() + 1, turned.end());
  } while (turned[0].when.day != three_bags[0].when.day);
}

// Two results of one day carry what one result with their mean and half the noise would.
TEST(GaussianProcessPosterior, TwoBagsOfOneDayAreOneBagWithHalfTheNoise) {
  const TimePoint day{170, 2024};
  const std::vector<Observation> both = {{day, -2.3, -2.1, 0.008}, {day, -2.1, -2.1, 0.008}};
  const std::vector<Observation> one = {{day, -2.2, -2.1, 0.004}};
  const Posterior of_both = conditioned(kernel, both).at(two_days, two_means);
  const Posterior of_one = conditioned(kernel, one).at(two_days, two_means);
  EXPECT_LT((of_both.mean - of_one.mean).cwiseAbs().maxCoeff(), 1e-14);
  EXPECT_LT((of_both.covariance - of_one.covariance).cwiseAbs().maxCoeff(), 1e-14);
}

TEST(GaussianProcessPosterior, RefusesWhatHasNoFactor) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(GaussianProcess::condition(kernel, {{{150, 2024}, nan, -2, 0.01}}).ok());
  EXPECT_FALSE(GaussianProcess::condition(kernel, {{{150, 2024}, -2, -2, nan}}).ok());
  const auto negative = GaussianProcess::condition(kernel, {{{150, 2024}, -2, -2, -1}});
  ASSERT_FALSE(negative.ok());
  EXPECT_EQ(negative.problems()[0].fault, Fault::input);
}

TEST(GaussianProcessPosterior, StandsBagsThatRepeatEachOtherAlmostWithoutNoise) {
  const Observation bag{{150, 2024}, -1.9, -2.0, 1e-18};
  const Posterior posterior = conditioned(kernel, {bag, bag, bag}).at(two_days, two_means);
  const Posterior single = conditioned(kernel, {bag}).at(two_days, two_means);
  EXPECT_LT((posterior.mean - single.mean).cwiseAbs().maxCoeff(), 1e-8);
}

TEST(GaussianProcessLikelihood, GradientAgreesWithCentralDifferences) {
  const VectorXd gradient = conditioned(kernel, three_bags).log_likelihood_gradient();
  const std::vector<double Kernel::*> fields = {&Kernel::offset,        &Kernel::season,
                                                &Kernel::season_length, &Kernel::year,
                                                &Kernel::wiggle,        &Kernel::wiggle_length};
  ASSERT_EQ(gradient.size(), kernel_parameters);
  constexpr double step = 1e-5;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const auto shifted = [&](double by) {
      Kernel k = kernel;
      k.*fields[i] *= std::exp(by);
      return conditioned(k, three_bags).log_likelihood();
    };
    const double difference = (shifted(step) - shifted(-step)) / (2 * step);
    EXPECT_NEAR(gradient(static_cast<Eigen::Index>(i)), difference, 1e-6) << "field " << i;
  }
}

std::vector<TimePoint> days(int count) {
  std::vector<TimePoint> asked;
  for (int i = 0; i < count; ++i) asked.push_back({200.0 + i, 2024});
  return asked;
}

TEST(SamplePaths, HaveTheMomentsOfThePosterior) {
  const Posterior posterior = conditioned(kernel, three_bags).at(two_days, two_means);
  constexpr int count = 40'000;
  const MatrixXd paths = sample_paths(posterior, count, 20240612);
  const VectorXd mean = paths.rowwise().mean();
  const MatrixXd centred = paths.colwise() - mean;
  const MatrixXd covariance = centred * centred.transpose() / (count - 1);
  // Five standard errors: sd / sqrt(n) of a mean, about sqrt(2/n) of a variance.
  for (int i = 0; i < 2; ++i) {
    const double variance = posterior.covariance(i, i);
    EXPECT_NEAR(mean(i), posterior.mean(i), 5 * std::sqrt(variance / count));
    for (int j = 0; j < 2; ++j)
      EXPECT_NEAR(covariance(i, j), posterior.covariance(i, j),
                  5 * variance * std::sqrt(2.0 / count));
  }
}

TEST(SamplePaths, TheSameSeedGivesTheSameDigitsAndAnotherSeedOthers) {
  const auto asked = days(60);
  const Posterior posterior =
      conditioned(kernel, three_bags).at(asked, VectorXd::Constant(60, -2.2));
  const MatrixXd paths = sample_paths(posterior, 20, 7);
  EXPECT_EQ(paths, sample_paths(posterior, 20, 7));
  EXPECT_NE(paths, sample_paths(posterior, 20, 8));
  EXPECT_LT((paths - sample_paths(posterior, 30, 7).leftCols(20)).cwiseAbs().maxCoeff(), 1e-14);
  EXPECT_TRUE(paths.allFinite());
}

// First outputs of SplitMix64 for the seed 1234567: widely published test values (recalled).
TEST(SamplePaths, ComeFromOurOwnGenerator) {
  const Posterior standard{VectorXd::Zero(1), MatrixXd::Identity(1, 1)};
  const MatrixXd draws = sample_paths(standard, 3, 1234567);
  const std::vector<double> outputs = {6457827717110365317.0, 3203168211198807973.0,
                                       9817491932198370423.0};
  for (int i = 0; i < 3; ++i)
    EXPECT_NEAR(draws(0, i), normal_quantile(outputs[static_cast<std::size_t>(i)] * 0x1p-64), 1e-9);
}

// A curve that can only move as a whole: every path must be its mean plus one number.
TEST(SamplePaths, StandAPosteriorOfRankOne) {
  const auto asked = days(40);
  const Posterior level = conditioned({.offset = 0.2}, {}).at(asked, VectorXd::Zero(40));
  const MatrixXd paths = sample_paths(level, 50, 1);
  const VectorXd spread = paths.colwise().maxCoeff() - paths.colwise().minCoeff();
  EXPECT_LT(spread.maxCoeff(), 0.2 * 1e-4);
  EXPECT_GT(paths.row(0).maxCoeff() - paths.row(0).minCoeff(), 0.2);
}

TEST(SamplePaths, OfACurveKnownExactlyAreThatCurve) {
  const Posterior known{two_means, MatrixXd::Zero(2, 2)};
  const MatrixXd paths = sample_paths(known, 4, 3);
  for (int i = 0; i < 4; ++i) EXPECT_EQ(paths.col(i), two_means);
}

}  // namespace
}  // namespace pluckbook
