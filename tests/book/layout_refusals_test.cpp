// What a laboratory's CSV may lack, and what is said of it then.
#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/import.h"
#include "book/layout.h"
#include "book/read.h"

namespace pluckbook {
namespace {

template <class T>
std::string refusal(const Result<T>& result) {
  return result ? "taken" : to_text(result.problems()[0]);
}

Result<LabTable> read_table(const std::string& text) {
  return lab_table("lab.csv", text, csv_delimiter(text));
}

Result<Layout> proposed(const std::string& text) {
  return proposed_layout(*read_table(text), {"county", "", {}, {}, {}});
}

TEST(LabTable, NeedsARowBelowHeadersThatDiffer) {
  EXPECT_EQ(refusal(read_table("bag,cp\n")),
            "lab.csv: no row stands below the headers\n"
            "  give the laboratory's CSV as it came\n");
  EXPECT_EQ(refusal(read_table("bag,cp,cp\na,7,8\n")),
            "lab.csv:1:8: two columns are headed 'cp'\n"
            "   1 | bag,cp,cp\n"
            "     |        ^~\n"
            "  rename one, so that it is plain which is meant\n");
  EXPECT_EQ(refusal(read_table("bag,cp,,\na,7,,\n")), "taken") << "columns without a header may be";
  const Result<LabTable> two = read_table("bag,cp\na,7\nb,8\n");
  ASSERT_TRUE(two);
  EXPECT_EQ(two->headers.cells, (std::vector<std::string>{"bag", "cp"}));
  ASSERT_EQ(two->rows.size(), 2U);
  EXPECT_EQ(two->rows[1].cells[0], "b");
}

TEST(Layout, IsNotProposedWithoutBagsOrFigures) {
  EXPECT_EQ(refusal(proposed("tag no,cp\na,7\n")),
            "lab.csv:1:1: no column is headed as that of the bags\n"
            "   1 | tag no,cp\n"
            "     | ^\n"
            "  head it 'bag', or write the layout into layouts.yaml\n");
  EXPECT_EQ(refusal(proposed("bag,colour\na,brown\n")),
            "lab.csv:1:1: no column is headed by a figure this program knows\n"
            "   1 | bag,colour\n"
            "     | ^\n"
            "  write the layout into layouts.yaml, or look at the delimiter\n");
}

TEST(Layout, AsksForTheOrderOfDatesThatCanBeReadInTwoWays) {
  EXPECT_EQ(refusal(proposed("bag,date reported,cp\na,2026-09-14,7\nb,9/4/2026,7\n")),
            "pluckbook: dates such as '9/4/2026' can be read in two ways\n"
            "  say  --dates month-day-year  or  --dates day-month-year\n");
  const Result<Layout> iso = proposed("bag,date reported,cp\na,2026-09-14,7\n");
  ASSERT_TRUE(iso);
  EXPECT_EQ(iso->dates, DateOrder::year_month_day);
  EXPECT_EQ(iso->reported, "date reported");
}

TEST(Layout, IsProposedThoughARowIsTorn) {
  const Result<Layout> layout = proposed("bag,cp,date reported\na,7,2026-09-14\nb\nc,8\n");
  ASSERT_TRUE(layout);
  EXPECT_EQ(layout->columns.size(), 1U);
}

TEST(Layout, FitsATableThatHasItsColumns) {
  const Result<Layout> layout = proposed("bag,date reported,cp\na,2026-09-14,7\n");
  ASSERT_TRUE(layout);
  EXPECT_TRUE(fits(*layout, *read_table("cp,extra,date reported,bag\n7,x,2026-09-14,a\n")));
  EXPECT_EQ(refusal(fits(*layout, *read_table("bag,date reportd,cp\na,2026-09-14,7\n"))),
            "lab.csv:1:1: layout 'county' asks for a column headed 'date reported'\n"
            "   1 | bag,date reportd,cp\n"
            "     | ^\n"
            "  did you mean 'date reportd'?\n");
  Book book;
  book.layouts.push_back(*layout);
  EXPECT_EQ(layout_for(book, *read_table("bag,cp\na,7\n")), nullptr);
  EXPECT_EQ(layout_for(book, *read_table("bag;date reported;cp\na;2026-09-14;7\n")), nullptr);
  EXPECT_EQ(layout_for(book, *read_table("bag,date reported,cp\na,2026-09-14,7\n")),
            &book.layouts[0]);
  EXPECT_EQ(uses_of(*layout, *read_table("bag,date reported,cp\na,2026-09-14,7\n"))[1].second,
            "date of the result, year-month-day");
}

TEST(Layout, WordsAreThoseOfTheOptions) {
  EXPECT_EQ(in_words(DateOrder::year_month_day), "year-month-day");
  EXPECT_EQ(in_words(DateOrder::month_day_year), "month-day-year");
  EXPECT_EQ(in_words(DateOrder::day_month_year), "day-month-year");
  EXPECT_EQ(in_words(DecimalMark::point), "point");
  EXPECT_EQ(in_words(DecimalMark::comma), "comma");
  EXPECT_EQ(in_words(Basis::dry_matter), "dry-matter");
  EXPECT_EQ(in_words(Basis::as_received), "as-received");
  EXPECT_EQ(delimiter_word(',') + delimiter_word(';') + delimiter_word('\t') + delimiter_word('|'),
            "commasemicolontabbar");
}

TEST(Layout, DatesAreReadInTheirOrderOnly) {
  EXPECT_EQ(date_in(DateOrder::year_month_day, "2026-9-4"), Date(2026, 9, 4));
  EXPECT_EQ(date_in(DateOrder::month_day_year, "9/4/2026"), Date(2026, 9, 4));
  EXPECT_EQ(date_in(DateOrder::day_month_year, "4.9.26"), Date(2026, 9, 4));
  for (const char* none : {"", "2026-09", "2026-09-04-01", "4 Sep 2026", "13/13/2026", "9/4/02026",
                           "31/2/2026", "26-9-4"}) {
    for (const DateOrder order :
         {DateOrder::year_month_day, DateOrder::month_day_year, DateOrder::day_month_year}) {
      const bool short_year = std::string(none) == "26-9-4" && order != DateOrder::year_month_day;
      EXPECT_TRUE(short_year || !date_in(order, none)) << none;
    }
  }
}

TEST(Layout, AnIdIsKeptOnce) {
  const Result<Layout> layout = proposed("bag,cp\na,7\n");
  ASSERT_TRUE(layout);
  const Result<Spliced> first = with_layout({}, "", *layout);
  ASSERT_TRUE(first);
  Book book;
  book.layouts.push_back(*layout);
  const Result<Spliced> second = with_layout(book, first->text, *layout);
  ASSERT_FALSE(second);
  EXPECT_EQ(to_text(second.problems()[0]),
            "pluckbook: layout 'county' is already at layouts.yaml:1\n"
            "  give one of them another id\n"
            "  nothing was written\n");
  EXPECT_EQ(second.problems()[0].fault, Fault::usage);
}

TEST(Import, ARowIsRefusedForItsBagItsDateItsWidthAndAFigureGivenTwice) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  const std::string text =
      "bag,date reported,cp,protein\n26-north-03,2026-09-14,7,\n26-north-02,soon,7,\n"
      "26-north-02,2026-09-14,7\n26-north-02,2026-09-14,7,8\n,2026-09-14,7,\n"
      "no-such-tag-at-all,2026-09-14,7,\n26-north-02,2026-09-14,,\n26-north-02,2026-09-15,7,\n";
  Layout layout;
  layout.bag = "bag";
  layout.reported = "date reported";
  layout.columns = {{"cp", "cp", ""}, {"protein", "protein", ""}};
  const Import import = import_rows(book, layout, *read_table(text), Date(2026, 9, 20));
  const std::vector<std::string> reasons = {
      "there is no bag '26-north-03'; did you mean '26-north-01'?",
      "date 'soon' is not year-month-day; write it so",
      "the row has 3 cells, the headers 4; is a delimiter missing?",
      "cp stands in two columns; leave one of them empty",
      "the row names no bag; write its tag, or take the row out",
      "there is no bag 'no-such-tag-at-all'",
      "the row holds no figure; take it out, or look at the layout"};
  ASSERT_EQ(import.refused.size(), reasons.size());
  for (std::size_t i = 0; i < reasons.size(); ++i) {
    EXPECT_EQ(import.refused[i].what, reasons[i]);
    EXPECT_EQ(import.refused[i].line, static_cast<int>(i) + 2);
  }
  ASSERT_EQ(import.taken.size(), 1U);
  EXPECT_EQ(import.taken[0].what, "2026-09-15, cp 7") << "its own date, not that of the day";
}

}  // namespace
}  // namespace pluckbook
