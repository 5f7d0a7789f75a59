#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

std::string problems_with(const std::string& events) {
  const BookFolder folder;
  folder.write("events.yaml", events);
  std::string text;
  for (const Problem& problem : read_whole_book(folder.path()).problems) text += to_text(problem);
  return text;
}

TEST(Events, AreReadInTheirOrder) {
  const BookFolder folder;
  folder.write("events.yaml",
               "- {date: 2026-04-22, pasture: north, event: green-up}\n"
               "- {date: 2026-08-20, pasture: meadow, event: rain, note: two inches}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book);
  ASSERT_EQ(book->events.size(), 2U);
  EXPECT_EQ(book->events[0].kind, EventKind::green_up);
  EXPECT_EQ(to_iso(book->events[1].date), "2026-08-20");
  EXPECT_EQ(book->events[1].pasture, "meadow");
  EXPECT_EQ(book->events[1].kind, EventKind::rain);
  EXPECT_EQ(book->events[1].note, "two inches");
  EXPECT_EQ(book->events[1].origin.line, 2);
  EXPECT_EQ(as_of(*book, *parse_date("2026-08-19")).events.size(), 1U);
  EXPECT_EQ(as_of(*book, *parse_date("2026-08-20")).events.size(), 2U);
}

TEST(Events, EveryWordReadsBackAsItsKind) {
  for (const auto& [word, kind] : event_words()) EXPECT_EQ(word_of(kind), word);
}

TEST(Events, AnUnknownWordOrPastureAndATwinAreProblemsWithAPlace) {
  EXPECT_EQ(problems_with("- {date: 2026-08-20, pasture: north, event: frots}\n"),
            "events.yaml:1:45: event cannot be 'frots'\n"
            "   1 | - {date: 2026-08-20, pasture: north, event: frots}\n"
            "     |                                             ^~~~~\n"
            "  did you mean 'frost'?\n");
  EXPECT_EQ(problems_with("- {date: 2026-08-20, pasture: nroth, event: frost}\n"),
            "events.yaml:1:31: there is no pasture 'nroth'\n"
            "   1 | - {date: 2026-08-20, pasture: nroth, event: frost}\n"
            "     |                               ^~~~~\n"
            "  did you mean 'north'?\n");
  EXPECT_EQ(problems_with("- {date: 2026-08-20, pasture: north, event: frost}\n"
                          "- {date: 2026-08-20, pasture: north, event: rain}\n"
                          "- {date: 2026-08-20, pasture: north, event: frost}\n"),
            "events.yaml:3:45: frost of north on 2026-08-20 is already on line 1\n"
            "   3 | - {date: 2026-08-20, pasture: north, event: frost}\n"
            "     |                                             ^~~~~\n"
            "  keep one of the two lines\n");
}

TEST(Events, ABagIsReceivedByTheLaboratoryAfterItWasSent) {
  const BookFolder folder;
  folder.write("samples/2026/north.yaml",
               "- bag: a\n  plucked: 2026-06-12\n  sent: {date: 2026-06-15, lab: county}\n"
               "  received: 2026-06-14\n");
  const Reading reading = read_whole_book(folder.path());
  ASSERT_EQ(reading.problems.size(), 1U);
  EXPECT_EQ(reading.problems[0].what, "received 2026-06-14 is before it was sent, 2026-06-15");
  EXPECT_EQ(reading.problems[0].place->line, 4);
}

}  // namespace
}  // namespace pluckbook
