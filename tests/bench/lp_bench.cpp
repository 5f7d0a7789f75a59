// lp_bench.cpp - time to the cheapest mix, beside GLPK and CLP on the same invented programs. They
// are timed as one would call them: build, dual simplex, free. Ours counts duals, certificate and
// its check. On the next day every number is another one; both begin at the last basis. A season is
// 365 such days at three covers, and every feed alone each day. Arguments: rows, columns.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <vector>

#include "bench/lp_clp.h"
#include "bench/lp_programs.h"
#include "numeric/linear_program.h"
#include "numeric/lp_alone.h"
#include "numeric/lp_glpk.h"
#include "numeric/lp_solver.h"

namespace pluckbook {
namespace {

std::vector<LinearProgram> programs_for(const benchmark::State& state) {
  return programs_of(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
}

/// Each of the programs in turn, again and again.
template <class Work>
void over(benchmark::State& state, const std::vector<LinearProgram>& all, Work work) {
  size_t k = 0;
  for (auto _ : state) benchmark::DoNotOptimize(work(all[k++ % all.size()]));
}

void cold(benchmark::State& state) {
  over(state, programs_for(state), [](const LinearProgram& p) { return solve(p); });
}

struct NextDay {
  std::vector<LinearProgram> before, after;
};

NextDay next_day(const benchmark::State& state) {
  NextDay day{programs_for(state), {}};
  RandomPrograms random(bench_seed + 1);
  for (const LinearProgram& program : day.before) day.after.push_back(random.next_day(program));
  return day;
}

void warm(benchmark::State& state) {
  const NextDay day = next_day(state);
  std::vector<LpBasis> starts;
  for (const LinearProgram& program : day.before) starts.push_back(solve(program).basis);
  size_t k = 0;
  LpSolver solver;
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        solver.solve(day.after[k % bench_programs], &starts[k % bench_programs]));
    ++k;
  }
}

void cold_with_ranging(benchmark::State& state) {
  over(state, programs_for(state), [](const LinearProgram& p) { return ranging(p, solve(p)); });
}

void glpk(benchmark::State& state) {
  over(state, programs_for(state), [](const LinearProgram& p) {
    Glpk second(p);
    second.solve(GLP_DUALP, 1e-7);
    return second.objective();
  });
}

/// Skips itself where CLP finds another answer: times of different answers say nothing.
void clp(benchmark::State& state) {
  const std::vector<LinearProgram> all = programs_for(state);
  for (const LinearProgram& program : all) {
    Clp second(program);
    const double ours = solve(program).objective;
    if (!second.solve() || std::abs(second.objective() - ours) > 1e-7 * std::max(1.0, ours))
      return state.SkipWithError("CLP finds another least cost");
  }
  over(state, all, [](const LinearProgram& p) {
    Clp second(p);
    second.solve();
    return second.objective();
  });
}

void glpk_with_ranging(benchmark::State& state) {
  over(state, programs_for(state), [](const LinearProgram& p) {
    Glpk second(p);
    second.solve(GLP_DUALP, 1e-7);
    return second.range_everything();
  });
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
    Glpk second(day.after[k % bench_programs]);
    second.start_at(last[k % bench_programs]);
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
    const std::vector<LinearProgram>& today = k / bench_programs % 2 == 0 ? day.after : day.before;
    kept[k % bench_programs].price(today[k % bench_programs].cost);
    benchmark::DoNotOptimize(kept[k % bench_programs].solve(GLP_PRIMAL, 1e-7));
    ++k;
  }
}

constexpr int days = 365;
constexpr size_t covers = 3;

/// Day by day from one program to another, in equal steps.
LinearProgram on_the_way(const LinearProgram& from, const LinearProgram& to, double share) {
  LinearProgram today = from;
  const auto move = [&](double& number, double end) {
    if (std::isfinite(number)) number += share * (end - number);
  };
  for (int k = 0; k < from.a.size(); ++k) move(today.a.data()[k], to.a.data()[k]);
  for (int j = 0; j < from.cost.size(); ++j) move(today.cost[j], to.cost[j]);
  for (int i = 0; i < from.row_lower.size(); ++i) {
    move(today.row_lower[i], to.row_lower[i]);
    move(today.row_upper[i], to.row_upper[i]);
  }
  return today;
}

/// A herd's season at three covers, a program a day.
std::vector<LinearProgram> a_season(const benchmark::State& state) {
  const NextDay ends = next_day(state);
  std::vector<LinearProgram> all;
  for (size_t cover = 0; cover < covers; ++cover)
    for (int day = 0; day < days; ++day)
      all.push_back(
          on_the_way(ends.before[cover], ends.after[cover], static_cast<double>(day) / days));
  return all;
}

/// A mix a day on the last day's basis and every feed alone, at three covers.
void season(benchmark::State& state) {
  const std::vector<LinearProgram> all = a_season(state);
  LpSolver mix;
  LpBasis last;
  for (auto _ : state) {
    for (const LinearProgram& program : all) {
      last = mix.solve(program, &last).basis;
      for (int j = 0; j < program.a.cols(); ++j)
        benchmark::DoNotOptimize(amounts_alone(program, ColumnIndex{j}).low * program.cost[j]);
    }
  }
}

/// The mixes of the same season, each built, solved and freed; no feed alone.
void glpk_season_of_mixes(benchmark::State& state) {
  const std::vector<LinearProgram> all = a_season(state);
  for (auto _ : state) {
    for (const LinearProgram& program : all) {
      Glpk second(program);
      benchmark::DoNotOptimize(second.solve(GLP_DUALP, 1e-7));
    }
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
  RandomPrograms random(bench_seed + 2);
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
BENCHMARK(clp)->Apply(sizes);
BENCHMARK(glpk_with_ranging)->Apply(sizes);
BENCHMARK(glpk_warm)->Apply(sizes);
BENCHMARK(glpk_kept)->Apply(sizes);
BENCHMARK(season)->Apply(sizes)->Unit(benchmark::kMillisecond);
BENCHMARK(glpk_season_of_mixes)->Apply(sizes)->Unit(benchmark::kMillisecond);
BENCHMARK(slowest)->Apply(sizes)->Iterations(1);

}  // namespace
}  // namespace pluckbook
