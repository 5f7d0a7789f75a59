// A laboratory's CSV of any bytes: rows, or a Problem with a place. Rows written out again with
// every cell in quotes are the same rows.
#include "base/csv.h"

#include "fuzz/properties.h"

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

void read(const std::string& text) {
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

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  pluckbook::fuzz::read(pluckbook::fuzz::text_of(data, size));
  return 0;
}
