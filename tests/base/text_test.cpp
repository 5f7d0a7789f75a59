#include "base/text.h"

#include <gtest/gtest.h>
#include <algorithm>
#include <vector>

#include <random>

namespace pluckbook {
namespace {

TEST(Number, PlainDecimalsOnly) {
  EXPECT_EQ(parse_number("640.5"), 640.5);
  EXPECT_EQ(parse_number("-3"), -3.0);
  EXPECT_EQ(parse_number("+3"), 3.0);
  EXPECT_EQ(parse_number(".5"), 0.5);
  EXPECT_EQ(parse_number("5."), 5.0);
  EXPECT_EQ(parse_number("0"), 0.0);
  EXPECT_EQ(parse_number("0.25"), 0.25);
  for (const char* bad : {"", ".", "-", "017", "0x1F", "1e3", "640,5", "1_000", "nan", ".nan",
                          "inf", " 1", "1 ", "--1", "1.2.3", "٣"}) {
    EXPECT_FALSE(parse_number(bad)) << bad;
  }
  EXPECT_FALSE(parse_number(std::string(400, '9')));  // finite in no double
}

TEST(Number, ShortestReadsBackTheSame) {
  EXPECT_EQ(shortest(640.1), "640.1");
  EXPECT_EQ(shortest(1e21), "1000000000000000000000");
  std::mt19937_64 random(4711);
  std::uniform_real_distribution<double> any(-1e6, 1e6);
  for (int i = 0; i < 10'000; ++i) {
    const double value = any(random);
    EXPECT_EQ(parse_number(shortest(value)), value);
  }
}

TEST(Number, FixedHasNoNegativeZero) {
  EXPECT_EQ(fixed(-0.04, 1), "0.0");
  EXPECT_EQ(fixed(-0.06, 1), "-0.1");
  EXPECT_EQ(fixed(7, 0), "7");
}

TEST(Utf8, RefusesWhatIsNotWellFormed) {
  EXPECT_TRUE(is_utf8("Peña Blanca, Žďár"));
  for (const char* bad :
       {"\xC0\xAF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF5\x80\x80\x80", "\x80", "\xE2\x82"}) {
    EXPECT_FALSE(is_utf8(bad));
  }
}

TEST(Shown, SpellsOutWhatATerminalWouldObey) {
  EXPECT_EQ(shown("a\x1b[31mb"), "a\\u001b[31mb");
  EXPECT_EQ(shown("x\u202Ey"), "x\\u202ey");
  EXPECT_EQ(shown("\xff"), "\\xff");
  EXPECT_EQ(shown("abcdef", 3), "abc...");
}

TEST(Width, CountsColumnsNotBytes) {
  EXPECT_EQ(display_width("Peña"), 4);
  EXPECT_EQ(display_width("e\u0301"), 1);
  EXPECT_EQ(display_width("牧場"), 4);
  EXPECT_EQ(pad_left("ñ", 3), "  ñ");
}

TEST(Listed, ItemsStandAsAPersonListsThem) {
  EXPECT_EQ(listed({}), "");
  EXPECT_EQ(listed(std::vector<std::string>{"a"}), "a");
  EXPECT_EQ(listed(std::vector<std::string>{"a", "b"}), "a and b");
  EXPECT_EQ(listed(std::vector<std::string>{"a", "b", "c"}), "a, b and c");
}

TEST(NearestWord, OneSlipIsFoundAndStrangersAreNot) {
  const std::vector<std::string> known = {"freight", "price", "date", "waste"};
  EXPECT_EQ(nearest_word("fright", known), "freight");
  EXPECT_EQ(nearest_word("dtae", known), "date");  // a swapped pair is one edit
  EXPECT_EQ(nearest_word("prices", known), "price");
  EXPECT_FALSE(nearest_word("barn", known));
  EXPECT_FALSE(nearest_word("dt", known));
}

/// A word with one letter left out, doubled, changed or swapped with the next.
std::string slip_in(const std::string& word, std::mt19937& random) {
  const std::size_t at = 1 + random() % (word.size() - 2);
  std::string slip = word;
  switch (random() % 4) {
    case 0:
      return slip.erase(at, 1);
    case 1:
      return slip.insert(at, 1, word[at]);
    case 2:
      slip[at] = 'x';
      return slip;
    default:
      std::swap(slip[at], slip[at + 1]);
      return slip;
  }
}

TEST(NearestWord, FindsTheWordBehind95Of100SlipsOfOneEdit) {
  const std::vector<std::string> known = {
      "start",     "check",    "bag",        "mark",
      "result",    "bags",     "diet",       "need",
      "outlook",   "price",    "plan",       "compare",
      "backtest",  "workings", "report",     "sources",
      "schema",    "import",   "calving",    "weaning",
      "condition", "freight",  "waste",      "quote",
      "analysis",  "green_up", "terrain",    "received",
      "plucked",   "results",  "supersedes", "feedings_per_week",
      "protein",   "moisture"};
  std::mt19937 random(20260401);
  int slips = 0;
  int found = 0;
  while (slips < 200) {
    const std::string& word = known[random() % known.size()];
    if (word.size() < 4) continue;
    const std::string slip = slip_in(word, random);
    if (std::find(known.begin(), known.end(), slip) != known.end()) continue;
    ++slips;
    found += nearest_word(slip, known) == word ? 1 : 0;
  }
  EXPECT_GE(found, 190);
  for (const char* other :
       {"zebra",    "tractor", "hydrogen", "quilt",   "mountain",   "xylophone", "banjo",
        "umbrella", "kayak",   "vertigo",  "giraffe", "lighthouse", "puzzle",    "violin",
        "wizard",   "yoghurt", "jungle",   "feather", "dolphin",    "saddlebag"}) {
    EXPECT_FALSE(nearest_word(other, known)) << other;
  }
}

}  // namespace
}  // namespace pluckbook
