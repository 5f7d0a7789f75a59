// What a season of one pasture costs: 400 bags, both nutrients, a year ahead, 1 000 joint paths.
#include <benchmark/benchmark.h>

#include "bench/gp_season.h"
#include "numeric/gaussian_process.h"
#include "numeric/likelihood.h"

namespace {

using namespace pluckbook;
using namespace pluckbook::bench;

std::vector<TimePoint> days_after(int bags, int days) {
  return points(9.0 * bags, 1, days);
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

// One step of a fit by either route, and by the one that is taken.
template <class Step>
void a_step_of_a_fit(benchmark::State& state, Step step) {
  const auto seen = bags(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(step(seen).kernel.sum());
}
BENCHMARK_CAPTURE(a_step_of_a_fit, dense,
                  [](const auto& seen) {
                    return GaussianProcess::condition(kernel, seen)->log_likelihood_gradient();
                  }) -> Arg(20) -> Arg(40) -> Arg(50) -> Arg(60) -> Arg(100) -> Arg(400)
    -> Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(a_step_of_a_fit, fast,
                  [](const auto& seen) {
                    return MarkovProcess::condition(kernel, seen)->log_likelihood_gradient();
                  }) -> Arg(20) -> Arg(40) -> Arg(50) -> Arg(60) -> Arg(100) -> Arg(400)
    -> Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(a_step_of_a_fit, taken, [](const auto& seen) {
  return likelihood_of(kernel, seen)->gradient;
}) -> Arg(20) -> Arg(40) -> Arg(100) -> Arg(400) -> Unit(benchmark::kMillisecond);

}  // namespace
