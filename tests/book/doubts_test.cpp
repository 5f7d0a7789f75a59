#include "book/doubts.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

std::string doubts_of(const BookFolder& folder, const char* day) {
  const Result<Book> book = read_book(folder.path());
  std::string text;
  for (const Problem& problem : doubts_on(*book, *parse_date(day))) text += to_text(problem);
  return text;
}

std::string remedy(const std::string& pasture) {
  return "  pluck one: pluckbook bag " + pasture +
         " --plan; every four to six weeks when dormant, every two to four while grass changes\n";
}

// The small book: cows on north from 10 May; bags of 12 June and 6 July; quote of 1 August.
TEST(Doubts, AHerdThatStandsForOverSixtyDaysWithoutABag) {
  const BookFolder folder;
  EXPECT_EQ(doubts_of(folder, "2026-09-04"), "");  // 60 days after 6 July
  EXPECT_EQ(doubts_of(folder, "2026-09-05"),
            "grazing.yaml:1:3: warning: north has been grazed for 61 days without a bag, since "
            "2026-07-06\n"
            "   1 | - {date: 2026-05-10, herd: cows, pasture: north}\n"
            "     |   ^\n" +
                remedy("north"));
  folder.write("grazing.yaml",
               "- {date: 2026-05-10, herd: cows, pasture: north}\n"
               "- {date: 2026-08-20, herd: cows, pasture: meadow}\n");
  EXPECT_EQ(doubts_of(folder, "2026-10-19"), "");
  EXPECT_EQ(doubts_of(folder, "2026-10-20"),
            "grazing.yaml:2:3: warning: meadow has been grazed for 61 days without a bag, since "
            "2026-08-20\n"
            "   2 | - {date: 2026-08-20, herd: cows, pasture: meadow}\n"
            "     |   ^\n" +
                remedy("meadow"));
}

TEST(Doubts, AClippedBagDoesNotEndAGap) {
  const BookFolder folder;
  folder.write("samples/2026/north.yaml", "- {bag: a, plucked: 2026-06-12, method: clipped}\n");
  EXPECT_NE(doubts_of(folder, "2026-07-20").find("71 days without a bag, since 2026-05-10"),
            std::string::npos);
}

TEST(Doubts, AQuoteOverAYearOld) {
  const BookFolder folder;
  folder.write("grazing.yaml", "# none\n");
  EXPECT_EQ(doubts_of(folder, "2027-08-01"), "");
  EXPECT_EQ(doubts_of(folder, "2027-08-02"),
            "feeds.yaml:1:3: warning: the newest quote of cube is of 2026-08-01, 366 days old\n"
            "   1 | - id: cube\n"
            "     |   ^\n"
            "  ask again, then  pluckbook quote cube PRICE/UNIT\n");
}

TEST(Doubts, TheLastRecordedDayIsThatOfAnyRecord) {
  const BookFolder folder;
  EXPECT_EQ(to_iso(last_recorded_day(*read_book(folder.path()))), "2026-08-01");  // the quote
  folder.write("events.yaml", "- {date: 2026-08-20, pasture: north, event: rain}\n");
  EXPECT_EQ(to_iso(last_recorded_day(*read_book(folder.path()))), "2026-08-20");
  EXPECT_TRUE(last_recorded_day(Book()).is_special());
}

}  // namespace
}  // namespace pluckbook
