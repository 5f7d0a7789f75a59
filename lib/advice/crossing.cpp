#include "advice/crossing.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {

std::optional<int> first_run(int days, const std::function<bool(int)>& below) {
  int length = 0;
  for (int i = 0; i < days; ++i) {
    length = below(i) ? length + 1 : 0;
    if (length == run_of_days) return i - run_of_days + 1;
  }
  // A run that began less than seven days before the horizon is still a shortfall.
  if (length > 0) return days - length;
  return std::nullopt;
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
