// alternative.h - one what-if as a book of its own, and its plan. Used by compare.cpp and swap.cpp.
#pragma once

#include "advice/compare.h"

namespace pluckbook {

/// The book as the what-if would have it; `herd` is the id of the herd it is about.
Book book_of(const Book& book, const std::string& herd, const WhatIf& what_if, Date as_of);

/// Plans the herd and what is split off from it.
Result<Alternative> alternative_of(std::shared_ptr<const Book> book, const std::string& herd,
                                   const WhatIf& what_if, const ScheduleSettings& settings);

/// The feeds whose quote, changed alone, would make the second as cheap as the first, each found by
/// planning both anew at changed quotes.
std::vector<Swap> swaps_of(const Alternative& first, const Alternative& second);

/// The days of weaning and moves that, changed alone, would make the second cheaper than the first:
/// each is put further off, either way, within the days that are planned.
std::vector<DateSwap> date_swaps_of(const Book& book, const std::string& herd,
                                    const Alternative& first, const Alternative& second);

}  // namespace pluckbook
