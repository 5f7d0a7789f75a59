// Files of a demo book damaged at random are read or refused with a place; where only the layout is
// changed, an addition is made and takes nothing away.
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <random>
#include <vector>

#include "book/book_folder.h"
#include "book/edit.h"
#include "book/read.h"

namespace pluckbook {
namespace {

std::string demo_file(const std::string& name) {
  std::ifstream stream(std::string(PLUCKBOOK_SOURCE) + "/scenarios/northern/" + name,
                       std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

class Damage {
 public:
  explicit Damage(unsigned seed) : chance_(seed) {}
  std::size_t below(std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(chance_);
  }
  std::string of(std::string text) {
    static const std::string bytes = "\"'{}[]:,#-&*!|>%@` \t\r\n0a\x04\x7F\xC3\xE2\x80\xAE";
    for (std::size_t times = 1 + below(3); times > 0 && !text.empty(); --times) {
      const std::size_t at = below(text.size());
      switch (below(4)) {
        case 0:
          text[at] = bytes[below(bytes.size())];
          break;
        case 1:
          text.insert(at, 1, bytes[below(bytes.size())]);
          break;
        case 2:
          text.erase(at, 1 + below(20));
          break;
        default:
          text.insert(at, text.substr(below(text.size()), 1 + below(40)));
      }
    }
    return text;
  }

  // What hands do to a layout without changing what it says.
  std::string layout_of(const std::string& text) {
    static const std::vector<std::string> habits = {
        "\n", "   \n", "  # a note: {x} \"\n", "\n\n", "\n# Pré: '\n", "\n      # - bag: no\n"};
    std::string changed;
    for (char c : text) {
      if (c == '\n') {
        changed += habits[below(3) == 0 ? below(habits.size()) : 0];
      } else {
        changed += c;
      }
    }
    if (below(4) == 0) changed.erase(changed.find_last_not_of("\n ") + 1);
    return changed;
  }

 private:
  std::mt19937 chance_;
};

TEST(Damage, ADamagedFileIsReadOrRefusedWithItsName) {
  for (const std::string name : {"book.yaml", "pastures.yaml", "herds.yaml", "grazing.yaml",
                                 "feeds.yaml", "condition.yaml", "samples/2026/draws.yaml"}) {
    const BookFolder folder;
    const std::string whole = demo_file(name);
    ASSERT_FALSE(whole.empty());
    int refused = 0;
    for (unsigned seed = 1; seed <= 150; ++seed) {
      SCOPED_TRACE(name + ", seed " + std::to_string(seed));
      folder.write(name, Damage(seed).of(whole));
      const Reading reading = read_whole_book(folder.path());
      for (const Problem& problem : reading.problems) {
        ASSERT_TRUE(problem.place);
        EXPECT_FALSE(problem.what.empty());
        EXPECT_FALSE(problem.remedy.empty()) << problem.what;
        EXPECT_EQ(to_text(problem).find('\x04'), std::string::npos);
      }
      refused += reading.has_errors() ? 1 : 0;
    }
    EXPECT_GT(refused, 50) << name;
  }
}

// The new text is the old one with one piece put in.
bool only_added(const std::string& before, const std::string& after) {
  const auto [a, b] = std::mismatch(before.begin(), before.end(), after.begin(), after.end());
  const std::string rest(a, before.end());
  return after.size() > before.size() && after.ends_with(rest);
}

TEST(Damage, AnAdditionTakesNothingAway) {
  Book book;
  book.labs.push_back({"county", "County Forage Lab", 10});
  const std::string whole = demo_file("samples/2026/draws.yaml");
  LabResult result;
  result.received = *parse_date("2026-12-20");
  result.values = {{"cp", 6.4}};
  for (unsigned seed = 1; seed <= 300; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Damage hands(seed);
    const std::string text = hands.layout_of(whole);
    const std::string bag = "26-draws-0" + std::to_string(1 + hands.below(8));
    const Mark lost = {Mark::What::lost, *parse_date("2026-12-01"), ""};
    for (const Result<Spliced>& spliced : {with_mark(book, "f.yaml", text, bag, lost),
                                           with_result(book, "f.yaml", text, bag, result)}) {
      ASSERT_TRUE(spliced) << to_text(spliced.problems()[0]) << text;
      EXPECT_TRUE(only_added(text, spliced->text)) << spliced->text;
    }
  }
}

}  // namespace
}  // namespace pluckbook
