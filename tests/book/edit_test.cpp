#include "book/edit.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"
#include "book/spliced_text.h"

namespace pluckbook {
namespace {

Book book_with_lab() {
  Book book;
  book.labs.push_back({"county", "County Forage Lab", 10});
  return book;
}

Date day(const char* text) {
  return *parse_date(text);
}

Bag new_bag() {
  Bag bag;
  bag.id = "26-north-03";
  bag.plucked = day("2026-08-01");
  bag.stops = 20;
  bag.fill = 70;
  return bag;
}

LabResult new_result() {
  LabResult result;
  result.received = day("2026-08-20");
  result.values = {{"cp", 6.4}, {"dm", 91.5}, {"adf", 41.8}};
  return result;
}

const std::string result_line =
    "{received: 2026-08-20, basis: dry matter, dm: 91.5, cp: 6.4, adf: 41.8}";

std::string with_line_breaks(std::string text, const std::string& line_break) {
  for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos;) {
    text.replace(at, 1, line_break);
    at += line_break.size();
  }
  return text;
}

struct Edit {
  std::string name, before, after;
};

const std::string bag_text =
    "- bag: 26-north-03\n"
    "  plucked: 2026-08-01\n"
    "  method: hand-plucked\n"
    "  stops: 20\n"
    "  fill: 70\n";

TEST(Edit, ABagGoesToTheEndInTheLayoutOfTheFile) {
  const std::vector<Edit> edits = {
      {"a new file", "", bag_text},
      {"only a comment", "# North, 2026\n", "# North, 2026\n\n" + bag_text},
      {"after a bag", "- bag: a   # mine\n  plucked: 2026-06-12\n",
       "- bag: a   # mine\n  plucked: 2026-06-12\n\n" + bag_text},
      {"bags without a blank line between",
       "- {bag: a, plucked: 2026-06-12}\n- {bag: b, plucked: 2026-06-13}\n",
       "- {bag: a, plucked: 2026-06-12}\n- {bag: b, plucked: 2026-06-13}\n" + bag_text},
      {"no line break at the end", "- bag: a\n  plucked: 2026-06-12",
       "- bag: a\n  plucked: 2026-06-12\n\n" + bag_text},
      {"a comment at the end", "- bag: a\n  plucked: 2026-06-12\n# to be weighed\n\n",
       "- bag: a\n  plucked: 2026-06-12\n# to be weighed\n\n" + bag_text},
      {"indented items", "  - bag: a\n    plucked: 2026-06-12\n",
       "  - bag: a\n    plucked: 2026-06-12\n\n"
       "  - bag: 26-north-03\n    plucked: 2026-08-01\n    method: hand-plucked\n"
       "    stops: 20\n    fill: 70\n"},
  };
  for (const Edit& edit : edits) {
    SCOPED_TRACE(edit.name);
    EXPECT_EQ(text_of(with_bag(book_with_lab(), "f.yaml", edit.before, new_bag())), edit.after);
    // The same file with the line breaks of another system.
    EXPECT_EQ(text_of(with_bag(book_with_lab(), "f.yaml", with_line_breaks(edit.before, "\r\n"),
                               new_bag())),
              edit.before.empty()                           ? edit.after
              : edit.before.find('\n') == std::string::npos ? edit.after
                                                            : with_line_breaks(edit.after, "\r\n"));
  }
}

TEST(Edit, AMarkStandsWhereAPersonWouldPutIt) {
  const std::vector<Edit> edits = {
      {"before the results and their comment",
       "- bag: a   # first\n"
       "  plucked: 2026-06-12   # windy\n"
       "  # phoned the lab\n"
       "  results:\n"
       "    - {received: 2026-06-25, basis: dry matter, cp: 8}\n"
       "\n"
       "# the next walk\n"
       "- bag: b\n"
       "  plucked: 2026-07-01\n",
       "- bag: a   # first\n"
       "  plucked: 2026-06-12   # windy\n"
       "  sent: {date: 2026-06-14, lab: county}\n"
       "  # phoned the lab\n"
       "  results:\n"
       "    - {received: 2026-06-25, basis: dry matter, cp: 8}\n"
       "\n"
       "# the next walk\n"
       "- bag: b\n"
       "  plucked: 2026-07-01\n"},
      {"before the comment of the next bag",
       "- bag: a\n  plucked: 2026-06-12\n  dried: 2026-06-13\n\n# next\n- bag: b\n  plucked: "
       "2026-07-01\n",
       "- bag: a\n  plucked: 2026-06-12\n  dried: 2026-06-13\n"
       "  sent: {date: 2026-06-14, lab: county}\n\n# next\n- bag: b\n  plucked: 2026-07-01\n"},
      {"in brackets", "- {bag: a, plucked: 2026-06-12}   # small\n",
       "- {bag: a, plucked: 2026-06-12, sent: {date: 2026-06-14, lab: county}}   # small\n"},
      {"in brackets over lines",
       "- {bag: a, note: \"a } b\",   # } here\n   plucked: 2026-06-12 }\n",
       "- {bag: a, note: \"a } b\",   # } here\n   plucked: 2026-06-12, "
       "sent: {date: 2026-06-14, lab: county} }\n"},
      {"at the end without a line break", "- bag: a\n  plucked: 2026-06-12",
       "- bag: a\n  plucked: 2026-06-12\n  sent: {date: 2026-06-14, lab: county}\n"},
      {"deeper than usual", "-   bag: a\n    plucked: 2026-06-12\n",
       "-   bag: a\n    plucked: 2026-06-12\n    sent: {date: 2026-06-14, lab: county}\n"},
      {"with accents before it", "# Pré\n- bag: a\n  note: \"été\"\n  plucked: 2026-06-12\n",
       "# Pré\n- bag: a\n  note: \"été\"\n  plucked: 2026-06-12\n"
       "  sent: {date: 2026-06-14, lab: county}\n"},
  };
  const Mark sent = {Mark::What::sent, day("2026-06-14"), "county"};
  for (const Edit& edit : edits) {
    SCOPED_TRACE(edit.name);
    EXPECT_EQ(text_of(with_mark(book_with_lab(), "f.yaml", edit.before, "a", sent)), edit.after);
    if (edit.before.back() == '\n') {
      EXPECT_EQ(text_of(with_mark(book_with_lab(), "f.yaml", with_line_breaks(edit.before, "\r\n"),
                                  "a", sent)),
                with_line_breaks(edit.after, "\r\n"));
    }
  }
}

TEST(Edit, AResultIsAddedBehindTheOthersAndReplacesNone) {
  const std::string bag = "- bag: a\n  plucked: 2026-06-12\n";
  const std::string next = "\n# next\n- bag: b\n  plucked: 2026-07-01\n";
  const std::string first = "{received: 2026-06-25, basis: dry matter, cp: 8}";
  const std::vector<Edit> edits = {
      {"the first", bag + next, bag + "  results:\n    - " + result_line + "\n" + next},
      {"behind another", bag + "  results:   # two pages\n  - " + first + "   # mine\n" + next,
       bag + "  results:   # two pages\n  - " + first + "   # mine\n  - " + result_line + "\n" +
           next},
      {"behind one in lines",
       bag + "  results:\n    - received: 2026-06-25\n      basis: dry matter\n      cp: 8\n" +
           next,
       bag +
           "  results:\n    - received: 2026-06-25\n      basis: dry matter\n      cp: 8\n    - " +
           result_line + "\n" + next},
      {"in brackets", bag + "  results: [" + first + "]\n" + next,
       bag + "  results: [" + first + ", " + result_line + "]\n" + next},
      {"in empty brackets", bag + "  results: []\n" + next,
       bag + "  results: [" + result_line + "]\n" + next},
      {"a key without a value", bag + "  results:\n" + next, ""},
      {"a bag in brackets", "- {bag: a, plucked: 2026-06-12}\n" + next,
       "- {bag: a, plucked: 2026-06-12, results: [" + result_line + "]}\n" + next},
      {"keys behind the results",
       "- bag: a\n  results:\n    - " + first + "\n  plucked: 2026-06-12\n",
       "- bag: a\n  results:\n    - " + first + "\n    - " + result_line +
           "\n  plucked: 2026-06-12\n"},
  };
  for (const Edit& edit : edits) {
    SCOPED_TRACE(edit.name);
    const std::string after =
        edit.after.empty() ? bag + "  results:\n    - " + result_line + "\n" + next : edit.after;
    EXPECT_EQ(text_of(with_result(book_with_lab(), "f.yaml", edit.before, "a", new_result())),
              after);
  }
}

TEST(Edit, WhatTheReaderWouldRefuseIsNotWritten) {
  LabResult result = new_result();
  result.values["cp"] = 84;
  EXPECT_EQ(text_of(with_result(book_with_lab(), "f.yaml", "- {bag: a, plucked: 2026-06-12}\n", "a",
                                result)),
            "pluckbook: crude protein 84 % is outside 0.5 to 45 % of dry matter\n"
            "  if the laboratory printed 8.4, write 8.4; if it printed g/kg, write \"84 g/kg\"\n"
            "  nothing was written\n");
  const Mark early = {Mark::What::dried, day("2026-06-01"), ""};
  EXPECT_EQ(text_of(with_mark(book_with_lab(), "f.yaml", "- {bag: a, plucked: 2026-06-12}\n", "a",
                              early)),
            "pluckbook: dried 2026-06-01 is before it was plucked, 2026-06-12\n"
            "  one of the two dates is wrong\n"
            "  nothing was written\n");
}

TEST(Edit, AMarkIsMadeOnce) {
  const Mark dried = {Mark::What::dried, day("2026-06-14"), ""};
  EXPECT_EQ(
      text_of(with_mark(book_with_lab(), "f.yaml",
                        "- bag: a\n  plucked: 2026-06-12\n  dried: 2026-06-13\n", "a", dried)),
      "f.yaml:3:10: bag a is already marked dried\n"
      "   3 |   dried: 2026-06-13\n"
      "     |          ^~~~~~~~~~\n"
      "  nothing was changed; correct the date by hand if it is wrong\n");
}

TEST(Edit, ALayoutThatCannotBeAddedToIsLeftToTheHand) {
  EXPECT_EQ(
      text_of(with_bag(book_with_lab(), "f.yaml", "[{bag: a, plucked: 2026-06-12}]\n", new_bag())),
      "f.yaml:1:1: what stands here cannot be added to without rewriting it\n"
      "   1 | [{bag: a, plucked: 2026-06-12}]\n"
      "     | ^\n"
      "  nothing was changed; add by hand:  - bag: 26-north-03\n");
}

TEST(Edit, TextIsQuotedOnlyWhereItMustBe) {
  EXPECT_EQ(as_scalar("County Forage Lab"), "County Forage Lab");
  EXPECT_EQ(as_scalar("a: b # c"), "\"a: b # c\"");
  EXPECT_EQ(as_scalar("say \"so\" \\"), "\"say \\\"so\\\" \\\\\"");
  EXPECT_EQ(as_scalar("- x"), "\"- x\"");
  EXPECT_EQ(as_scalar("null"), "\"null\"");
  EXPECT_EQ(as_scalar("été"), "\"été\"");
}

// ---- through the disk --------------------------------------------------------------------------

TEST(Write, ANewBookIsOneThatCheckAccepts) {
  const BookFolder beside;
  const std::filesystem::path folder = beside.path() / "new" / "book";
  const Result<Written> written =
      start_book(folder, {"Fork: \"upper\"", UnitSystem::metric, "ZAR"});
  ASSERT_TRUE(written) << to_text(written.problems()[0]);
  EXPECT_EQ(written->file, "book.yaml");
  const Reading reading = read_whole_book(folder);
  EXPECT_TRUE(reading.problems.empty()) << to_text(reading.problems[0]);
  EXPECT_EQ(reading.book.name, "Fork: \"upper\"");
  EXPECT_EQ(reading.book.units, UnitSystem::metric);
  EXPECT_EQ(reading.book.currency, "ZAR");
  EXPECT_FALSE(start_book(folder, {"Again", UnitSystem::us, "USD"}));
  EXPECT_EQ(start_book(beside.path() / "samples", {"X", UnitSystem::us, "USD"}).problems()[0].what,
            (beside.path() / "samples").string() + " is not empty");
  EXPECT_FALSE(start_book(beside.path() / "other", {"X", UnitSystem::us, "dollars"}));
  EXPECT_FALSE(std::filesystem::exists(beside.path() / "other"));
}

TEST(Write, ABagFromWalkToResult) {
  const BookFolder folder;
  const auto book = [&] { return *read_book(folder.path()); };
  Bag bag = new_bag();
  bag.pasture = "meadow";
  bag.id = proposed_bag_id(book(), "meadow", bag.plucked);
  EXPECT_EQ(bag.id, "26-meadow-01");
  Result<Written> written = add_bag(book(), bag);
  ASSERT_TRUE(written) << to_text(written.problems()[0]);
  EXPECT_EQ(written->file, "samples/2026/meadow.yaml");
  EXPECT_EQ(written->line, 3);
  ASSERT_TRUE(mark_bag(book(), bag.id, {Mark::What::dried, day("2026-08-02"), ""}));
  ASSERT_TRUE(mark_bag(book(), bag.id, {Mark::What::sent, day("2026-08-03"), "county"}));
  written = add_result(book(), bag.id, new_result());
  ASSERT_TRUE(written) << to_text(written.problems()[0]);
  EXPECT_EQ(folder.text("samples/2026/meadow.yaml"),
            "# meadow, 2026\n"
            "\n"
            "- bag: 26-meadow-01\n"
            "  plucked: 2026-08-01\n"
            "  method: hand-plucked\n"
            "  stops: 20\n"
            "  fill: 70\n"
            "  dried: 2026-08-02\n"
            "  sent: {date: 2026-08-03, lab: county}\n"
            "  results:\n"
            "    - " +
                result_line + "\n");
  EXPECT_EQ(proposed_bag_id(book(), "meadow", bag.plucked), "26-meadow-02");
  EXPECT_EQ(proposed_bag_id(book(), "north", bag.plucked), "26-north-03");
  EXPECT_TRUE(read_whole_book(folder.path()).problems.empty());
}

TEST(Write, WhatIsUnknownOrThereAlreadyIsRefused) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  const std::string before = folder.text("samples/2026/north.yaml");
  Bag bag = new_bag();
  bag.pasture = "nroth";
  EXPECT_EQ(to_text(add_bag(book, bag).problems()[0]),
            "pluckbook: there is no pasture 'nroth'\n  did you mean 'north'?\n");
  bag.pasture = "north";
  bag.id = "26-NORTH-01";
  EXPECT_EQ(add_bag(book, bag).problems()[0].what,
            "bag '26-north-01' is already at samples/2026/north.yaml:2");
  bag.id = "../x";
  EXPECT_EQ(add_bag(book, bag).problems()[0].what, "'../x' cannot be an id");
  EXPECT_EQ(mark_bag(book, "26-north-11", {}).problems()[0].what, "there is no bag '26-north-11'");
  EXPECT_EQ(folder.text("samples/2026/north.yaml"), before);
}

}  // namespace
}  // namespace pluckbook
