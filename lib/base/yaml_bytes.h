// yaml_bytes.h - the text of a YAML file before any parser sees it: what bytes are refused, where
// lines begin, and the place of a byte as people count it. Used by yaml.cpp only.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/problem.h"
#include "base/yaml.h"

namespace pluckbook {

/// A letter, digit, sign or space of ASCII: one byte, one character, nothing to refuse.
bool is_plain(char c);

/// Characters of a well-formed UTF-8 text.
std::size_t characters(std::string_view utf8);

/// The bytes of a line, without its break and without the byte order mark.
struct LineSpan {
  std::size_t begin, end;
};
LineSpan line_around(std::string_view text, std::size_t at);

/// Where the byte `at` stands: lines and characters counted from 1, one character marked.
Place place_at(const std::string& file, std::string_view text, std::size_t at);

/// The same where the number of the line is known: a file full of Problems is not counted through
/// for each. `length` characters are marked.
Place place_on_line(int line_number, const std::string& file, std::string_view text, std::size_t at,
                    std::size_t length);

/// Just past the quote that closes the one at `begin`, or npos when none does.
std::size_t past_closing_quote(std::string_view text, std::size_t begin);

/// Where a quote opens a text and is not closed on its line, going by the looks of the line alone:
/// a text of several lines ('|') may look so too. Asked only where the parser has stumbled.
std::optional<std::size_t> open_quote(std::string_view text);

/// The innermost '{' or '[' that begins a value and is never closed, going by looks alone. Asked
/// only where the parser has stumbled.
std::optional<std::size_t> open_bracket(std::string_view text);

/// The first Problem of the bytes: size, UTF-8, control and direction characters, tabs in the
/// indentation, over-long lines.
std::optional<Problem> refuse_bytes(const std::string& file, std::string_view text,
                                    const YamlLimits& limits);

}  // namespace pluckbook
