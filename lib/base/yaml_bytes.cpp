#include "base/yaml_bytes.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace pluckbook {
namespace {

constexpr std::size_t line_shown = 240;  // characters of a line worth printing under a Problem

// By the first byte of a character in well-formed UTF-8.
std::size_t length_of_character(char first) {
  const auto byte = static_cast<unsigned char>(first);
  return byte < 0x80 ? 1 : byte < 0xE0 ? 2 : byte < 0xF0 ? 3 : 4;
}

}  // namespace

bool is_plain(char c) {
  return c >= ' ' && c <= '~';
}

std::size_t characters(std::string_view utf8) {
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

// Just past the quote that closes the one at `begin`, or npos.
std::size_t past_closing_quote(std::string_view text, std::size_t begin) {
  const char quote = text[begin];
  for (std::size_t i = begin + 1; i < text.size(); ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      const bool doubled = quote == '\'' && i + 1 < text.size() && text[i + 1] == quote;
      if (!doubled) return i + 1;
      ++i;
    }
  }
  return std::string_view::npos;
}

LineSpan line_around(std::string_view text, std::size_t at) {
  const std::size_t before = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  const std::size_t begin = before == std::string_view::npos ? start_of_text(text) : before + 1;
  std::size_t end = std::min(text.find('\n', at), text.size());
  if (end > begin && text[end - 1] == '\r') --end;
  return {std::min(begin, end), end};
}

Place place_at(const std::string& file, std::string_view text, std::size_t at) {
  const auto before = text.begin() + static_cast<long>(std::min(at, text.size()));
  const auto breaks = static_cast<int>(std::count(text.begin(), before, '\n'));
  return place_on_line(1 + breaks, file, text, at, 1);
}

Place place_on_line(int line_number, const std::string& file, std::string_view text, std::size_t at,
                    std::size_t length) {
  at = std::min(at, text.size());
  const LineSpan span = line_around(text, at);
  const std::string_view line = text.substr(span.begin, span.end - span.begin);
  Place place;
  place.file = file;
  place.line = line_number;
  place.column = 1 + static_cast<int>(
                         characters(text.substr(span.begin, std::min(at, span.end) - span.begin)));
  place.length = static_cast<int>(std::max<std::size_t>(1, length));
  if (static_cast<std::size_t>(place.column) > line_shown) return place;
  std::size_t end = 0;
  for (std::size_t count = 0; end < line.size() && count < line_shown; ++count) {
    do ++end;
    while (end < line.size() && (static_cast<unsigned char>(line[end]) & 0xC0U) == 0x80U);
  }
  place.line_text = line.substr(0, end);
  return place;
}

namespace {

Problem too_large(const std::string& file, std::size_t bytes, std::size_t most) {
  return input_problem(fmt::format("the file is {} bytes long; at most {} are read", bytes, most),
                       "split it, or check that this is the file you meant",
                       Place{file, 0, 0, 1, ""});
}

Problem not_text(const std::string& file, std::string_view text, std::size_t at) {
  Place place = place_at(file, text, at);
  const LineSpan line = line_around(text, at);
  const std::string_view before = text.substr(line.begin, at - line.begin);
  place.line_text.clear();
  if (is_utf8(before))
    place.line_text = fmt::format("{}\\x{:02x}", before, static_cast<unsigned char>(text[at]));
  return input_problem(
      "bytes that are not UTF-8 text stand here",
      "save the file as UTF-8 text; a spreadsheet or word-processor file cannot be read",
      std::move(place));
}

std::optional<Problem> refuse_character(const std::string& file, std::string_view text,
                                        std::size_t at, char32_t code) {
  if (code == '\t' || code == '\n') return std::nullopt;
  if (code == '\r' && at + 1 < text.size() && text[at + 1] == '\n') return std::nullopt;
  if (!is_unsafe(code)) return std::nullopt;
  return input_problem(fmt::format("a control or direction character (U+{:04X}) stands here",
                                   static_cast<unsigned>(code)),
                       "delete it; it cannot be seen in most editors: retype the line",
                       place_at(file, text, at));
}

std::optional<Problem> refuse_line(const std::string& file, std::string_view text, LineSpan line,
                                   const YamlLimits& limits) {
  const std::string_view bytes = text.substr(line.begin, line.end - line.begin);
  if (bytes.size() > limits.line) {
    return input_problem(
        fmt::format("this line is {} bytes long; at most {} are read", bytes.size(), limits.line),
        "break it into several lines", place_at(file, text, line.begin));
  }
  if (bytes.starts_with('%')) {  // a directive: yaml-cpp would drop the line in silence
    return input_problem("a line cannot begin with '%'",
                         "put the text in quotes, or remove the line",
                         place_at(file, text, line.begin));
  }
  const std::size_t indent = std::min(bytes.find_first_not_of(" \t"), bytes.size());
  const std::size_t tab = bytes.substr(0, indent).find('\t');
  if (tab != std::string_view::npos && indent < bytes.size()) {
    return input_problem("a tab stands in the indentation", "indent with spaces",
                         place_at(file, text, line.begin + tab));
  }
  return std::nullopt;
}

// Visits the characters of a text outside comments, each with whether a value may begin there; the
// visitor says at which one it left off.
template <class Visit>
void for_each_sign(std::string_view text, Visit visit) {
  char before = '\n';  // the last character that is no space
  for (std::size_t i = start_of_text(text); i < text.size(); ++i) {
    const char c = text[i];
    const bool apart = i == 0 || text[i - 1] == ' ' || text[i - 1] == '\n';
    const bool begins_value = before == '{' || before == '[' || before == ',' || before == '\n' ||
                              (apart && (before == ':' || before == '-'));
    if (c == '#' && apart) {
      i = std::min(text.find('\n', i), text.size()) - 1;
    } else {
      i = visit(i, begins_value);
    }
    if (c != ' ' && c != '\r') before = c;
  }
}

}  // namespace

std::optional<std::size_t> open_quote(std::string_view text) {
  std::optional<std::size_t> open;
  for_each_sign(text, [&](std::size_t at, bool begins_value) {
    const char c = text[at];
    if ((c != '"' && c != '\'') || !begins_value) return at;
    const std::size_t end = past_closing_quote(text.substr(0, text.find('\n', at)), at);
    if (end != std::string_view::npos) return end - 1;
    open = at;
    return text.size();
  });
  return open;
}

std::optional<std::size_t> open_bracket(std::string_view text) {
  std::vector<std::size_t> open;
  for_each_sign(text, [&](std::size_t at, bool begins_value) {
    const char c = text[at];
    if ((c == '{' || c == '[') && begins_value) open.push_back(at);
    if ((c == '}' || c == ']') && !open.empty()) open.pop_back();
    if ((c != '"' && c != '\'') || !begins_value) return at;
    const std::size_t end = past_closing_quote(text, at);
    return end == std::string_view::npos ? text.size() : end - 1;
  });
  return open.empty() ? std::nullopt : std::optional(open.back());
}

std::optional<Problem> refuse_bytes(const std::string& file, std::string_view text,
                                    const YamlLimits& limits) {
  if (text.size() > limits.bytes) return too_large(file, text.size(), limits.bytes);
  const std::size_t nul = text.find('\0');
  if (nul != std::string_view::npos) return not_text(file, text, nul);
  const std::size_t bad = utf8_bytes(text);
  if (bad < text.size()) return not_text(file, text, bad);

  for (std::size_t at = start_of_text(text); at < text.size();) {
    if (is_plain(text[at]) || text[at] == '\n') {  // nearly all of a book
      ++at;
      continue;
    }
    const std::size_t length = length_of_character(text[at]);
    const char32_t code = code_points(text.substr(at, length)).front();
    if (auto problem = refuse_character(file, text, at, code)) return problem;
    at += length;
  }
  for (std::size_t begin = start_of_text(text); begin < text.size();) {
    const LineSpan line = line_around(text, begin);
    if (auto problem = refuse_line(file, text, line, limits)) return problem;
    begin = std::min(text.find('\n', begin), text.size() - 1) + 1;
  }
  return std::nullopt;
}

}  // namespace pluckbook
