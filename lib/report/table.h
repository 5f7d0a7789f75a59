// table.h - rows of text in columns, at most 80 columns wide. Ids and dates are never cut, numbers
// never left out.
#pragma once

#include <string>
#include <vector>

namespace pluckbook {

enum class Align { left, right };

struct Column {
  std::string header;  // unit in the header, once
  Align align = Align::right;
};

/// Builds a table; columns are as wide as their widest cell, two spaces between.
class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
  /// Requires: one cell a column.
  void add(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }
  bool empty() const { return rows_.empty(); }
  const std::vector<Column>& columns() const { return columns_; }
  const std::vector<std::vector<std::string>>& rows() const { return rows_; }

  /// The header, the rows; each line ends with a newline and without trailing spaces. Where the
  /// table is wider than `width`, headers and text are broken at spaces; columns for which there is
  /// no room even so follow in a second table below, behind the same first columns. None is lost.
  std::string text(int width = 80) const;

 private:
  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

/// Text broken at spaces so that no line is wider than `width`, never between a number and its
/// unit; lines after the first are indented.
std::string wrapped(const std::string& text, int width = 80, int indent = 0);

}  // namespace pluckbook
