// crossing.h - when a run of days below begins and when one above ends it, over many sample paths.
// Knows no cattle.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "advice/outlook.h"

namespace pluckbook {

/// A shortfall counts when it lasts: the first day of the first run of this many days below.
inline constexpr int run_of_days = 7;

/// The first index from which `below` holds for run_of_days indices in a row (a run cut off by the
/// end counts); nothing when there is none.
std::optional<int> first_run(int days, const std::function<bool(int)>& below);

/// Where one path falls, and the first day of the first whole run above after that.
struct Turns {
  std::optional<int> falls, recovers;
};
Turns turns_of(int days, const std::function<bool(int)>& below);

/// Dates from the first-run index of each path.
Crossing crossing_of(Date first, const std::vector<std::optional<int>>& runs);

}  // namespace pluckbook
