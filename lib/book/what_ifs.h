// what_ifs.h - a file of what might be done with one herd, to be set side by side. It is no part of
// the book and may lie anywhere; it names herds, pastures and feeds of the book.
//
//   herd: spring-cows
//   what_ifs:
//     - name: as now
//     - {name: wean early, wean: 2026-09-10}
//     - {name: do nothing, feed_nothing: yes}
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "book/records.h"

namespace pluckbook {

struct MoveAhead {
  Date date;
  std::string pasture;
};

/// A feed at another quote, from the quote's date on (from the start where it has none).
struct QuoteAhead {
  std::string feed;
  std::vector<Quote> quotes;
};

/// What would be changed; what is not named stays as the book has it. Several changes are one
/// what-if.
struct WhatIf {
  std::string name;
  std::optional<Date> wean;
  std::optional<MoveAhead> move;
  std::vector<std::string> only;  // feeds: no others are bought
  std::optional<QuoteAhead> buy;
  std::optional<Herd> split;                 // some head fed as a herd of their own
  std::optional<std::string> split_pasture;  // where they go; with the others where none
  bool feed_nothing = false;
  Origin origin;
};

struct WhatIfs {
  std::string herd;
  std::optional<Date> until;
  std::optional<double> cover;      // share of outcomes
  std::optional<int> change_every;  // days
  std::vector<WhatIf> what_ifs;     // two or more, each of its own name
};

/// Reads the text of such a file against a book; `file` is its name as shown to people.
/// Fails: every Problem of the file, with places.
Result<WhatIfs> read_what_ifs(const std::string& file, std::string text, const Book& book);

}  // namespace pluckbook
