#include "base/text.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <cwchar>
#include <set>

namespace pluckbook {
namespace {

// Length of the well-formed UTF-8 sequence that starts here, or 0. Unicode 15.0, table 3-7.
std::size_t sequence_length(std::string_view s) {
  const auto at = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
  const auto in = [&](std::size_t i, int low, int high) {
    return i < s.size() && at(i) >= low && at(i) <= high;
  };
  if (s.empty()) return 0;
  const int a = at(0);
  if (a < 0x80) return 1;
  if (a >= 0xC2 && a <= 0xDF) return in(1, 0x80, 0xBF) ? 2 : 0;
  if (a >= 0xE0 && a <= 0xEF) {
    const int low = a == 0xE0 ? 0xA0 : 0x80;
    const int high = a == 0xED ? 0x9F : 0xBF;
    return in(1, low, high) && in(2, 0x80, 0xBF) ? 3 : 0;
  }
  if (a >= 0xF0 && a <= 0xF4) {
    const int low = a == 0xF0 ? 0x90 : 0x80;
    const int high = a == 0xF4 ? 0x8F : 0xBF;
    return in(1, low, high) && in(2, 0x80, 0xBF) && in(3, 0x80, 0xBF) ? 4 : 0;
  }
  return 0;
}

char32_t decode(std::string_view s, std::size_t length) {
  const auto low = [&](std::size_t i) { return static_cast<unsigned char>(s[i]) & 0x3FU; };
  const auto lead = static_cast<unsigned char>(s[0]);
  switch (length) {
    case 1:
      return lead;
    case 2:
      return ((lead & 0x1FU) << 6U) | low(1);
    case 3:
      return ((lead & 0x0FU) << 12U) | (low(1) << 6U) | low(2);
    default:
      return ((lead & 0x07U) << 18U) | (low(1) << 12U) | (low(2) << 6U) | low(3);
  }
}

bool is_combining(char32_t c) {
  return (c >= 0x0300 && c <= 0x036F) || (c >= 0x0483 && c <= 0x0489) ||
         (c >= 0x0591 && c <= 0x05BD) || (c >= 0x0610 && c <= 0x061A) ||
         (c >= 0x064B && c <= 0x065F) || (c >= 0x1AB0 && c <= 0x1AFF) ||
         (c >= 0x1DC0 && c <= 0x1DFF) || (c >= 0x20D0 && c <= 0x20FF) || c == 0x200D ||
         (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xFE20 && c <= 0xFE2F);
}

// East Asian Wide and Fullwidth, in blocks (Unicode 15.0, annex 11); enough to keep columns true.
bool is_wide(char32_t c) {
  return (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0x303E) ||
         (c >= 0x3041 && c <= 0xA4CF && c != 0x303F) || (c >= 0xAC00 && c <= 0xD7A3) ||
         (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) ||
         (c >= 0xFF00 && c <= 0xFF60) || (c >= 0xFFE0 && c <= 0xFFE6) ||
         (c >= 0x1F300 && c <= 0x1F64F) || (c >= 0x1F900 && c <= 0x1F9FF) ||
         (c >= 0x20000 && c <= 0x3FFFD);
}

// Optimal string alignment distance: insert, drop, change, swap a neighbouring pair.
int edits(std::string_view a, std::string_view b) {
  std::vector<std::vector<int>> d(a.size() + 1, std::vector<int>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = static_cast<int>(i);
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int change = d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
      }
    }
  }
  return d[a.size()][b.size()];
}

// Letters alike at the beginning: of two words as near, the one that begins alike is meant.
std::size_t shared_beginning(std::string_view a, std::string_view b) {
  const auto end = std::mismatch(a.begin(), a.end(), b.begin(), b.end()).first;
  return static_cast<std::size_t>(end - a.begin());
}

}  // namespace

std::optional<double> parse_number(std::string_view text) {
  std::string_view digits = text;
  if (!digits.empty() && (digits[0] == '-' || digits[0] == '+')) digits.remove_prefix(1);
  const std::size_t point = digits.find('.');
  const std::string_view whole = digits.substr(0, point);
  const std::string_view part = point == std::string_view::npos ? "" : digits.substr(point + 1);
  const auto all_digits = [](std::string_view s) {
    return std::all_of(s.begin(), s.end(), [](char c) { return c >= '0' && c <= '9'; });
  };
  if (whole.empty() && part.empty()) return std::nullopt;
  if (!all_digits(whole) || !all_digits(part)) return std::nullopt;
  // A leading zero ("017") may have been meant as a code, not as a number.
  if (whole.size() > 1 && whole[0] == '0') return std::nullopt;
  double value = 0;
  const std::from_chars_result end =
      std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (end.ec != std::errc() || end.ptr != digits.data() + digits.size()) return std::nullopt;
  if (!std::isfinite(value)) return std::nullopt;
  return text[0] == '-' ? -value : value;
}

std::string shortest(double value) {
  char buffer[400];
  const std::to_chars_result end =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed);
  return std::string(buffer, end.ptr);
}

std::string fixed(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text[0] == '-' && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
  return text;
}

std::size_t utf8_bytes(std::string_view bytes) {
  std::size_t good = 0;
  while (const std::size_t length = sequence_length(bytes.substr(good))) good += length;
  return good;
}

bool is_utf8(std::string_view bytes) {
  return utf8_bytes(bytes) == bytes.size();
}

std::vector<char32_t> code_points(std::string_view utf8) {
  std::vector<char32_t> codes;
  codes.reserve(utf8.size());
  while (!utf8.empty()) {
    const std::size_t length = std::max<std::size_t>(1, sequence_length(utf8));
    codes.push_back(decode(utf8, length));
    utf8.remove_prefix(length);
  }
  return codes;
}

void append_utf8(std::string& out, char32_t c) {
  const auto byte = [&](char32_t value) { out += static_cast<char>(value); };
  if (c < 0x80) {
    byte(c);
  } else if (c < 0x800) {
    byte(0xC0 | (c >> 6U));
    byte(0x80 | (c & 0x3FU));
  } else if (c < 0x10000) {
    byte(0xE0 | (c >> 12U));
    byte(0x80 | ((c >> 6U) & 0x3FU));
    byte(0x80 | (c & 0x3FU));
  } else {
    byte(0xF0 | (c >> 18U));
    byte(0x80 | ((c >> 12U) & 0x3FU));
    byte(0x80 | ((c >> 6U) & 0x3FU));
    byte(0x80 | (c & 0x3FU));
  }
}

bool is_unsafe(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c <= 0x9F) || c == 0x061C || c == 0x200E || c == 0x200F ||
         (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0xFEFF ||
         (c >= 0xFFF9 && c <= 0xFFFB);
}

std::string shown(std::string_view text, std::size_t most) {
  std::string out;
  std::size_t count = 0;
  while (!text.empty()) {
    if (count++ == most) return out + "...";
    const std::size_t length = sequence_length(text);
    if (length == 0) {
      out += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[0]));
      text.remove_prefix(1);
      continue;
    }
    const char32_t code = decode(text, length);
    if (is_unsafe(code)) {
      out += fmt::format("\\u{:04x}", static_cast<unsigned>(code));
    } else {
      out.append(text.substr(0, length));
    }
    text.remove_prefix(length);
  }
  return out;
}

int display_width(std::string_view utf8) {
  const auto plain = [](char c) { return static_cast<unsigned char>(c) < 0x80; };
  if (std::all_of(utf8.begin(), utf8.end(), plain)) return static_cast<int>(utf8.size());
  int width = 0;
  for (char32_t code : code_points(utf8)) width += is_combining(code) ? 0 : is_wide(code) ? 2 : 1;
  return width;
}

std::string pad_right(std::string_view text, int width) {
  const int missing = std::max(0, width - display_width(text));
  return std::string(text) + std::string(static_cast<std::size_t>(missing), ' ');
}

std::string pad_left(std::string_view text, int width) {
  const int missing = std::max(0, width - display_width(text));
  return std::string(static_cast<std::size_t>(missing), ' ') + std::string(text);
}

std::optional<std::string> nearest_word(std::string_view word, std::span<const std::string> known) {
  if (word.size() > 64) return std::nullopt;
  const int allowed = word.size() <= 5 ? 1 : word.size() <= 9 ? 2 : 3;
  std::optional<std::string> best;
  int best_edits = allowed + 1;
  std::size_t best_shared = 0;
  for (const std::string& candidate : known) {
    const auto longer = static_cast<long>(candidate.size()) - static_cast<long>(word.size());
    if (std::abs(longer) > allowed) continue;  // as many edits at least
    const int distance = edits(word, candidate);
    const std::size_t shared = shared_beginning(word, candidate);
    if (distance > allowed || distance > best_edits) continue;
    if (distance == best_edits && shared <= best_shared) continue;
    best_edits = distance;
    best_shared = shared;
    best = candidate;
  }
  return best;
}

std::string suggestion(std::string_view word, std::span<const std::string> known) {
  if (const auto near = nearest_word(word, known)) return fmt::format("did you mean '{}'?", *near);
  constexpr std::size_t widest = 76;
  std::set<std::string_view> said;
  std::string text, line = "known here:";
  for (const std::string& one : known) {
    if (one.empty() || !said.insert(one).second) continue;
    if (said.size() > 1) line += ",";
    if (line.size() + one.size() + 1 > widest) {
      text += line + "\n";
      line = " ";
    }
    line += " " + one;
  }
  return said.empty() ? "none is known here yet" : text + line;
}

std::string listed(std::span<const std::string> items) {
  if (items.size() < 2) return items.empty() ? "" : items.front();
  return fmt::format("{} and {}", fmt::join(items.first(items.size() - 1), ", "), items.back());
}

std::size_t start_of_text(std::string_view text) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  return text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t next = text.find(at);
    parts.push_back(text.substr(0, next));
    if (next == std::string_view::npos) return parts;
    text.remove_prefix(next + 1);
  }
}

}  // namespace pluckbook
