// condition_ahead.h - the condition score at the end of a schedule: fed as it says, and not fed.
#pragma once

#include <optional>

#include "advice/schedule.h"

namespace pluckbook {

struct ConditionAhead {
  double now = 5;
  std::optional<Date> scored;  // when it was seen; none where the herd's own figure stands in
  double fed = 5;              // at the end, with the middle diet
  double unfed = 5;            // the same, nothing fed
  double unfed_low = 5, unfed_high = 5;  // 10 and 90 in 100 outcomes
};

/// The middle diet's energy with and without the mix of each window, turned into score.
/// Nothing for growing cattle and bulls, whose rows hold no maintenance at a constant score.
std::optional<ConditionAhead> condition_ahead(const Book& book, const Schedule& schedule);

}  // namespace pluckbook
