// gp_vectors FILE - both routes of the Gaussian process against vectors computed elsewhere. Prints
// the largest deviation of each kind; exit 0 when all are within what the file tolerates, else 1.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <limits>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "numeric/gaussian_process.h"
#include "numeric/markov_process.h"
#include "numeric/maximum.h"
#include "numeric/random.h"

namespace {

using namespace pluckbook;
using Eigen::VectorXd;
using nlohmann::json;

// The file's `tolerance`: relative or absolute, the larger. A fit this much lower is as good.
constexpr double curve_tolerance = 1e-10, likelihood_tolerance = 1e-9, fit_tolerance = 1e-3;
constexpr double difference_tolerance = 1e-6;

// The file's hyperparameters and their places among a kernel's free parameters.
const std::array<const char*, 6> names = {"s_offset", "s_season", "l_season",
                                          "s_year",   "s_wiggle", "l_wiggle"};
constexpr std::array<int, 6> places = {0, 1, 8, 2, 3, 9};

/// Of one kind: how far off the worst was, and how far it may be.
struct Deviation {
  double worst = 0, tolerance = 0;
};

struct Deviations {
  std::map<std::string, Deviation> kinds;

  void note(const std::string& kind, double got, double expected, double tolerance) {
    const double off = std::abs(got - expected) / std::max(1.0, std::abs(expected));
    Deviation& one = kinds[kind];
    one.tolerance = tolerance;
    one.worst = std::isnan(off) ? INFINITY : std::max(one.worst, off);
  }
};

KernelVector free_of(const json& h) {
  KernelVector free = KernelVector::Zero();
  for (std::size_t i = 0; i < names.size(); ++i)
    free(places[i]) = std::log(h.at(names[i]).get<double>());
  return free;
}

std::vector<Observation> observations_of(const json& test) {
  std::vector<Observation> seen;
  for (std::size_t i = 0; i < test.at("t").size(); ++i)
    seen.push_back({{test["t"][i], test["year"][i]},
                    test["value"][i],
                    test["prior_mean"][i],
                    test["noise_variance"][i]});
  return seen;
}

void compare_curve(const std::string& route, const Posterior& posterior, const json& test,
                   Deviations& deviations) {
  for (std::size_t i = 0; i < test["day"].size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    deviations.note(route + " mean", posterior.mean(at), test["mean"][i], curve_tolerance);
    deviations.note(route + " variance", posterior.covariance(at, at), test["variance"][i],
                    curve_tolerance);
  }
  for (const json& pair : test.at("covariance_pairs"))
    deviations.note(route + " covariance",
                    posterior.covariance(pair[0].get<int>(), pair[1].get<int>()), pair[2],
                    curve_tolerance);
}

void compare_gradient(const KernelVector& free, const std::vector<Observation>& seen,
                      const json& test, Deviations& deviations) {
  const auto likelihood = [&](const KernelVector& at) {
    return GaussianProcess::condition(kernel_of(at), seen)->log_likelihood();
  };
  const KernelVector gradient =
      GaussianProcess::condition(kernel_of(free), seen)->log_likelihood_gradient().kernel;
  constexpr double step = 1e-5;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const KernelVector by = step * KernelVector::Unit(places[i]);
    const double got = gradient(places[i]);
    deviations.note("gradient", got, test.at("gradient").at(i), likelihood_tolerance);
    deviations.note("gradient, differences", got,
                    (likelihood(free + by) - likelihood(free - by)) / (2 * step),
                    difference_tolerance);
  }
}

// False when the observations could not be conditioned on.
bool compare(const json& test, Deviations& deviations) {
  const KernelVector free = free_of(test.at("hyperparameters"));
  const std::vector<Observation> seen = observations_of(test);
  const auto dense = GaussianProcess::condition(kernel_of(free), seen);
  const auto fast = MarkovProcess::condition(kernel_of(free), seen);
  if (!dense || !fast) return false;
  std::vector<TimePoint> asked;
  VectorXd prior(static_cast<Eigen::Index>(test.at("day").size()));
  for (std::size_t i = 0; i < test["day"].size(); ++i) {
    asked.push_back({test["day"][i], test["day_year"][i]});
    prior(static_cast<Eigen::Index>(i)) = test["day_prior_mean"][i];
  }
  compare_curve("dense", dense->at(asked, prior), test, deviations);
  compare_curve("fast", fast->at(asked, prior), test, deviations);
  const double likelihood = test.at("log_likelihood");
  deviations.note("dense log_likelihood", dense->log_likelihood(), likelihood,
                  likelihood_tolerance);
  deviations.note("fast log_likelihood", fast->log_likelihood(), likelihood, likelihood_tolerance);
  compare_gradient(free, seen, test, deviations);
  return true;
}

/// The highest likelihood found inside the box, from many starts.
double best_fit(const json& box, const std::vector<Observation>& seen) {
  const double nothing = -std::numeric_limits<double>::infinity();
  VectorXd low(places.size()), high(places.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    low(static_cast<Eigen::Index>(i)) = std::log(box.at(names[i])[0].get<double>());
    high(static_cast<Eigen::Index>(i)) = std::log(box.at(names[i])[1].get<double>());
  }
  const auto likelihood = [&](const VectorXd& at) {
    KernelVector free = KernelVector::Zero();
    for (std::size_t i = 0; i < places.size(); ++i)
      free(places[i]) = at(static_cast<Eigen::Index>(i));
    const auto process = GaussianProcess::condition(kernel_of(free), seen);
    if (!process) return Slope{nothing, VectorXd::Zero(at.size())};
    const KernelVector all = process->log_likelihood_gradient().kernel;
    VectorXd gradient(at.size());
    for (std::size_t i = 0; i < places.size(); ++i)
      gradient(static_cast<Eigen::Index>(i)) = all(places[i]);
    return Slope{process->log_likelihood(), gradient};
  };
  Random random(1);
  double best = nothing;
  for (int start = 0; start < 40; ++start) {
    VectorXd from = low;
    for (double& x : from) x = random.uniform();
    best = std::max(
        best, climb(likelihood, low + from.cwiseProduct(high - low), {300}, {low, high}).value);
  }
  return best;
}

int run(const char* file) {
  std::ifstream in(file);
  const json vectors = json::parse(in);
  Deviations deviations;
  for (const json& test : vectors.at("cases")) {
    if (!compare(test, deviations)) {
      std::printf("%s: no Cholesky factor\n", test.at("name").get<std::string>().c_str());
      return 1;
    }
    if (!test.contains("fitted")) continue;
    // A higher hill than the file's is no fault; a lower one is.
    const double best = test["fitted"].at("log_likelihood_at_best");
    const double found = best_fit(vectors.at("box"), observations_of(test));
    deviations.note("fitted, too low by", std::max(0.0, best - found), 0, fit_tolerance);
  }
  bool within = !deviations.kinds.empty();
  for (const auto& [kind, off] : deviations.kinds) {
    std::printf("%-22s largest deviation %.2e, tolerance %.0e\n", kind.c_str(), off.worst,
                off.tolerance);
    within = within && off.worst <= off.tolerance;
  }
  std::printf("%zu cases\n", vectors.at("cases").size());
  return within ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fputs("usage: gp_vectors FILE\n", stderr);
    return 2;
  }
  try {
    return run(argv[1]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s: %s\n", argv[1], error.what());
    return 2;
  }
}
