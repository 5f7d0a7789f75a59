#include "report/table.h"

#include <algorithm>
#include <numeric>

#include "base/text.h"

namespace pluckbook {
namespace {

constexpr int gap = 2;

std::string line_of(const std::vector<Column>& columns, const std::vector<int>& widths,
                    std::size_t shown_columns, const std::vector<std::string>& cells) {
  std::string line;
  for (std::size_t i = 0; i < shown_columns; ++i) {
    if (i > 0) line += std::string(gap, ' ');
    line += columns[i].align == Align::left ? pad_right(cells[i], widths[i])
                                            : pad_left(cells[i], widths[i]);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

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

}  // namespace

std::string Table::text(int width) const {
  std::vector<int> widths;
  std::vector<std::string> headers;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    int widest = display_width(columns_[i].header);
    for (const auto& row : rows_) widest = std::max(widest, display_width(row[i]));
    widths.push_back(widest);
    headers.push_back(columns_[i].header);
  }
  std::size_t fits = columns_.size();
  const auto total = [&](std::size_t count) {
    return std::accumulate(widths.begin(), widths.begin() + static_cast<long>(count), 0) +
           gap * (static_cast<int>(count) - 1);
  };
  while (fits > 1 && total(fits) > width) --fits;
  std::string text = line_of(columns_, widths, fits, headers);
  for (const auto& row : rows_) text += line_of(columns_, widths, fits, row);
  if (fits < columns_.size()) {
    std::string left_out = "(left out to fit:";
    for (std::size_t i = fits; i < columns_.size(); ++i) {
      left_out += (i > fits ? "; " : " ") + columns_[i].header;
    }
    text += wrapped(left_out + ")", width, 1);
  }
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
