#include "book/layout.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/import.h"
#include "book/read.h"

namespace pluckbook {
namespace {

std::string uses_text(const Result<Layout>& layout, const LabTable& table) {
  if (!layout) return to_text(layout.problems()[0]);
  std::string text;
  for (const auto& [header, use] : uses_of(*layout, table)) text += header + " = " + use + "\n";
  return text;
}

LabTable table_of(const std::string& text) {
  return *lab_table("lab.csv", text, csv_delimiter(text));
}

TEST(Layout, HeadersAreHeardWithTheirUnitsAndBasis) {
  const LabTable table = table_of(
      "Sample No.|% CP (DM)|Protein, Crude [as fed]|Dry Matter, %|ADF g/kg|Fat % DM "
      "basis|Colour|p\n"
      "a|8|7|91|380|2|brown|0.2\n");
  EXPECT_EQ(uses_text(proposed_layout(table, {"x", "", {}, {}, {}}), table),
            "Sample No. = bag\n% CP (DM) = cp\nProtein, Crude [as fed] = not used\n"
            "Dry Matter, % = dry_matter\nADF g/kg = adf, g/kg\nFat % DM basis = fat\n"
            "Colour = not used\np = p\n");
}

TEST(Layout, TheBasisIsAsReceivedOnlyWhereNoColumnIsOnDryMatter) {
  const auto basis = [](const std::string& headers) {
    return proposed_layout(table_of("bag," + headers + "\na,1,2\n"), {"x", "", {}, {}, {}})->basis;
  };
  EXPECT_EQ(basis("cp,adf"), Basis::dry_matter);
  EXPECT_EQ(basis("cp as received,cp dm"), Basis::dry_matter);
  EXPECT_EQ(basis("cp as fed,dm"), Basis::as_received);
  EXPECT_EQ(basis("cp,moisture as received"), Basis::dry_matter);
}

TEST(Layout, ADecimalCommaIsProposedOnlyWhereNoFigureHasAPoint) {
  const auto mark = [](const std::string& row) {
    return proposed_layout(table_of("bag;cp;adf\n" + row + "\n"), {"x", "", {}, {}, {}})->decimal;
  };
  EXPECT_EQ(mark("a;7,5;36"), DecimalMark::comma);
  EXPECT_EQ(mark("a;7.5;36,1"), DecimalMark::point);
  EXPECT_EQ(mark("a;7;36"), DecimalMark::point);
}

TEST(Layout, DatesAreReadInTheOrderSaidAndInNoOther) {
  const auto iso = [](DateOrder order, const char* text) {
    const auto date = date_in(order, text);
    return date ? to_iso(*date) : std::string("none");
  };
  EXPECT_EQ(iso(DateOrder::month_day_year, "9/4/26"), "2026-09-04");
  EXPECT_EQ(iso(DateOrder::day_month_year, "4.9.26"), "2026-09-04");
  EXPECT_EQ(iso(DateOrder::day_month_year, "04-09-2026"), "2026-09-04");
  EXPECT_EQ(iso(DateOrder::year_month_day, "2026/9/4"), "2026-09-04");
  EXPECT_EQ(iso(DateOrder::month_day_year, "14/9/2026"), "none");
  EXPECT_EQ(iso(DateOrder::year_month_day, "9/4/26"), "none");
  EXPECT_EQ(iso(DateOrder::month_day_year, "9/4"), "none");
  EXPECT_EQ(iso(DateOrder::month_day_year, "9/4/26/1"), "none");
  EXPECT_EQ(iso(DateOrder::month_day_year, "Sep 4, 2026"), "none");
}

TEST(Layout, WhatIsKeptReadsBackAsProposed) {
  const LabTable table = table_of("bag;Reported;\"CP: \"\"best\"\"\";cp %\na;4.9.26;1;2\n");
  Layout layout =
      *proposed_layout(table, {"odd", "county", DecimalMark::comma, DateOrder::day_month_year, {}});
  layout.columns.push_back({"CP: \"best\"", "protein", "g/kg"});
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  const Result<Spliced> spliced = with_layout(book, "# layouts\n", layout);
  ASSERT_TRUE(spliced);
  folder.write("layouts.yaml", spliced->text);
  const Result<Book> now = read_book(folder.path());
  ASSERT_TRUE(now) << spliced->text;
  const Layout& read = now->layouts.at(0);
  EXPECT_EQ(read.id, "odd");
  EXPECT_EQ(read.lab, "county");
  EXPECT_EQ(read.delimiter, ';');
  EXPECT_EQ(read.decimal, DecimalMark::comma);
  EXPECT_EQ(read.dates, DateOrder::day_month_year);
  EXPECT_EQ(read.bag, "bag");
  EXPECT_EQ(read.reported, "Reported");
  ASSERT_EQ(read.columns.size(), 2U);
  EXPECT_EQ(read.columns[1].header, "CP: \"best\"");
  EXPECT_EQ(read.columns[1].analyte, "protein");
  EXPECT_EQ(read.columns[1].unit, "g/kg");
  EXPECT_EQ(layout_for(*now, table), &now->layouts[0]);
}

// Cells by rule: what each becomes, or why its row is refused.
TEST(Import, EveryCellIsAFigureANoteNothingOrAReason) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  struct Case {
    std::string cell;
    DecimalMark decimal;
    std::string becomes;
  };
  for (const Case& one : std::vector<Case>{
           {"7.5", DecimalMark::point, "2026-09-01, cp 7.5, adf 40"},
           {"7.5%", DecimalMark::point, "2026-09-01, cp 7.5, adf 40"},
           {"75 g/kg", DecimalMark::point, "2026-09-01, cp 7.5, adf 40"},
           {"7,5", DecimalMark::comma, "2026-09-01, cp 7.5, adf 40"},
           {"<0.1", DecimalMark::point, "2026-09-01, adf 40; cp <0.1"},
           {"", DecimalMark::point, "2026-09-01, adf 40"},
           {"-", DecimalMark::point, "2026-09-01, adf 40"},
           {"N/A", DecimalMark::point, "2026-09-01, adf 40"},
           {"7.5", DecimalMark::comma,
            "refused: cp '7.5' has a point, but the layout's decimals have a comma; write a "
            "comma"},
           {"7,5", DecimalMark::point,
            "refused: crude protein '7,5' is not a number; write a point for the decimals: 7.5"},
           {">9", DecimalMark::point,
            "refused: crude protein '>9' is not a number; write a plain number, such as 640.5"},
           {"84", DecimalMark::point,
            "refused: crude protein 84 % is outside 0.5 to 45 % of dry matter; if the laboratory "
            "printed 8.4, write 8.4; if it printed g/kg, write \"84 g/kg\""}}) {
    SCOPED_TRACE(one.cell);
    Layout layout;
    layout.decimal = one.decimal;
    layout.bag = "bag";
    layout.columns = {{"cp", "cp", ""}, {"adf", "adf", ""}};
    const LabTable table = table_of("bag|cp|adf\n26-north-02|" + one.cell + "|40\n");
    const Import import = import_rows(book, layout, table, *parse_date("2026-09-01"));
    ASSERT_EQ(import.taken.size() + import.refused.size(), 1U);
    EXPECT_EQ(import.taken.empty() ? "refused: " + import.refused[0].what : import.taken[0].what,
              one.becomes);
  }
}

TEST(Import, ARowThatRepeatsAnotherIsThereAlreadyAndOneThatDiffersIsRefused) {
  const BookFolder folder;
  const Book book = *read_book(folder.path());
  Layout layout;
  layout.bag = "bag";
  layout.columns = {{"cp", "cp", ""}};
  const LabTable table = table_of("bag,cp\n26-north-02,8\n26-NORTH-02,8\n26-north-02,9\n");
  const Import import = import_rows(book, layout, table, *parse_date("2026-09-01"));
  ASSERT_EQ(import.taken.size(), 1U);
  ASSERT_EQ(import.there_already.size(), 1U);
  EXPECT_EQ(import.there_already[0].line, 3);
  ASSERT_EQ(import.refused.size(), 1U);
  EXPECT_EQ(import.refused[0].line, 4);
  ASSERT_EQ(import.changes.size(), 1U);
  EXPECT_EQ(*import.changes[0].before, folder.text("samples/2026/north.yaml"));
}

TEST(Layout, AColumnOfWhatNoPageHasIsRefusedWhereItStands) {
  const BookFolder folder;
  folder.write("layouts.yaml",
               "- id: county\n  delimiter: comma\n  decimal: point\n  bag: Bag\n"
               "  basis: dry matter\n  columns:\n    - {header: CP, analyte: protien}\n"
               "    - {header: NO3, analyte: nitrate}\n    - {header: DM, analyte: Moisture}\n");
  const Problems problems = read_whole_book(folder.path()).problems;
  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[0].what, "unknown analyte 'protien'");
  EXPECT_EQ(problems[0].remedy, "did you mean 'protein'?");
  EXPECT_EQ(problems[0].place->line, 7);
  EXPECT_EQ(problems[1].what.find("'nitrate' may mean"), 0U);
}

}  // namespace
}  // namespace pluckbook
