#include "report/table.h"

#include <algorithm>

#include "base/text.h"

namespace pluckbook {
namespace {

constexpr int gap = 2;

/// The words of a text, a number kept together with the word after it: "9.0 %", "26 Jul".
std::vector<std::string> unbroken_pieces(const std::string& text) {
  std::vector<std::string> pieces;
  bool after_number = false;
  for (std::string_view word : split(text, ' ')) {
    if (after_number) {
      pieces.back() += " " + std::string(word);
    } else {
      pieces.emplace_back(word);
    }
    after_number = !after_number && parse_number(word).has_value();
  }
  return pieces;
}

/// The lines a cell takes in a column so wide; a piece that is wider stands out of it.
std::vector<std::string> lines_in(const std::string& cell, int width) {
  if (display_width(cell) <= width) return {cell};
  std::vector<std::string> lines;
  const std::string broken = wrapped(cell, width);
  for (const std::string_view line : split(broken, '\n')) lines.emplace_back(line);
  lines.pop_back();  // after the last newline
  return lines;
}

int widest(const std::vector<std::string>& lines) {
  int width = 0;
  for (const std::string& line : lines) width = std::max(width, display_width(line));
  return width;
}

/// The columns that say what a row is of: up to the first of text.
std::size_t columns_that_name(const std::vector<Column>& columns) {
  const auto text = std::find_if(columns.begin(), columns.end(),
                                 [](const Column& one) { return one.align == Align::left; });
  return text == columns.end() ? 1 : static_cast<std::size_t>(text - columns.begin()) + 1;
}

/// One column as it is printed. Headers and text may be broken at spaces, numbers and dates not.
struct Laid {
  std::size_t at = 0;  // in the table
  int width = 0;
};

class Typesetter {
 public:
  Typesetter(const std::vector<Column>& columns, const std::vector<std::vector<std::string>>& rows)
      : columns_(columns), rows_(rows) {}

  /// As narrow as `most`, or as it can be.
  int width_of(std::size_t column, int most) const {
    int width = widest(lines_in(columns_[column].header, most));
    for (const auto& row : rows_)
      width = std::max(width, columns_[column].align == Align::left
                                  ? widest(lines_in(row[column], most))
                                  : display_width(row[column]));
    return width;
  }
  int full_width(std::size_t column) const { return width_of(column, unbroken); }
  int least_width(std::size_t column) const { return width_of(column, 1); }

  /// The columns that name a row, and behind them those from `next` on for which there is room; one
  /// at least.
  std::vector<std::size_t> with_room(std::size_t next, int width) const {
    std::vector<std::size_t> shown;
    int least = -gap;
    for (std::size_t column = 0; column < columns_.size(); ++column) {
      const bool names = column < columns_that_name(columns_);
      if (!names && column < next) continue;
      least += gap + least_width(column);
      if (!names && column > next && least > width) break;
      shown.push_back(column);
    }
    return shown;
  }

  /// The columns side by side, the widest broken first where they do not fit.
  std::vector<Laid> laid(const std::vector<std::size_t>& shown, int width) const {
    std::vector<Laid> all;
    for (const std::size_t column : shown) all.push_back({column, full_width(column)});
    while (total(all) > width) {
      Laid* broken = nullptr;
      for (Laid& one : all)
        if (width_of(one.at, one.width - 1) < one.width && (!broken || one.width > broken->width))
          broken = &one;
      if (!broken) break;
      broken->width = width_of(broken->at, broken->width - 1);
    }
    return all;
  }

  std::string text(const std::vector<Laid>& all) const {
    std::vector<std::string> headers;
    for (const Column& column : columns_) headers.push_back(column.header);
    std::string text = text_of(headers, all, true);
    for (const auto& row : rows_) text += text_of(row, all, false);
    return text;
  }

 private:
  static constexpr int unbroken = 1'000'000;

  static int total(const std::vector<Laid>& all) {
    int width = -gap;
    for (const Laid& one : all) width += one.width + gap;
    return width;
  }

  /// One row, as many lines as its tallest cell; headers stand on their last line.
  std::string text_of(const std::vector<std::string>& cells, const std::vector<Laid>& all,
                      bool at_the_foot) const {
    std::vector<std::vector<std::string>> broken;
    std::size_t tallest = 0;
    for (const Laid& one : all) {
      broken.push_back(lines_in(cells[one.at], one.width));
      tallest = std::max(tallest, broken.back().size());
    }
    std::string text;
    for (std::size_t line = 0; line < tallest; ++line) {
      std::string across;
      for (std::size_t i = 0; i < all.size(); ++i) {
        const std::size_t above = at_the_foot ? tallest - broken[i].size() : 0;
        const bool inside = line >= above && line - above < broken[i].size();
        const std::string cell = inside ? broken[i][line - above] : "";
        if (i > 0) across += std::string(gap, ' ');
        across += columns_[all[i].at].align == Align::left ? pad_right(cell, all[i].width)
                                                           : pad_left(cell, all[i].width);
      }
      across.erase(across.find_last_not_of(' ') + 1);
      text += across + "\n";
    }
    return text;
  }

  const std::vector<Column>& columns_;
  const std::vector<std::vector<std::string>>& rows_;
};

}  // namespace

std::string Table::text(int width) const {
  const Typesetter setter(columns_, rows_);
  std::string text;
  std::size_t next = columns_that_name(columns_);
  do {
    const std::vector<std::size_t> shown = setter.with_room(next, width);
    next = shown.back() + 1;
    text += (text.empty() ? "" : "\n") + setter.text(setter.laid(shown, width));
  } while (next < columns_.size());
  return text;
}

std::string wrapped(const std::string& text, int width, int indent) {
  std::string out;
  std::string line;
  for (const std::string& piece : unbroken_pieces(text)) {
    if (!line.empty() && display_width(line) + 1 + display_width(piece) > width) {
      out += line + "\n";
      line = std::string(static_cast<std::size_t>(indent), ' ') + piece;
    } else {
      line += (line.empty() ? "" : " ") + piece;
    }
  }
  return out + line + "\n";
}

}  // namespace pluckbook
