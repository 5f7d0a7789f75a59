// A laboratory's CSV of any bytes: rows, or a Problem with a place. Rows written out again with
// every cell in quotes are the same rows. Under the layout proposed from its headers every row is
// taken, there already or refused, and the same file a second time adds nothing.
#include "base/csv.h"

#include "book/import.h"
#include "book/layout.h"
#include "book/read.h"
#include "fuzz/properties.h"
#include "fuzz/scratch.h"

namespace pluckbook::fuzz {
namespace {

std::string in_quotes(const std::vector<CsvRow>& rows, char delimiter) {
  std::string text;
  for (const CsvRow& row : rows) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      if (i > 0) text += delimiter;
      text += '"';
      for (const char c : row.cells[i]) text += c == '"' ? std::string("\"\"") : std::string(1, c);
      text += '"';
    }
    text += '\n';
  }
  return text;
}

void read_rows(const std::string& text) {
  const char delimiter = csv_delimiter(text);
  const Result<std::vector<CsvRow>> rows = read_csv("lab.csv", text, delimiter);
  if (!rows) {
    require_useful(rows.problems());
    require(rows.problems().front().place.has_value(), "a Problem has a place", text);
    return;
  }
  const Result<std::vector<CsvRow>> again =
      read_csv("lab.csv", in_quotes(*rows, delimiter), delimiter);
  require(again.ok() && again->size() == rows->size(), "rows read back", text);
  for (std::size_t i = 0; i < rows->size(); ++i) {
    require((*again)[i].cells == (*rows)[i].cells, "cells read back", text);
  }
}

// ---- through a layout --------------------------------------------------------------------------

// Two bags that wait for their results.
const Book& waiting_book() {
  static const Book book = [] {
    scratch().write("book.yaml",
                    "pluckbook: 1\nname: Cottonwood Fork\nunits: us\ncurrency: USD\n"
                    "labs: [{id: county, name: County Forage Lab}]\n");
    scratch().write("pastures.yaml", "- {id: draws, name: Draws, forage: northern mixed-grass}\n");
    scratch().write("herds.yaml", "# none\n");
    scratch().write(
        "samples/2026/draws.yaml",
        "- {bag: 26-draws-08, plucked: 2026-07-06}\n- bag: 26-draws-09\n  plucked: 2026-08-06\n");
    Result<Book> read = read_book(scratch().path());
    require(read.ok() && read->bags.size() == 2, "the book can be read");
    return *std::move(read);
  }();
  return book;
}

// The book as it is once the changes are written.
Book after(const Import& import) {
  for (const TextChange& change : import.changes) {
    scratch().write(change.file, change.after);
  }
  Result<Book> read = read_book(scratch().path());
  for (const TextChange& change : import.changes) {
    scratch().write(change.file, change.before.value_or(""));
  }
  require(read.ok(), "what was imported can be read");
  return *std::move(read);
}

void import(const std::string& text) {
  const Result<LabTable> table = lab_table("lab.csv", text, csv_delimiter(text));
  if (!table) return require_useful(table.problems());
  LayoutHints hints;
  hints.dates = static_cast<DateOrder>(text.size() % 3);
  const Result<Layout> layout = proposed_layout(*table, hints);
  if (!layout) return require_useful(layout.problems());
  require(fits(*layout, *table).ok(), "a layout fits the table it comes from", text);
  const Result<Spliced> kept = with_layout(waiting_book(), "", *layout);
  if (!kept) require_useful(kept.problems());

  const Date received(2026, 9, 15);
  const Import first = import_rows(waiting_book(), *layout, *table, received);
  const std::size_t rows = first.taken.size() + first.there_already.size() + first.refused.size();
  require(rows == table->rows.size(), "no row is lost", text);
  for (const Import::Row& row : first.refused) require_printable(row.what);
  if (first.taken.empty()) return;
  const Import second = import_rows(after(first), *layout, *table, received);
  require(second.taken.empty() && second.changes.empty(), "twice adds nothing", text);
}

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  pluckbook::fuzz::read_rows(pluckbook::fuzz::text_of(data, size));
  pluckbook::fuzz::import(pluckbook::fuzz::text_of(data, size));
  return 0;
}
