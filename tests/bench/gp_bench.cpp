// What a season of one pasture costs: 400 bags, both nutrients, a year ahead, 1 000 joint paths.
#include <benchmark/benchmark.h>

#include <cmath>

#include "numeric/gaussian_process.h"
#include "numeric/markov_process.h"
#include "numeric/random.h"

namespace {

using namespace pluckbook;

const Kernel kernel = {.of = {{{0.156, 0.1, 0.15, 0.2}, {0.17, 0.08, 0.12, 0.16}}},
                       .season_length = 1,
                       .wiggle_length = 85,
                       .correlation = 0.57,
                       .onset = 10};

TimePoint point(double day, int series) {
  const int year = 2015 + static_cast<int>(day / days_per_year);
  return {day, year, series, year, 0.005};
}

/// A bag every nine days, each with protein and TDN: 400 are ten years of them.
std::vector<Observation> bags(int count) {
  Random random(1);
  std::vector<Observation> seen;
  for (int i = 0; i < count; ++i)
    for (const int series : {0, 1})
      seen.push_back({point(9.0 * i, series),
                      0.2 * random.normal(),
                      0,
                      0.001,
                      {{4 * i + series, 0.04}, {4 * i + 2 + series, 0.06}}});
  return seen;
}

std::vector<TimePoint> days_after(int bags, int days) {
  std::vector<TimePoint> asked;
  for (const int series : {0, 1})
    for (int i = 0; i < days; ++i) asked.push_back(point(9.0 * bags + i, series));
  return asked;
}

// Arguments: bags, days, paths.
void a_pastures_outlook(benchmark::State& state) {
  const auto seen = bags(static_cast<int>(state.range(0)));
  const auto asked = days_after(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  const Eigen::VectorXd prior = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(asked.size()));
  for (auto _ : state) {
    const auto process = MarkovProcess::condition(kernel, seen);
    benchmark::DoNotOptimize(process->marginals_at(asked, prior).mean.sum());
    benchmark::DoNotOptimize(
        process->paths_at(asked, prior, static_cast<int>(state.range(2)), 1).sum());
  }
}
BENCHMARK(a_pastures_outlook)
    ->Args({400, 365, 1000})
    ->Args({400, 730, 1000})
    ->Args({400, 1460, 1000})
    ->Args({800, 365, 1000})
    ->Args({20, 180, 1000})
    ->Unit(benchmark::kMillisecond);

// One step of a fit: the dense likelihood and its gradient.
void a_step_of_a_fit(benchmark::State& state) {
  const auto seen = bags(static_cast<int>(state.range(0)));
  for (auto _ : state) {
    const auto process = GaussianProcess::condition(kernel, seen);
    benchmark::DoNotOptimize(process->log_likelihood_gradient().kernel.sum());
  }
}
BENCHMARK(a_step_of_a_fit)->Arg(20)->Arg(50)->Arg(100)->Arg(400)->Unit(benchmark::kMillisecond);

}  // namespace
