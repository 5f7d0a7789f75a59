// doubts.h - what is well written and still looks wrong when the records are laid side by side.
// Only warnings: the book is read all the same.
#pragma once

#include "base/problem.h"
#include "book/records.h"

namespace pluckbook {

/// The newest day on which anything was recorded; negative infinity for a book without any. Doubts
/// are judged on it, not on today: a book does not grow wrong by lying in a drawer.
Date last_recorded_day(const Book& book);

/// On a day: a herd that has stood for over 60 days in a pasture without a bag; a feed whose newest
/// quote is over a year old. Each with the line where it stands.
Problems doubts_on(const Book& book, Date day);

}  // namespace pluckbook
