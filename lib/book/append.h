// append.h - records added to the files that hold plain lists of them: moves, scores, events and a
// feed's quotes. A record is given as its keys are written; the reader of its file judges it, and
// the new text is only given out when it holds what stood there and the addition.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "book/records.h"
#include "book/splice.h"

namespace pluckbook {

/// {{"date", "2026-08-20"}, {"herd", "spring-cows"}, ...}, in the order they are written.
using WrittenKeys = std::vector<std::pair<std::string, std::string>>;

/// "{date: 2026-08-20, herd: spring-cows}"
std::string in_braces(const WrittenKeys& keys);

/// A record on a line of its own at the end of the file, whose text is given ("" for a new one).
/// `file` is grazing.yaml, condition.yaml or events.yaml; `book` gives what the record may name.
/// Fails: Fault::usage where the reader refuses the record (it was typed, it is not in the file);
///        a layout that cannot be added to, naming the file and line to edit by hand.
Result<Spliced> with_record(const Book& book, const std::string& file, const std::string& text,
                            const WrittenKeys& record);

/// A quote of a feed behind those it has; a single one becomes the first of a list.
/// Fails: as with_record; no such feed.
Result<Spliced> with_quote(const Book& book, const std::string& file, const std::string& text,
                           const std::string& feed, const WrittenKeys& quote);

}  // namespace pluckbook
