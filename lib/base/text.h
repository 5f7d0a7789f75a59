// text.h - numbers, words and columns of text, the same in every locale.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace pluckbook {

/// A plain decimal number: "640.5", "-3", ".5". Nothing for anything else: no exponent, no hex,
/// no octal, no comma, no NaN or infinity, no spaces, no digits beyond what a double can hold
/// finite.
std::optional<double> parse_number(std::string_view text);

/// The shortest text that reads back as the same number, without an exponent: 640.1, not
/// 640.10000000000002.
std::string shortest(double value);

/// A number as it is shown to people, with that many decimals; never "-0.0".
std::string fixed(double value, int decimals);

/// How many of the bytes, from the first on, are well-formed UTF-8 (no overlong forms, no
/// surrogates).
std::size_t utf8_bytes(std::string_view bytes);
bool is_utf8(std::string_view bytes);

/// The characters of a well-formed UTF-8 text.
std::vector<char32_t> code_points(std::string_view utf8);
void append_utf8(std::string& out, char32_t code);

/// Control, escape and direction characters; what must never reach a terminal raw.
bool is_unsafe(char32_t code);

/// Text from a file or a command line made fit for a terminal: unsafe characters spelled out
/// (\u001b), bad bytes as \xNN, at most `most` characters with "..." after.
std::string shown(std::string_view text, std::size_t most = 60);

/// Columns the text takes on a terminal: wide letters 2, combining marks 0.
int display_width(std::string_view utf8);

/// Text padded to a display width.
std::string pad_right(std::string_view text, int width);
std::string pad_left(std::string_view text, int width);

/// The nearest known word, when near enough to be a slip: at most one edit for five letters or
/// fewer, two up to nine, three beyond; a swapped pair is one edit. Nothing when none is near.
std::optional<std::string> nearest_word(std::string_view word, std::span<const std::string> known);

/// "did you mean 'freight'?", or what is known, or both.
std::string suggestion(std::string_view word, std::span<const std::string> known);

/// The items as a person lists them: "a", "a and b", "a, b and c".
std::string listed(std::span<const std::string> items);

/// 3 when the text opens with a byte order mark, else 0.
std::size_t start_of_text(std::string_view text);

std::string_view trimmed(std::string_view text);
std::vector<std::string_view> split(std::string_view text, char at);

}  // namespace pluckbook
