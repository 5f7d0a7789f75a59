// edit.h - additions to a file of samples as splices of its text: nothing that stands there is
// moved or rewritten, so comments, order and layout stay the hand's that wrote them. The new text
// is read back, and is only given out when it says what was there before and the addition.
#pragma once

#include <string>

#include "base/problem.h"
#include "book/records.h"
#include "book/splice.h"
#include "book/write.h"

namespace pluckbook {

/// Each takes the samples file of bag.pasture as it stands ("" for a new file). `book` gives the
/// laboratories.
/// Fails: what is added is refused by the reader (without a place: it is not in the file); a layout
///        that cannot be added to, naming the file and line to edit by hand.
Result<Spliced> with_bag(const Book& book, const std::string& file, const std::string& text,
                         const Bag& bag);
Result<Spliced> with_mark(const Book& book, const std::string& file, const std::string& text,
                          const std::string& bag, const Mark& mark);
Result<Spliced> with_result(const Book& book, const std::string& file, const std::string& text,
                            const std::string& bag, const LabResult& result);

}  // namespace pluckbook
