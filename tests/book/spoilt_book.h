// spoilt_book.h - one good book, one file of it spoilt, and the whole text of what is said.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook::testing {

inline std::string said_of(const BookFolder& folder) {
  std::string text;
  for (const Problem& problem : read_whole_book(folder.path()).problems) text += to_text(problem);
  return text;
}

struct BadBook {
  std::string name, file, text, expected;
};

inline void check_all(const std::vector<BadBook>& books) {
  for (const BadBook& bad : books) {
    SCOPED_TRACE(bad.name);
    const BookFolder folder;
    folder.write(bad.file, bad.text);
    EXPECT_EQ(said_of(folder), bad.expected);
  }
}

inline std::string book_with(const std::string& line) {
  return "pluckbook: 1\nname: A\nunits: us\ncurrency: USD\n"
         "labs: [{id: county}]\n" +
         line + "\n";
}
inline std::string herd_with(const std::string& line) {
  return "- id: cows\n  head: 140\n  class: mature cow\n  weight: 1250\n"
         "  calving: 2026-03-10\n" +
         line + "\n";
}
inline std::string feed_with(const std::string& line) {
  return "- id: cube\n  like: range cube 20\n" + line + "\n";
}
inline std::string bag_with(const std::string& line) {
  return "- bag: n1\n  plucked: 2026-06-12\n" + line + "\n";
}
inline std::string result_with(const std::string& values) {
  return bag_with("  results:\n    - {received: 2026-06-25, basis: dry matter, " + values + "}");
}

}  // namespace pluckbook::testing
