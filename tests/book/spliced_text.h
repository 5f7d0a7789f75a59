// spliced_text.h - what an edit left behind, as text.
#pragma once

#include <string>

#include "base/problem.h"
#include "book/splice.h"

namespace pluckbook {

/// The new text, or the Problems as they are said.
inline std::string text_of(const Result<Spliced>& spliced) {
  if (spliced) return spliced->text;
  std::string text;
  for (const Problem& problem : spliced.problems()) text += to_text(problem);
  return text;
}

}  // namespace pluckbook
