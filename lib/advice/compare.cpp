#include "advice/compare.h"

#include <algorithm>

#include "advice/alternative.h"

namespace pluckbook {
namespace {

bool goes_before(const Alternative& a, const Alternative& b) {
  if (a.covers() != b.covers()) return a.covers();
  if (a.covers()) return a.cost() < b.cost();
  return a.score_at_end().value_or(0) > b.score_at_end().value_or(0);
}

}  // namespace

Result<Comparison> compare(const Book& book, const WhatIfs& asked,
                           const ScheduleSettings& settings) {
  Comparison comparison;
  comparison.asked = &asked;
  comparison.settings = settings;
  for (const WhatIf& what_if : asked.what_ifs) {
    auto changed =
        std::make_shared<const Book>(book_of(book, asked.herd, what_if, settings.windows.as_of));
    Result<Alternative> one = alternative_of(std::move(changed), asked.herd, what_if, settings);
    if (!one) return one.problems();
    comparison.ranked.push_back(std::move(*one));
  }
  std::stable_sort(comparison.ranked.begin(), comparison.ranked.end(), goes_before);
  const bool both = comparison.ranked.size() > 1 && comparison.ranked[1].covers();
  if (!both) return comparison;
  const Alternative &first = comparison.ranked[0], &second = comparison.ranked[1];
  comparison.swaps = swaps_of(first, second);
  comparison.date_swaps = date_swaps_of(book, asked.herd, first, second);
  return comparison;
}

}  // namespace pluckbook
