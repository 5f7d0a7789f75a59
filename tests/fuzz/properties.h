// properties.h - what must hold of every input, however strange.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "base/problem.h"
#include "base/text.h"

namespace pluckbook::fuzz {

inline void require(bool holds, const char* what, std::string_view about = "") {
  if (holds) return;
  std::fprintf(stderr, "broken: %s\n%.*s\n", what, static_cast<int>(about.size()), about.data());
  std::abort();
}

inline std::string text_of(const std::uint8_t* data, std::size_t size) {
  return std::string(reinterpret_cast<const char*>(data), size);
}

/// Fit for a terminal: nothing but line breaks and printable characters.
inline void require_printable(std::string_view text) {
  const auto plain = [](char c) { return c == '\n' || (c >= ' ' && c <= '~'); };
  if (std::all_of(text.begin(), text.end(), plain)) return;  // nearly always, and soon seen
  require(is_utf8(text), "what is said is UTF-8", text);
  for (const char32_t code : code_points(text)) {
    require(code == '\n' || !is_unsafe(code), "what is said can be shown", text);
  }
}

/// Every Problem says what is wrong and what to do, in text fit for a terminal.
inline void require_useful(const Problems& problems) {
  for (const Problem& problem : problems) {
    require(!problem.what.empty() && !problem.remedy.empty(), "a Problem has words", problem.what);
    require_printable(to_text(problem));
  }
}

}  // namespace pluckbook::fuzz
