#include "advice/crossing.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {
namespace {

/// The first run of `holds` from an index on: where it begins, and how many days it was seen.
struct Run {
  int begins = 0, length = 0;
};
Run run_from(int from, int days, const std::function<bool(int)>& holds) {
  Run run{from, 0};
  for (int i = from; i < days && run.length < run_of_days; ++i) {
    run.length = holds(i) ? run.length + 1 : 0;
    if (run.length == 1) run.begins = i;
  }
  return run;
}

}  // namespace

std::optional<int> first_run(int days, const std::function<bool(int)>& below) {
  const Run run = run_from(0, days, below);
  // A run that began less than seven days before the horizon is still a shortfall.
  return run.length > 0 ? std::optional(run.begins) : std::nullopt;
}

Turns turns_of(int days, const std::function<bool(int)>& below) {
  Turns turns{first_run(days, below), std::nullopt};
  if (!turns.falls) return turns;
  const Run back = run_from(*turns.falls, days, [&](int i) { return !below(i); });
  // One cut off by the horizon is no recovery yet: nobody stops feeding on it.
  if (back.length == run_of_days) turns.recovers = back.begins;
  return turns;
}

Crossing crossing_of(Date first, const std::vector<std::optional<int>>& runs) {
  std::vector<int> fallen;
  for (const auto& run : runs) {
    if (run) fallen.push_back(*run);
  }
  std::sort(fallen.begin(), fallen.end());
  // The day by which `share` of all paths have fallen: a path that never falls counts as later.
  const auto by_share = [&](double share) -> std::optional<Date> {
    const auto rank = static_cast<std::size_t>(std::ceil(share * static_cast<double>(runs.size())));
    if (rank == 0 || rank > fallen.size()) return std::nullopt;
    return first + Days(fallen[rank - 1]);
  };
  Crossing crossing;
  crossing.low = by_share(0.1);
  crossing.median = by_share(0.5);
  crossing.high = by_share(0.9);
  if (!runs.empty()) {
    crossing.probability_by_horizon =
        static_cast<double>(fallen.size()) / static_cast<double>(runs.size());
  }
  return crossing;
}

}  // namespace pluckbook
