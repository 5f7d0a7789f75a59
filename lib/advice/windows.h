// windows.h - the days ahead of a herd cut into windows that are fed alike: where it grazes, what
// it needs and what its diet may be. Each window is read on its middle day.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "advice/feeding_day.h"
#include "base/problem.h"

namespace pluckbook {

struct WindowSettings {
  Date as_of, until;
  double cover = 0.8;     // share of outcomes
  int change_every = 14;  // days: amounts are changed no more often (assumed: common practice)
  int paths = 0;          // joint draws of the diet; none where only the cover is asked
  std::uint64_t seed = 20260401;
};

struct FeedingWindow {
  Date first, last;
  const Pasture* pasture = nullptr;
  HerdNeed need;
  std::optional<FootedResult> figures;  // of the pasture's newest bag on the day the answer stands
  Diet at_cover, median;
  std::vector<Diet> paths;
  double trip_per_head = 0;  // money for one feeding trip, for each head

  long days() const { return days_between(first, last) + 1; }
  NewestFigures newest() const { return figures ? &*figures : nullptr; }
};

/// The middle day of a window on one of its diets, with the water of its pasture.
FeedingDay day_in(const FeedingWindow& window, const Herd& herd, const Diet& diet, FedIntake fed);

/// The windows from as_of to until, of change_every days each; the last is between a half and one
/// and a half as long, unless it is the only one. Moves of the book that lie ahead are followed; a
/// window in which the herd moves counts for the pasture of its middle day. Fails: no pasture; a
/// need outside all tables; a forage class nobody knows.
Result<std::vector<FeedingWindow>> windows_ahead(const Book& book, const Herd& herd,
                                                 const WindowSettings& settings);

}  // namespace pluckbook
