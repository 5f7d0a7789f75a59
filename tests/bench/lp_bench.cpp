// lp_bench.cpp - time to the cheapest mix, beside GLPK on the same invented programs. GLPK is timed
// as one would call it: build, dual simplex, free. Ours counts duals, certificate and its check. On
// the next day every number is another one; both begin at the last basis. Arguments: rows, columns.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <vector>

#include "numeric/linear_program.h"
#include "numeric/lp_glpk.h"
#include "numeric/lp_random.h"

namespace pluckbook {
namespace {

constexpr unsigned seed = 15;
constexpr size_t programs = 32;

std::vector<LinearProgram> programs_of(const benchmark::State& state) {
  RandomPrograms random(seed);
  std::vector<LinearProgram> all;
  for (size_t k = 0; k < programs; ++k) {
    all.push_back(random.program(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)),
                                 LpShape::plain));
  }
  return all;
}

void cold(benchmark::State& state) {
  const std::vector<LinearProgram> all = programs_of(state);
  size_t k = 0;
  for (auto _ : state) benchmark::DoNotOptimize(solve(all[k++ % programs]));
}

/// The next day: diet, needs and prices have moved by up to a twentieth, zeros stay zero.
struct NextDay {
  std::vector<LinearProgram> before, after;
};

NextDay next_day(const benchmark::State& state) {
  NextDay day{programs_of(state), {}};
  RandomPrograms random(seed + 1);
  const auto move = [&](double& number) { number *= random.between(0.95, 1.05); };
  day.after = day.before;
  for (LinearProgram& program : day.after) {
    for (double& number : program.a.reshaped()) move(number);
    for (double& cost : program.cost) move(cost);
    for (double& side : program.row_lower) side *= random.between(0.95, 1);
    for (double& side : program.row_upper) side *= random.between(1, 1.05);
  }
  return day;
}

void warm(benchmark::State& state) {
  const NextDay day = next_day(state);
  std::vector<LpBasis> starts;
  for (const LinearProgram& program : day.before) starts.push_back(solve(program).basis);
  size_t k = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(solve(day.after[k % programs], &starts[k % programs]));
    ++k;
  }
}

void cold_with_ranging(benchmark::State& state) {
  const std::vector<LinearProgram> all = programs_of(state);
  size_t k = 0;
  for (auto _ : state) {
    const LinearProgram& program = all[k++ % programs];
    benchmark::DoNotOptimize(ranging(program, solve(program)));
  }
}

void glpk(benchmark::State& state) {
  const std::vector<LinearProgram> all = programs_of(state);
  size_t k = 0;
  for (auto _ : state) {
    Glpk second(all[k++ % programs]);
    benchmark::DoNotOptimize(second.solve(GLP_DUALP, 1e-7));
    benchmark::DoNotOptimize(second.objective());
  }
}

void glpk_with_ranging(benchmark::State& state) {
  const std::vector<LinearProgram> all = programs_of(state);
  size_t k = 0;
  for (auto _ : state) {
    Glpk second(all[k++ % programs]);
    benchmark::DoNotOptimize(second.solve(GLP_DUALP, 1e-7));
    benchmark::DoNotOptimize(second.range_everything());
  }
}

void glpk_warm(benchmark::State& state) {
  const NextDay day = next_day(state);
  std::vector<Glpk> last;
  for (const LinearProgram& program : day.before) {
    last.emplace_back(program);
    last.back().solve(GLP_DUALP, 1e-7);
  }
  size_t k = 0;
  for (auto _ : state) {
    Glpk second(day.after[k % programs]);
    second.start_at(last[k % programs]);
    benchmark::DoNotOptimize(second.solve(GLP_DUALP, 1e-7));
    ++k;
  }
}

/// GLPK at its best: the problem object is kept, and nothing but prices moves, there and back.
void glpk_kept(benchmark::State& state) {
  const NextDay day = next_day(state);
  std::vector<Glpk> kept;
  for (const LinearProgram& program : day.before) {
    kept.emplace_back(program);
    kept.back().solve(GLP_DUALP, 1e-7);
  }
  size_t k = 0;
  for (auto _ : state) {
    const std::vector<LinearProgram>& today = k / programs % 2 == 0 ? day.after : day.before;
    kept[k % programs].price(today[k % programs].cost);
    benchmark::DoNotOptimize(kept[k % programs].solve(GLP_PRIMAL, 1e-7));
    ++k;
  }
}

double microseconds_of(const LinearProgram& program) {
  using clock = std::chrono::steady_clock;
  double least = 1e9;
  for (int again = 0; again < 9; ++again) {  // what else the machine does is not the solver's
    const auto start = clock::now();
    benchmark::DoNotOptimize(solve(program));
    least =
        std::min(least, std::chrono::duration<double, std::micro>(clock::now() - start).count());
  }
  return least;
}

/// The slowest of 2000 programs of every shape against their median.
void slowest(benchmark::State& state) {
  RandomPrograms random(seed + 2);
  std::vector<double> times;
  for (auto _ : state) {
    times.clear();
    for (int k = 0; k < 2000; ++k) {
      const LpShape shape = k % 10 == 0  ? LpShape::infeasible
                            : k % 4 == 0 ? LpShape::degenerate
                                         : LpShape::plain;
      times.push_back(microseconds_of(random.program(static_cast<int>(state.range(0)),
                                                     static_cast<int>(state.range(1)), shape)));
    }
    std::sort(times.begin(), times.end());
  }
  state.counters["median_us"] = times[times.size() / 2];
  state.counters["slowest_us"] = times.back();
  state.counters["times_the_median"] = times.back() / times[times.size() / 2];
}

void sizes(benchmark::internal::Benchmark* bench) {
  bench->Args({8, 12})->Args({15, 25})->Args({25, 40})->Unit(benchmark::kMicrosecond);
}

BENCHMARK(cold)->Apply(sizes);
BENCHMARK(warm)->Apply(sizes);
BENCHMARK(cold_with_ranging)->Apply(sizes);
BENCHMARK(glpk)->Apply(sizes);
BENCHMARK(glpk_with_ranging)->Apply(sizes);
BENCHMARK(glpk_warm)->Apply(sizes);
BENCHMARK(glpk_kept)->Apply(sizes);
BENCHMARK(slowest)->Apply(sizes)->Iterations(1);

}  // namespace
}  // namespace pluckbook
