// gp_vectors FILE - the Gaussian process against vectors computed elsewhere. Prints the largest
// deviation of each kind; exit 0 when all are within what the file tolerates, else 1.
// The vectors' `fitted` entries are not checked here: conditioning is, fitting is not.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "numeric/gaussian_process.h"

namespace {

using nlohmann::json;
using pluckbook::GaussianProcess;
using pluckbook::Kernel;
using pluckbook::Observation;
using pluckbook::TimePoint;

// The file's `tolerance`: relative or absolute, the larger.
constexpr double curve_tolerance = 1e-10, likelihood_tolerance = 1e-9;

struct Deviations {
  std::map<std::string, double> largest;

  void note(const std::string& kind, double got, double expected) {
    const double off = std::abs(got - expected) / std::max(1.0, std::abs(expected));
    double& worst = largest[kind];
    worst = std::isnan(off) ? INFINITY : std::max(worst, off);
  }
};

Kernel kernel_of(const json& h) {
  return {h.at("s_offset"), h.at("s_season"), h.at("l_season"),
          h.at("s_year"),   h.at("s_wiggle"), h.at("l_wiggle")};
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

// False when the observations could not be conditioned on.
bool compare(const json& test, Deviations& deviations) {
  const auto process =
      GaussianProcess::condition(kernel_of(test.at("hyperparameters")), observations_of(test));
  if (!process) return false;
  std::vector<TimePoint> asked;
  Eigen::VectorXd prior(static_cast<Eigen::Index>(test.at("day").size()));
  for (std::size_t i = 0; i < test["day"].size(); ++i) {
    asked.push_back({test["day"][i], test["day_year"][i]});
    prior(static_cast<Eigen::Index>(i)) = test["day_prior_mean"][i];
  }
  const auto posterior = process->at(asked, prior);
  const auto marginals = process->marginals_at(asked, prior);
  for (std::size_t i = 0; i < asked.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    deviations.note("mean", posterior.mean(at), test["mean"][i]);
    deviations.note("mean", marginals.mean(at), test["mean"][i]);
    deviations.note("variance", posterior.covariance(at, at), test["variance"][i]);
    deviations.note("variance", marginals.variance(at), test["variance"][i]);
  }
  for (const json& pair : test.at("covariance_pairs"))
    deviations.note("covariance", posterior.covariance(pair[0].get<int>(), pair[1].get<int>()),
                    pair[2]);
  deviations.note("log_likelihood", process->log_likelihood(), test.at("log_likelihood"));
  const Eigen::VectorXd gradient = process->log_likelihood_gradient();
  for (std::size_t i = 0; i < test.at("gradient").size(); ++i)
    deviations.note("gradient", gradient(static_cast<Eigen::Index>(i)), test["gradient"][i]);
  return true;
}

int run(const char* file) {
  std::ifstream in(file);
  const json vectors = json::parse(in);
  Deviations deviations;
  int fitted = 0;
  for (const json& test : vectors.at("cases")) {
    fitted += test.contains("fitted") ? 1 : 0;
    if (!compare(test, deviations)) {
      std::printf("%s: no Cholesky factor\n", test.at("name").get<std::string>().c_str());
      return 1;
    }
  }
  bool within = !deviations.largest.empty();
  for (const auto& [kind, worst] : deviations.largest) {
    const bool curve = kind == "mean" || kind == "variance" || kind == "covariance";
    const double tolerance = curve ? curve_tolerance : likelihood_tolerance;
    std::printf("%-15s largest deviation %.2e, tolerance %.0e\n", kind.c_str(), worst, tolerance);
    within = within && worst <= tolerance;
  }
  std::printf("%zu cases; %d fitted optimum not checked here\n", vectors.at("cases").size(),
              fitted);
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
