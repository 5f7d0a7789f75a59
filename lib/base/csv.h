// csv.h - rows of text as laboratories send them: RFC 4180 with any delimiter, any line ends, with
// or without a byte order mark. Cells stay text; nothing is read into them here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace pluckbook {

/// What is refused beyond; tested at n - 1, n and n + 1.
struct CsvLimits {
  std::size_t bytes = 4U << 20U;
  std::size_t rows = 20'000;
  std::size_t cells = 500;   // of one row
  std::size_t text = 4'000;  // bytes of one cell
};

struct CsvRow {
  int line = 0;  // where it begins; a quoted cell may hold line breaks
  std::vector<std::string> cells;
};

/// Comma, semicolon, tab or bar: the one that parts the most rows into as many cells as the first,
/// and those into the most; a comma where none does. A first line "sep=;" says it outright.
char csv_delimiter(std::string_view text);

/// The rows of a text, without blank ones and without a "sep=" line. Spaces around a cell that has
/// no quotes do not count.
/// Fails: no UTF-8; a control or direction character; a quote that does not close, or closes before
///        the end of its cell; over the limits. The place is a line and column.
Result<std::vector<CsvRow>> read_csv(const std::string& file, std::string_view text, char delimiter,
                                     const CsvLimits& limits = {});

}  // namespace pluckbook
