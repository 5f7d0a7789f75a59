// gp_beside BAGS - one season as JSON for beside_numpy: what is given, what ours answers, and its
// CPU time, median of five rounds: a year ahead with 1 000 joint paths, and a fit.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <limits>
#include <nlohmann/json.hpp>
#include <span>

#include "bench/gp_season.h"
#include "numeric/likelihood.h"
#include "numeric/maximum.h"

namespace {

using namespace pluckbook;
using namespace pluckbook::bench;
using Eigen::VectorXd;
using nlohmann::json;

constexpr int rounds = 5, days_ahead = 365, paths = 1000, most_steps = 300;

json list(const VectorXd& numbers) {
  return std::vector<double>(numbers.begin(), numbers.end());
}

template <class Work>
double milliseconds(Work work) {
  std::vector<double> times;
  for (int round = 0; round < rounds; ++round) {
    const std::clock_t start = std::clock();
    int calls = 0;
    do {
      work();
      ++calls;
    } while (std::clock() - start < CLOCKS_PER_SEC / 50);
    times.push_back(1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / calls);
  }
  std::nth_element(times.begin(), times.begin() + rounds / 2, times.end());
  return times[rounds / 2];
}

json to_json(std::span<const TimePoint> points) {
  json all = {{"day", json::array()},
              {"year", json::array()},
              {"series", json::array()},
              {"onset_slope", json::array()}};
  for (const TimePoint& point : points) {
    all["day"].push_back(point.day);
    all["year"].push_back(point.year);  // green-up's year too
    all["series"].push_back(point.series);
    all["onset_slope"].push_back(point.onset_slope);
  }
  return all;
}

json given(const std::vector<Observation>& seen, std::span<const TimePoint> asked) {
  std::vector<TimePoint> when;
  json values = json::array(), errors = json::array();
  for (std::size_t i = 0; i < seen.size(); ++i) {
    when.push_back(seen[i].when);
    values.push_back(seen[i].value);
    for (std::size_t j = 0; j <= i; ++j) {
      const double error =
          shared_covariance(seen[i], seen[j]) + (i == j ? seen[i].noise_variance : 0);
      if (error != 0) errors.push_back({i, j, error});
    }
  }
  return {{"kernel", list(free_parameters(kernel))},
          {"seen", to_json(when)},
          {"asked", to_json(asked)},
          {"value", values},
          {"errors", errors},
          {"paths", paths}};
}

json fixed(const std::vector<Observation>& seen, std::span<const TimePoint> asked) {
  const VectorXd prior = VectorXd::Zero(static_cast<Eigen::Index>(asked.size()));
  const MarkovProcess::Marginals found =
      MarkovProcess::condition(kernel, seen)->marginals_at(asked, prior);
  double sum = 0;
  const double time = milliseconds([&] {
    const auto process = MarkovProcess::condition(kernel, seen);
    sum += process->marginals_at(asked, prior).variance.sum();
    sum += process->paths_at(asked, prior, paths, 1).sum();
  });
  return {{"mean", list(found.mean)},
          {"variance", list(found.variance)},
          {"milliseconds", time},
          {"sum", sum}};
}

/// Standard deviations within a factor of 20, lengths of 7, the correlation within 2 of its
/// inverse hyperbolic tangent.
Box box_about(const VectorXd& start) {
  VectorXd wide = VectorXd::Constant(kernel_parameters, 3);
  wide.segment<3>(8).setConstant(2);
  return {start - wide, start + wide};
}

Slope likelihood(const std::vector<Observation>& seen, const VectorXd& free) {
  const auto found = likelihood_of(kernel_of(free), seen);
  if (!found) return {-std::numeric_limits<double>::infinity(), VectorXd::Zero(free.size())};
  return {found->log, found->gradient.kernel};
}

json fit(const std::vector<Observation>& seen) {
  const VectorXd start = free_parameters(kernel);
  const Box box = box_about(start);
  int calls = 0;
  const auto slope = [&](const VectorXd& free) {
    ++calls;
    return likelihood(seen, free);
  };
  const Maximum top = climb(slope, start, {most_steps}, box);
  const int calls_of_one = calls;
  const double time =
      milliseconds([&] { calls += climb(slope, start, {most_steps}, box).value > 0; });
  const double step = milliseconds([&] { calls += likelihood(seen, start).value > 0; });
  return {{"low", list(box.low)},        {"high", list(box.high)}, {"at", list(top.at)},
          {"log_likelihood", top.value}, {"calls", calls_of_one},  {"milliseconds", time},
          {"milliseconds_a_call", step}};
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  const int count = std::atoi(argv[1]);
  const std::vector<Observation> seen = bags(count);
  const std::vector<TimePoint> asked = points(9.0 * count, 1, days_ahead);
  json all = given(seen, asked);
  all["fixed"] = fixed(seen, asked);
  all["fit"] = fit(seen);
  std::puts(all.dump().c_str());
}
