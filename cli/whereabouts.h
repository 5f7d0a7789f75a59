// whereabouts.h - where a bag is on its way from the pasture to its result, and what is overdue.
#pragma once

#include <string>
#include <vector>

#include "book/records.h"

namespace pluckbook::cli {

enum class Step { drying, dry, sent, at_laboratory, answered, spoiled, lost };

/// One bag on a day.
struct Whereabouts {
  const Bag* bag = nullptr;
  Step step = Step::drying;
  std::string where;  // "county since 20 Aug"
  long late = 0;      // days past the laboratory's usual ones; 0 when it is not late
  std::string due;    // what to do about it; empty when nothing is
};

Whereabouts where_is(const Bag& bag, const Book& book, Date today);

/// Less than half full. Common practice: two thirds to three quarters; the limit is assumed.
bool has_too_little(const Bag& bag);

/// More than a day or two between plucking and this day. Common practice: past that it moulds.
bool dried_slowly(const Bag& bag, Date day);

/// Those that wait for something, the latest first, then what is to be done, then the rest by date.
std::vector<Whereabouts> bags_under_way(const Book& book, Date today);

}  // namespace pluckbook::cli
