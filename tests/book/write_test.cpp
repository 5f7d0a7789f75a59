// What is written to a book: where it stands, what is refused, and two shells at one book, where
// what one wrote since the other read it is never lost or doubled.
#include "book/write.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

LabResult result_of(double protein) {
  LabResult result;
  result.received = *parse_date("2026-08-20");
  result.values = {{"cp", protein}};
  return result;
}

Bag bag_in(const char* pasture) {
  Bag bag;
  bag.id = "by-hand";
  bag.pasture = pasture;
  bag.plucked = *parse_date("2026-08-01");
  return bag;
}

TEST(TwoShells, TheSecondResultOfABagIsNotAddedUnseen) {
  const BookFolder folder;
  const Book before = *read_book(folder.path());
  ASSERT_TRUE(add_result(before, "26-north-02", result_of(6.4)));
  const Result<Written> second = add_result(before, "26-north-02", result_of(7.1));
  ASSERT_FALSE(second);
  EXPECT_EQ(to_text(second.problems()[0]),
            "pluckbook: bag 26-north-02 was changed by someone else meanwhile\n"
            "  nothing was written; run the command again\n");
  EXPECT_TRUE(read_whole_book(folder.path()).problems.empty());
}

TEST(TwoShells, OneIdIsGivenOnceAcrossPastures) {
  const BookFolder folder;
  const Book before = *read_book(folder.path());
  ASSERT_TRUE(add_bag(before, bag_in("north")));
  const Result<Written> second = add_bag(before, bag_in("meadow"));
  ASSERT_FALSE(second);
  EXPECT_EQ(second.problems()[0].what, "bag 'by-hand' is already at samples/2026/north.yaml:11");
  EXPECT_TRUE(read_whole_book(folder.path()).problems.empty());
}

TEST(TwoShells, WhatAnEditorAddedSinceIsKept) {
  const BookFolder folder;
  const Book before = *read_book(folder.path());
  const std::string by_hand = "# walked with the vet\n" + folder.text("samples/2026/north.yaml");
  folder.write("samples/2026/north.yaml", by_hand);
  ASSERT_TRUE(add_result(before, "26-north-02", result_of(6.4)));
  const std::string after = folder.text("samples/2026/north.yaml");
  EXPECT_TRUE(after.starts_with(by_hand)) << after;
  EXPECT_NE(after.find("cp: 6.4"), std::string::npos);
}

TEST(Write, ABookWhoseFolderIsGoneIsSaidToBeGone) {
  Book book;
  {
    const BookFolder folder;
    book = read_whole_book(folder.path()).book;
  }
  const Result<Written> written = add_bag(book, bag_in("meadow"));
  ASSERT_FALSE(written);
  EXPECT_EQ(to_text(written.problems()[0]), "pluckbook: cannot find " + book.folder +
                                                "\n"
                                                "  nothing was changed\n");
}

TEST(LeftoverDrafts, AreNamedByCheckAndByTheNextChangeAndThenGone) {
  const BookFolder folder;
  const std::string draft = "samples/2026/.0123456789abcdef.new";
  folder.write(draft, "- bag: half-a-b");
  const Reading reading = read_whole_book(folder.path());
  EXPECT_FALSE(reading.has_errors());
  EXPECT_EQ(reading.book.bags.size(), 2U) << "it is no record";
  ASSERT_EQ(reading.problems.size(), 1U);
  EXPECT_EQ(to_text(reading.problems[0]),
            draft +
                ": warning: a change was cut short here, or is being made just now\n"
                "  it is no part of the book; the next change removes it\n");

  const Result<Written> written = add_bag(reading.book, bag_in("meadow"));
  ASSERT_TRUE(written);
  ASSERT_EQ(written->warnings.size(), 1U);
  EXPECT_EQ(to_text(written->warnings[0]),
            "pluckbook: warning: " + draft +
                " was left by a change cut short: removed\n"
                "  that change is not in the book unless its command said so\n");
  EXPECT_FALSE(std::filesystem::exists(folder.path() / draft));
  EXPECT_TRUE(read_whole_book(folder.path()).problems.empty());
}

TEST(LeftoverDrafts, AreGoneAfterSeveralFilesAreWrittenToo) {
  const BookFolder folder;
  const std::string draft = ".0123456789abcdef.new";
  folder.write(draft, "half");
  const Result<Written> written =
      write_texts(*read_book(folder.path()), {{"events.yaml", std::nullopt, "# none\n"}});
  ASSERT_TRUE(written);
  EXPECT_EQ(written->file, "events.yaml");
  ASSERT_EQ(written->warnings.size(), 1U);
  EXPECT_FALSE(std::filesystem::exists(folder.path() / draft));
}

// ---- several files -----------------------------------------------------------------------------

TEST(SeveralFiles, AreWrittenTogetherOrNotAtAll) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  const std::string moves = folder.text("grazing.yaml"), feeds = folder.text("feeds.yaml");
  const std::vector<TextChange> changes = {{"grazing.yaml", moves, "# moves\n" + moves},
                                           {"feeds.yaml", feeds, "# feeds\n" + feeds},
                                           {"events.yaml", std::nullopt, "# events\n"}};
  ASSERT_TRUE(write_texts(book, changes));
  EXPECT_EQ(folder.text("grazing.yaml"), "# moves\n" + moves);
  EXPECT_EQ(folder.text("feeds.yaml"), "# feeds\n" + feeds);
  EXPECT_EQ(folder.text("events.yaml"), "# events\n");

  const Result<Written> again = write_texts(book, changes);
  ASSERT_FALSE(again) << "they no longer hold what was read";
  EXPECT_EQ(again.problems()[0].what, "grazing.yaml was changed by someone else meanwhile");
  EXPECT_EQ(folder.text("grazing.yaml"), "# moves\n" + moves);
}

TEST(SeveralFiles, ABookThatIsGoneIsSaid) {
  Book book;
  book.folder = "/no/such/folder";
  EXPECT_EQ(write_texts(book, {}).problems()[0].what, "cannot find /no/such/folder");
  EXPECT_EQ(add_record(book, "grazing.yaml", {}).problems()[0].fault, Fault::system);
}

// ---- records of other files --------------------------------------------------------------------

TEST(Records, AMoveAndAQuoteStandWhereTheyAreSaidTo) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  const Result<Written> move = add_record(
      book, "grazing.yaml", {{"date", "2026-09-01"}, {"herd", "cows"}, {"pasture", "meadow"}});
  ASSERT_TRUE(move);
  EXPECT_EQ(move->file + ":" + std::to_string(move->line), "grazing.yaml:2");
  const Result<Written> quote =
      add_quote(book, "cube", {{"price", "360 USD/ton"}, {"date", "2026-09-01"}});
  ASSERT_TRUE(quote);
  EXPECT_EQ(quote->file, "feeds.yaml");
  const Book now = *read_book(folder.path());
  ASSERT_EQ(now.moves.size(), 2U);
  EXPECT_EQ(now.moves[1].origin.line, move->line);
  ASSERT_EQ(now.feeds[0].quotes.size(), 2U);
  EXPECT_EQ(now.feeds[0].quotes[1].amount, 360);
}

TEST(Records, ABagAResultAndAMarkNameWhatIsThere) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  EXPECT_EQ(add_bag(book, bag_in("nort")).problems()[0].remedy, "did you mean 'north'?");
  EXPECT_EQ(add_result(book, "26-north-09", result_of(7)).problems()[0].what,
            "there is no bag '26-north-09'");
  const Mark lost = {Mark::What::lost, Date(2026, 9, 1), ""};
  EXPECT_EQ(mark_bag(book, "x", lost).problems()[0].remedy, "pluckbook bags  lists them");
}

// ---- a new book --------------------------------------------------------------------------------

TEST(NewBook, HoldsItsFirstRecordsAndIsSound) {
  const BookFolder folder;
  const auto fresh = folder.path() / "new/book";
  const BookFacts facts = {"Fresh Start",
                           UnitSystem::us,
                           "USD",
                           {{"id", "flat"}, {"name", "Flat"}, {"forage", "northern mixed-grass"}},
                           {{"id", "herd"},
                            {"head", "10"},
                            {"class", "mature cow"},
                            {"weight", "1200 lb"},
                            {"peak_milk", "20 lb/day"},
                            {"calving", "2026-03-15"}},
                           {{"date", "2026-05-01"}, {"herd", "herd"}, {"pasture", "flat"}}};
  ASSERT_TRUE(start_book(fresh, facts, {{".schema/herds.json", "{}\n"}}));
  const Reading reading = read_whole_book(fresh);
  EXPECT_TRUE(reading.problems.empty());
  EXPECT_EQ(reading.book.pastures.at(0).name, "Flat");
  EXPECT_EQ(reading.book.herds.at(0).head, 10);
  EXPECT_EQ(reading.book.moves.at(0).pasture, "flat");
  EXPECT_EQ(start_book(fresh, facts, {}).problems()[0].what.find("holds a book already"),
            fresh.string().size() + 1);
}

TEST(NewBook, TakesAnEmptyFolderAndNoOther) {
  const BookFolder folder;
  std::filesystem::create_directories(folder.path() / "empty/.git");
  EXPECT_TRUE(start_folder(folder.path() / "empty", {{"book.yaml", "pluckbook: 1\n"}}))
      << "hidden files may be there";
  folder.write("full/notes.txt", "mine\n");
  EXPECT_TRUE(
      start_folder(folder.path() / "full", {}).problems()[0].what.ends_with("is not empty"));
  EXPECT_TRUE(start_folder(folder.path() / "full/notes.txt", {})
                  .problems()[0]
                  .what.ends_with("is no folder"));
}

TEST(ProposedId, IsTheNextOfThePastureAndYear) {
  Book book;
  EXPECT_EQ(proposed_bag_id(book, "north", Date(2026, 6, 1)), "26-north-01");
  for (const char* id : {"26-north-01", "26-NORTH-09", "26-north-x", "26-north-", "25-north-40",
                         "26-meadow-30", "26-north-1234567"}) {
    Bag bag;
    bag.id = id;
    book.bags.push_back(bag);
  }
  EXPECT_EQ(proposed_bag_id(book, "north", Date(2026, 6, 1)), "26-north-10");
  EXPECT_EQ(proposed_bag_id(book, "meadow", Date(2026, 6, 1)), "26-meadow-31");
  EXPECT_EQ(proposed_bag_id(book, "south", Date(2009, 6, 1)), "09-south-01");
  const std::string long_name(40, 'p');
  EXPECT_LE(proposed_bag_id(book, long_name, Date(2026, 6, 1)).size(), 40U);
}

}  // namespace
}  // namespace pluckbook
