#include "base/problem.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"

namespace pluckbook {
namespace {

// The line with a caret under the place. Tabs become one space so that the caret stands true.
std::string excerpt(const Place& place) {
  std::string line;
  std::string before;
  int column = 1;
  int under = 0;
  for (char32_t code : code_points(place.line_text)) {
    std::string cell;
    if (code == '\t') {
      cell = " ";
    } else if (is_unsafe(code)) {
      cell = fmt::format("\\u{:04x}", static_cast<unsigned>(code));
    } else {
      append_utf8(cell, code);
    }
    if (column < place.column) before += cell;
    if (column >= place.column && column < place.column + place.length)
      under += display_width(cell);
    line += cell;
    ++column;
  }
  const std::string margin = fmt::format("{:>4} | ", place.line);
  std::string caret = "^";
  if (under > 1) caret += std::string(static_cast<std::size_t>(under - 1), '~');
  return fmt::format("{}{}\n{}| {}{}\n", margin, line, std::string(margin.size() - 2, ' '),
                     std::string(static_cast<std::size_t>(display_width(before)), ' '), caret);
}

}  // namespace

std::string to_text(const Problem& problem) {
  std::string text;
  if (problem.place) {
    const Place& place = *problem.place;
    text += shown(place.file, 200);
    if (place.line > 0) text += fmt::format(":{}:{}", place.line, place.column);
    text += ": ";
  } else {
    text += "pluckbook: ";
  }
  if (problem.severity == Severity::warning) text += "warning: ";
  text += problem.what + "\n";
  if (problem.place && problem.place->line > 0 && !problem.place->line_text.empty()) {
    text += excerpt(*problem.place);
  }
  if (!problem.remedy.empty()) {
    for (std::string_view line : split(problem.remedy, '\n')) text += fmt::format("  {}\n", line);
  }
  return text;
}

}  // namespace pluckbook
