// layout.h - a laboratory's CSV and the layout that says what its columns are: read from the book,
// or proposed from the headers, to be confirmed by a person. Nothing is guessed that changes a
// figure: the decimal mark, the order of dates and the basis stand in the layout.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/csv.h"
#include "base/problem.h"
#include "book/records.h"
#include "book/splice.h"

namespace pluckbook {

/// A laboratory's CSV: its first row holds the headers.
struct LabTable {
  std::string file;
  char delimiter = ',';
  CsvRow headers;
  std::vector<CsvRow> rows;
};

/// Fails: as read_csv; no rows below the headers; two headers alike.
Result<LabTable> lab_table(const std::string& file, std::string_view text, char delimiter);

/// What a person says of a file before its layout is proposed.
struct LayoutHints {
  std::string id, lab;
  std::optional<DecimalMark> decimal;
  std::optional<DateOrder> dates;
  std::optional<Basis> basis;
};

/// A layout from the headers: names and units as laboratories print them, dry-matter columns before
/// those as received, a comma for decimals only where every figure has one.
/// Fails: no column of bags, or none of figures; dates that could be read in two ways.
Result<Layout> proposed_layout(const LabTable& table, const LayoutHints& hints);

/// The first layout of the book whose columns all stand in the table, or nullptr.
const Layout* layout_for(const Book& book, const LabTable& table);

/// Fails: a column of the layout is not in the table.
Result<Done> fits(const Layout& layout, const LabTable& table);

/// What each column of the table becomes, in their order: {"CP, % DM", "cp"}.
std::vector<std::pair<std::string, std::string>> uses_of(const Layout& layout,
                                                         const LabTable& table);

/// A date in the layout's order, parted by '-', '/' or '.'; years of two digits are of this
/// century.
std::optional<Date> date_in(DateOrder order, std::string_view text);

std::string in_words(DateOrder order);       // "month-day-year"
std::string in_words(DecimalMark mark);      // "point"
std::string in_words(Basis basis);           // "dry-matter"
std::string delimiter_word(char delimiter);  // "semicolon"

/// layouts.yaml with one more layout, as a person would write it.
/// Fails: as the reader of the file.
Result<Spliced> with_layout(const Book& book, const std::string& text, const Layout& layout);

}  // namespace pluckbook
