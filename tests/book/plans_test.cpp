// Moves ahead: which of them a day knew.
#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

std::vector<std::string> dates(const Book& book) {
  std::vector<std::string> all;
  for (const Move& move : book.moves) all.push_back(to_iso(move.date));
  return all;
}

using Dates = std::vector<std::string>;

TEST(PlannedMoves, AreKnownFromTheDayTheyWerePlanned) {
  const BookFolder folder;
  folder.write("grazing.yaml",
               "- {date: 2026-05-15, herd: cows, pasture: north}\n"
               "- {date: 2026-09-10, herd: cows, pasture: meadow, planned: 2026-08-20}\n"
               "- {date: 2026-11-01, herd: cows, pasture: north}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << book.problems().front().what;
  EXPECT_EQ(dates(as_of(*book, *parse_date("2026-08-19"))), (Dates{"2026-05-15"}));
  EXPECT_EQ(dates(as_of(*book, *parse_date("2026-08-20"))), (Dates{"2026-05-15", "2026-09-10"}));
  EXPECT_EQ(dates(as_of(*book, *parse_date("2026-11-01"))),
            (Dates{"2026-05-15", "2026-09-10", "2026-11-01"}));
}

TEST(PlannedMoves, AreAllKnownToADayThatReadsTheBookAsItStands) {
  const BookFolder folder;
  folder.write("grazing.yaml",
               "- {date: 2026-05-15, herd: cows, pasture: north}\n"
               "- {date: 2026-11-01, herd: cows, pasture: meadow}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book);
  EXPECT_EQ(dates(as_of_today(*book, *parse_date("2026-08-20"))),
            (Dates{"2026-05-15", "2026-11-01"}));
}

TEST(PlannedMoves, APlanAfterItsMoveIsAProblemWithAPlace) {
  const BookFolder folder;
  folder.write("grazing.yaml",
               "- {date: 2026-05-15, herd: cows, pasture: north, planned: 2026-05-16}\n");
  const auto problems = read_whole_book(folder.path()).problems;
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems[0].what.find("planned on 2026-05-16, after the move"), std::string::npos);
}

}  // namespace
}  // namespace pluckbook
