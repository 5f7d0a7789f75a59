// lp_bench.cpp - time to the cheapest mix, beside GLPK on the same invented programs. GLPK is timed
// as one would call it: build, dual simplex, free. Arguments: rows, columns.
#include <benchmark/benchmark.h>

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

/// The same feeds with other prices: the start is the answer at the old ones.
void warm(benchmark::State& state) {
  std::vector<LinearProgram> all = programs_of(state);
  std::vector<LpBasis> starts;
  RandomPrograms random(seed + 1);
  for (LinearProgram& program : all) {
    starts.push_back(solve(program).basis);
    for (double& cost : program.cost) cost *= random.between(0.9, 1.1);
  }
  size_t k = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(solve(all[k % programs], &starts[k % programs]));
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

void sizes(benchmark::internal::Benchmark* bench) {
  bench->Args({8, 12})->Args({15, 25})->Args({25, 40})->Unit(benchmark::kMicrosecond);
}

BENCHMARK(cold)->Apply(sizes);
BENCHMARK(warm)->Apply(sizes);
BENCHMARK(cold_with_ranging)->Apply(sizes);
BENCHMARK(glpk)->Apply(sizes);

}  // namespace
}  // namespace pluckbook
