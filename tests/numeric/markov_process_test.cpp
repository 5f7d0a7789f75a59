// Every answer of the fast route is held against the dense one, which is held against formulas
// written out and against vectors computed elsewhere.
#include "numeric/markov_process.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "numeric/gaussian_process.h"
#include "numeric/likelihood.h"
#include "numeric/random.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

const Kernel kernel = {.of = {{{0.15, 0.1, 0.06, 0.12}, {0.1, 0.07, 0.05, 0.16}}},
                       .season_length = 0.8,
                       .wiggle_length = 40,
                       .correlation = 0.6,
                       .onset = 10};

MarkovProcess conditioned(std::vector<Observation> seen, const Kernel& k = kernel) {
  auto process = MarkovProcess::condition(k, std::move(seen));
  EXPECT_TRUE(process.ok());
  return *std::move(process);
}

TimePoint point(double day, int series) {
  const int year = 2020 + static_cast<int>(day / 365);
  const int event = day > 650 && day < 1300 ? (day > 900 ? 2 : 1) : 0;
  return {
      day, year, series, year, 0.01 * std::cos(day / 50) / (1 + series), event, 0.2 / (1 + series)};
}

/// Bags of several years: some days with two, some with one series only, two laboratories of which
/// one errs by the same amount on all its days.
std::vector<Observation> bags(int count, std::uint64_t seed) {
  Random random(seed);
  std::vector<Observation> seen;
  double day = 100;
  for (int i = 0; i < count; ++i) {
    if (i % 4 != 0) day += 1 + 40 * random.uniform();
    const int bag = 100 + i, trip = 10'000 + static_cast<int>(day);
    for (const int series : {0, 1}) {
      if (series == 1 && i % 3 == 0) continue;
      Observation one{point(day, series), random.normal() * 0.3, 0.1, 0.002, {}};
      one.shared = {{2 * bag + series, 0.05}, {2 * trip + series, 0.06}};
      if (i % 2 == 0) one.shared.push_back({series, 0.04});
      seen.push_back(one);
    }
  }
  return seen;
}

std::vector<TimePoint> some_days() {
  std::vector<TimePoint> asked;
  for (const double day : {90.0, 100.0, 333.0, 333.0, 700.5, 701.0, 1200.0, 2600.0})
    for (const int series : {1, 0}) asked.push_back(point(day, series));
  return asked;
}

TEST(MarkovProcess, HasTheGradientOfTheDenseRoute) {
  for (const int count : {0, 1, 2, 7, 60}) {
    SCOPED_TRACE(testing::Message() << count << " bags, seed 20260411");
    auto seen = bags(count, 20260411);
    std::reverse(seen.begin(), seen.end());  // the order given is not the order of the days
    const LikelihoodGradient fast = conditioned(seen).log_likelihood_gradient();
    const LikelihoodGradient dense =
        GaussianProcess::condition(kernel, seen)->log_likelihood_gradient();
    for (int i = 0; i < kernel_parameters; ++i)
      EXPECT_NEAR(fast.kernel(i), dense.kernel(i), 1e-9) << "parameter " << i;
    EXPECT_LT((fast.prior_mean - dense.prior_mean).norm(), 1e-9);
    EXPECT_LT((fast.onset_slope - dense.onset_slope).norm(), 1e-9);
  }
}

TEST(Likelihood, IsThatOfTheDenseRouteForFewAndForMany) {
  for (const int count : {7, 80}) {
    SCOPED_TRACE(testing::Message() << count << " bags, seed 20260411");
    const auto seen = bags(count, 20260411);
    const auto found = likelihood_of(kernel, seen);
    ASSERT_TRUE(found.ok());
    const auto dense = GaussianProcess::condition(kernel, seen);
    EXPECT_NEAR(found->log, dense->log_likelihood(), 1e-9);
    EXPECT_LT((found->gradient.kernel - dense->log_likelihood_gradient().kernel).norm(), 1e-9);
  }
  auto unknown = bags(80, 20260411);
  unknown[3].when.day = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(likelihood_of(kernel, unknown).ok());
  EXPECT_FALSE(likelihood_of(kernel, {unknown.begin(), unknown.begin() + 5}).ok());
}

TEST(MarkovProcess, AgreesWithTheDenseRoute) {
  const auto asked = some_days();
  const VectorXd prior = VectorXd::LinSpaced(static_cast<Index>(asked.size()), -1, 1);
  for (const int count : {0, 1, 2, 7, 60}) {
    SCOPED_TRACE(testing::Message() << count << " bags, seed 20260411");
    const auto seen = bags(count, 20260411);
    const MarkovProcess fast = conditioned(seen);
    const auto dense = GaussianProcess::condition(kernel, seen);
    ASSERT_TRUE(dense.ok());
    const Posterior expected = dense->at(asked, prior);
    const Posterior joint = fast.at(asked, prior);
    EXPECT_LT((joint.mean - expected.mean).cwiseAbs().maxCoeff(), 1e-10);
    EXPECT_LT((joint.covariance - expected.covariance).cwiseAbs().maxCoeff(), 1e-10);
    const auto marginals = fast.marginals_at(asked, prior);
    EXPECT_LT((marginals.mean - expected.mean).cwiseAbs().maxCoeff(), 1e-10);
    EXPECT_LT((marginals.variance - expected.covariance.diagonal()).cwiseAbs().maxCoeff(), 1e-10);
    EXPECT_NEAR(fast.log_likelihood(), dense->log_likelihood(), 1e-9 * (1 + count));
  }
}

TEST(MarkovProcess, AgreesWithTheDenseRouteForShortAndLongLengths) {
  const auto asked = some_days();
  const VectorXd prior = VectorXd::Zero(static_cast<Index>(asked.size()));
  const auto seen = bags(30, 7);
  for (const double season_length : {0.2, 1.0, 10.0}) {
    for (const double wiggle_length : {3.0, 400.0}) {
      Kernel k = kernel;
      k.season_length = season_length;
      k.wiggle_length = wiggle_length;
      const Posterior fast = conditioned(seen, k).at(asked, prior);
      const Posterior dense = GaussianProcess::condition(k, seen)->at(asked, prior);
      EXPECT_LT((fast.mean - dense.mean).cwiseAbs().maxCoeff(), 1e-10) << season_length;
      EXPECT_LT((fast.covariance - dense.covariance).cwiseAbs().maxCoeff(), 1e-10) << wiggle_length;
    }
  }
}

TEST(MarkovProcess, DoesNotDependOnTheOrderOfTheBags) {
  auto seen = bags(12, 3);
  const auto asked = some_days();
  const VectorXd prior = VectorXd::Zero(static_cast<Index>(asked.size()));
  const auto one = conditioned(seen).marginals_at(asked, prior);
  std::reverse(seen.begin(), seen.end());
  const auto other = conditioned(seen).marginals_at(asked, prior);
  EXPECT_EQ(one.mean, other.mean);  // to the last digit
  EXPECT_EQ(one.variance, other.variance);
}

TEST(MarkovProcess, RefusesWhatHasNoFactor) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(MarkovProcess::condition(kernel, {{point(150, 0), nan, -2, 0.01}}).ok());
  EXPECT_FALSE(MarkovProcess::condition(kernel, {{point(150, 0), -2, -2, nan}}).ok());
  const auto negative = MarkovProcess::condition(kernel, {{point(150, 0), -2, -2, -1}});
  ASSERT_FALSE(negative.ok());
  EXPECT_EQ(negative.problems()[0].fault, Fault::input);
}

TEST(MarkovProcess, ReadsTheOnsetOfAYearFromValuesThatAnswerToIt) {
  // A slope of 0.01 a day, 12 days late, all but free of error and of any other term.
  const Kernel plain = {.of = {{{1e-3, 1e-3, 1e-3, 1e-3}, {}}}, .onset = 10};
  const auto late = conditioned({{{150, 2024, 0, 2024, 0.01}, 0.12, 0, 1e-6}}, plain).onset(2024);
  EXPECT_NEAR(late.days, 12, 0.02);
  EXPECT_LT(late.sd, 0.5);
  // One observation in closed form: variance over variance and noise.
  const auto unsure = conditioned({{{150, 2024, 0, 2024, 0.01}, 0.12, 0, 0.01}}, plain).onset(2024);
  const double others = 0.01 + 4e-6;
  EXPECT_NEAR(unsure.days, 12 * 0.01 / (0.01 + others), 1e-9);
  EXPECT_NEAR(unsure.sd, 10 * std::sqrt(others / (0.01 + others)), 1e-9);
  EXPECT_EQ(conditioned({}, plain).onset(2030).days, 0);
  EXPECT_EQ(conditioned({}, plain).onset(2030).sd, 10);
}

TEST(MarkovPaths, HaveTheMomentsOfTheJointPosterior) {
  const MarkovProcess process = conditioned(bags(20, 11));
  const auto asked = some_days();  // before, between and after the bags, both series
  const VectorXd prior = VectorXd::Zero(static_cast<Index>(asked.size()));
  const Posterior posterior = process.at(asked, prior);
  constexpr int count = 40'000;
  SCOPED_TRACE("seed 20240612");
  const MatrixXd paths = process.paths_at(asked, prior, count, 20240612);
  const VectorXd mean = paths.rowwise().mean();
  const MatrixXd centred = paths.colwise() - mean;
  const MatrixXd covariance = centred * centred.transpose() / (count - 1);
  // Five standard errors: sd / sqrt(n) of a mean, at most sqrt(2/n) sd sd of a covariance.
  for (Index i = 0; i < mean.size(); ++i) {
    const double sd = std::sqrt(posterior.covariance(i, i));
    EXPECT_NEAR(mean(i), posterior.mean(i), 5 * sd / std::sqrt(count));
    for (Index j = 0; j < mean.size(); ++j)
      EXPECT_NEAR(covariance(i, j), posterior.covariance(i, j),
                  5 * sd * std::sqrt(posterior.covariance(j, j) * 2 / count));
  }
}

TEST(MarkovPaths, TheSameSeedGivesTheSameDigitsAndAnotherSeedOthers) {
  const MarkovProcess process = conditioned(bags(10, 5));
  std::vector<TimePoint> asked;
  for (int i = 0; i < 60; ++i) asked.push_back(point(400 + i, 0));
  const VectorXd prior = VectorXd::Constant(60, -2.2);
  const MatrixXd paths = process.paths_at(asked, prior, 20, 7);
  EXPECT_EQ(paths, process.paths_at(asked, prior, 20, 7));
  EXPECT_NE(paths, process.paths_at(asked, prior, 20, 8));
  EXPECT_LT((paths - process.paths_at(asked, prior, 30, 7).leftCols(20)).cwiseAbs().maxCoeff(),
            1e-13);
  EXPECT_TRUE(paths.allFinite());
}

// Digits of one compiler's run, held to 1e-6 on every compiler.
TEST(MarkovPaths, AreTheSameAcrossCompilers) {
  const MarkovProcess process = conditioned(bags(10, 5));
  const std::vector<TimePoint> asked = {point(400, 0), point(430, 1), point(800, 0)};
  const MatrixXd paths = process.paths_at(asked, VectorXd::Zero(3), 2, 7);
  MatrixXd expected(3, 2);
  expected << 0.014866380526, -0.279466928305, 0.0869691826234, -0.272582140629, -0.0384188154889,
      -0.0129273467737;
  EXPECT_LT((paths - expected).cwiseAbs().maxCoeff(), 1e-6);
}

// A curve that can only move as a whole: every path must be its mean plus one number.
TEST(MarkovPaths, StandAPosteriorOfRankOne) {
  std::vector<TimePoint> asked;
  for (int i = 0; i < 40; ++i) asked.push_back({200.0 + i, 2024});
  const Kernel level = {.of = {{{.offset = 0.2}, {}}}};
  const MatrixXd paths = conditioned({}, level).paths_at(asked, VectorXd::Zero(40), 50, 1);
  const VectorXd spread = paths.colwise().maxCoeff() - paths.colwise().minCoeff();
  EXPECT_LT(spread.maxCoeff(), 1e-12);
  EXPECT_GT(paths.row(0).maxCoeff() - paths.row(0).minCoeff(), 0.2);
}

}  // namespace
}  // namespace pluckbook
