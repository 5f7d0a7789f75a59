// Which files of bags are opened, and that many of them are read alike however many hands there
// are.
#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

constexpr const char* broken = "- bag: 26-meadow-01\n  plucked: \"2026-07\n";

TEST(ReadBags, OpensNoFileOfAPastureThatIsNotWanted) {
  const BookFolder folder;
  folder.write("samples/2026/meadow.yaml", broken);
  EXPECT_FALSE(read_book(folder.path()));
  const Result<Book> book = read_book(folder.path(), [](const Book&) {
    return FirstYears{{"north", 0}};
  });
  ASSERT_TRUE(book);
  EXPECT_EQ(book->bags.size(), 2U);
}

TEST(ReadBags, TellsTheYearsOfAllPasturesBeforeAnyBagIsRead) {
  const BookFolder folder;
  folder.write("samples/2025/meadow.yaml", "# none\n");
  folder.write("samples/2026/meadow.yaml", broken);
  const auto wanted = [](const Book& book) {
    EXPECT_TRUE(book.bags.empty());
    EXPECT_EQ(book.pastures[0].sampled_years, std::vector<int>{2026});
    EXPECT_EQ(book.pastures[1].sampled_years, (std::vector<int>{2025, 2026}));
    return FirstYears();
  };
  const Result<Book> book = read_book(folder.path(), wanted);
  ASSERT_TRUE(book);
  EXPECT_TRUE(book->bags.empty());
}

TEST(ReadBags, OpensNoFileBeforeTheFirstYearThatIsWanted) {
  const BookFolder folder;
  folder.write("samples/2025/north.yaml", broken);
  const auto from = [](int year) {
    return [year](const Book&) { return FirstYears{{"north", year}}; };
  };
  EXPECT_FALSE(read_book(folder.path(), from(2025)));
  EXPECT_TRUE(read_book(folder.path(), from(2026)));
}

TEST(ReadBags, KeepsTheOrderOfManyFilesAndNamesEveryIdUsedTwice) {
  const BookFolder folder;
  for (int year = 1990; year < 2026; ++year) {
    const std::string id = year % 12 == 0 ? "again" : std::to_string(year) + "-meadow";
    const std::string day = std::to_string(year) + "-07-01";
    folder.write("samples/" + std::to_string(year) + "/meadow.yaml",
                 "- bag: " + id + "\n  plucked: " + day + "\n");
  }
  const Reading reading = read_whole_book(folder.path());
  ASSERT_EQ(reading.book.bags.size(), 38U);
  for (std::size_t i = 1; i < reading.book.bags.size(); ++i)
    EXPECT_LE(reading.book.bags[i - 1].plucked, reading.book.bags[i].plucked);
  ASSERT_EQ(reading.problems.size(), 2U);  // 1992 is the first, 2004 and 2016 have it again
  EXPECT_EQ(reading.problems[0].what, "bag 'again' is already at samples/1992/meadow.yaml:1");
  EXPECT_EQ(reading.problems[0].place->file, "samples/2004/meadow.yaml");
  EXPECT_EQ(reading.problems[0].place->column, 8);
  EXPECT_EQ(reading.problems[1].place->file, "samples/2016/meadow.yaml");
}

}  // namespace
}  // namespace pluckbook
