// compare.h - what-ifs side by side: each is an edit of the book, planned like any other, and put
// in order.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "advice/condition_ahead.h"
#include "advice/schedule.h"
#include "book/what_ifs.h"

namespace pluckbook {

/// Head fed alike: the herd, or what is split off from it.
struct FedGroup {
  Schedule schedule;
  std::optional<ConditionAhead> condition;
};

struct Alternative {
  const WhatIf* what_if = nullptr;   // into the file read
  std::shared_ptr<const Book> book;  // as it would be; the schedules point into it
  std::vector<FedGroup> groups;      // the herd first
  /// Those split off, had they stayed and been fed like the herd: their score at the end.
  std::optional<double> split_fed_alike;

  bool covers() const;  // every need of every group is met
  double cost() const;
  std::optional<double> score_at_end() const;  // of the thinnest group, fed, with the middle diet
};

/// The quote at which the second would be as cheap as the first.
struct Swap {
  std::string feed;
  const Quote* quote = nullptr;  // as it stands today
  double amount = 0;             // money per Quote::unit
};

/// The day to which weaning or a move of one of the two must be put for the second to be the
/// cheaper.
struct DateSwap {
  enum class Of { weaning, move };
  const WhatIf* what_if = nullptr;  // into the file read
  Of of = Of::weaning;
  Date now, then;
};

struct Comparison {
  const WhatIfs* asked = nullptr;
  ScheduleSettings settings;
  /// Those that cover every need first, by cost; then the others, best condition first.
  std::vector<Alternative> ranked;
  std::vector<Swap> swaps;           // of the first two, the smallest change of a quote first
  std::vector<DateSwap> date_swaps;  // of the first two, the smallest change of a date first
};

/// Fails: as schedule_for, for any of the what-ifs.
/// Requires: `asked` outlives the answer and was read against `book`.
Result<Comparison> compare(const Book& book, const WhatIfs& asked,
                           const ScheduleSettings& settings);

}  // namespace pluckbook
