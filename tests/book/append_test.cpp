#include "book/append.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"
#include "book/spliced_text.h"

namespace pluckbook {
namespace {

const Book& alder_bench() {
  static const Book book = *read_book(BookFolder().path());
  return book;
}

const WrittenKeys a_move = {{"date", "2026-08-20"}, {"herd", "cows"}, {"pasture", "meadow"}};
const std::string move_line = "- {date: 2026-08-20, herd: cows, pasture: meadow}\n";

TEST(Append, AMoveIsOneLineAtTheEndOfItsFile) {
  for (const std::string before :
       {"", "# the moves\n", "- {date: 2026-05-10, herd: cows, pasture: north}   # early\n",
        "# 2025\n- {date: 2025-05-10, herd: cows, pasture: north}\n\n# 2026\n"
        "- {date: 2026-05-10, herd: cows, pasture: north}\n"
        "- {date: 2026-06-10, herd: cows, pasture: meadow}\n# looked good\n"}) {
    EXPECT_EQ(text_of(with_record(alder_bench(), "grazing.yaml", before, a_move)),
              before + move_line);
  }
}

TEST(Append, TheLayoutOfTheFileIsKept) {
  EXPECT_EQ(
      text_of(with_record(alder_bench(), "grazing.yaml",
                          "  - date: 2026-05-10\r\n    herd: cows\r\n    pasture: north", a_move)),
      "  - date: 2026-05-10\r\n    herd: cows\r\n    pasture: north\r\n"
      "  - {date: 2026-08-20, herd: cows, pasture: meadow}\r\n");
  EXPECT_EQ(text_of(with_record(alder_bench(), "grazing.yaml", "[]\n", a_move)),
            "grazing.yaml:1:1: what stands here cannot be added to without rewriting it\n"
            "   1 | []\n"
            "     | ^\n"
            "  nothing was changed; add by hand:  " +
                move_line);
}

TEST(Append, WhatTheReaderRefusesIsNotWritten) {
  const std::string twice = text_of(with_record(alder_bench(), "grazing.yaml", move_line, a_move));
  EXPECT_EQ(twice,
            "pluckbook: cows moves twice on 2026-08-20; first on line 1\n"
            "  keep the pasture it stood in that night\n"
            "  nothing was written\n");
  const Result<Spliced> fat =
      with_record(alder_bench(), "condition.yaml", "",
                  {{"date", "2026-08-20"}, {"herd", "cows"}, {"condition", "52"}});
  EXPECT_EQ(text_of(fat),
            "pluckbook: condition 52 is outside 1 to 9\n"
            "  check the number and its unit\n"
            "  nothing was written\n");
  EXPECT_EQ(fat.problems()[0].fault, Fault::usage);
}

TEST(Append, ATextThatNeedsQuotesGetsThem) {
  EXPECT_EQ(text_of(with_record(alder_bench(), "events.yaml", "",
                                {{"date", "2026-08-20"},
                                 {"pasture", "north"},
                                 {"event", "rain"},
                                 {"note", "2\", {at last}"}})),
            "- {date: 2026-08-20, pasture: north, event: rain, note: \"2\\\", {at last}\"}\n");
}

struct QuoteCase {
  std::string name, before, after;
};

TEST(Append, AQuoteGoesBehindThoseOfItsFeedInEveryLayout) {
  const std::string added = "{price: 340 USD/ton, date: 2026-09-01}";
  const std::string old = "{price: 355 USD/ton, date: 2026-08-01}";
  const std::string tail = "\n# next\n- {id: corn, like: corn cracked}\n";
  const std::vector<QuoteCase> cases = {
      {"none yet", "- id: cube\n  like: range cube 20   # theirs\n  waste: 5\n",
       "- id: cube\n  like: range cube 20   # theirs\n  quote: " + added + "\n  waste: 5\n"},
      {"one in braces",
       "- id: cube\n  like: range cube 20\n  quote: " + old + "   # phoned\n  waste: 5\n",
       "- id: cube\n  like: range cube 20\n  quote:\n    - " + old + "   # phoned\n    - " + added +
           "\n  waste: 5\n"},
      {"one on lines",
       "- id: cube\n  like: range cube 20\n  quote:\n    price: 355 USD/ton   # phoned\n    date: "
       "2026-08-01\n  waste: 5\n",
       "- id: cube\n  like: range cube 20\n  quote:\n    - price: 355 USD/ton   # phoned\n      "
       "date: 2026-08-01\n    - " +
           added + "\n  waste: 5\n"},
      {"a list on lines",
       "- id: cube\n  like: range cube 20\n  quote:\n  - " + old + "\n  waste: 5\n",
       "- id: cube\n  like: range cube 20\n  quote:\n  - " + old + "\n  - " + added +
           "\n  waste: 5\n"},
      {"a list in brackets", "- id: cube\n  like: range cube 20\n  quote: [" + old + "]\n",
       "- id: cube\n  like: range cube 20\n  quote: [" + old + ", " + added + "]\n"},
      {"a feed in braces, none yet", "- {id: cube, like: range cube 20}\n",
       "- {id: cube, like: range cube 20, quote: " + added + "}\n"},
      {"a feed in braces with one",
       "- {id: cube, like: range cube 20, quote: " + old + ", waste: 5}\n",
       "- {id: cube, like: range cube 20, quote: [" + old + ", " + added + "], waste: 5}\n"},
      {"a feed in braces with a list", "- {id: cube, like: range cube 20, quote: [" + old + "]}\n",
       "- {id: cube, like: range cube 20, quote: [" + old + ", " + added + "]}\n"},
  };
  const WrittenKeys quote = {{"price", "340 USD/ton"}, {"date", "2026-09-01"}};
  for (const QuoteCase& one : cases) {
    SCOPED_TRACE(one.name);
    EXPECT_EQ(text_of(with_quote(alder_bench(), "feeds.yaml", one.before, "cube", quote)),
              one.after);
    EXPECT_EQ(text_of(with_quote(alder_bench(), "feeds.yaml", one.before + tail, "cube", quote)),
              one.after + tail);
  }
}

TEST(Append, AQuoteInAnotherCurrencyOrForAnUnknownFeedIsRefused) {
  const std::string feeds = "- {id: cube, like: range cube 20}\n";
  EXPECT_EQ(
      text_of(with_quote(alder_bench(), "feeds.yaml", feeds, "cube", {{"price", "340 EUR/ton"}})),
      "pluckbook: price is in 'EUR', but the book counts in USD\n"
      "  convert it to USD, or change currency in book.yaml\n"
      "  nothing was written\n");
  EXPECT_EQ(
      text_of(with_quote(alder_bench(), "feeds.yaml", feeds, "corn", {{"price", "5 USD/cwt"}})),
      "pluckbook: there is no feed 'corn' in feeds.yaml\n"
      "  nothing was written\n");
}

}  // namespace
}  // namespace pluckbook
