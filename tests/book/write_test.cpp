// Two shells at one book: what one wrote since the other read it is never lost or doubled.
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

}  // namespace
}  // namespace pluckbook
