#include "base/csv.h"

#include <gtest/gtest.h>

#include "base/text.h"

namespace pluckbook {
namespace {

using Cells = std::vector<std::vector<std::string>>;

Cells cells_of(std::string_view text, char delimiter = ',') {
  const Result<std::vector<CsvRow>> rows = read_csv("lab.csv", text, delimiter);
  Cells cells;
  if (!rows) return {{to_text(rows.problems()[0])}};
  for (const CsvRow& row : *rows) cells.push_back(row.cells);
  return cells;
}

TEST(Csv, LineEndsOfEverySystemAndAByteOrderMark) {
  const Cells expected = {{"bag", "cp"}, {"a", "10.4"}};
  EXPECT_EQ(cells_of("bag,cp\na,10.4\n"), expected);
  EXPECT_EQ(cells_of("bag,cp\r\na,10.4\r\n"), expected);
  EXPECT_EQ(cells_of("bag,cp\ra,10.4\r"), expected);
  EXPECT_EQ(cells_of("\xEF\xBB\xBF"
                     "bag,cp\na,10.4"),
            expected);
  EXPECT_EQ(cells_of("bag;cp\n\n  \na;10.4\n\n", ';'), expected);
}

TEST(Csv, QuotedCellsAsInRfc4180) {
  EXPECT_EQ(cells_of("\"a,b\",\"say \"\"cp\"\"\",\"two\r\nlines\"\nx, y ,\"\"\n"),
            (Cells{{"a,b", "say \"cp\"", "two\nlines"}, {"x", "y", ""}}));
  EXPECT_EQ(cells_of(" \"a\" ,b\n"), (Cells{{"a", "b"}}));
  EXPECT_EQ(cells_of("it's 5\",b\n"), (Cells{{"it's 5\"", "b"}}));
}

TEST(Csv, EmptyCellsCount) {
  EXPECT_EQ(cells_of(",,\na,,"), (Cells{{"", "", ""}, {"a", "", ""}}));
  EXPECT_EQ(cells_of(""), Cells{});
  EXPECT_EQ(cells_of("\n\n"), Cells{});
}

TEST(Csv, ARowKnowsItsLineBehindLineBreaksInCells) {
  const auto rows = read_csv("lab.csv", "a,\"1\n2\n3\"\r\n\nb,4\n", ',');
  ASSERT_TRUE(rows);
  EXPECT_EQ((*rows)[0].line, 1);
  EXPECT_EQ((*rows)[1].line, 5);
}

TEST(Csv, WhatIsWrongHasAPlaceAndARemedy) {
  EXPECT_EQ(cells_of("a,b\nc,\"d\ne,f\n")[0][0],
            "lab.csv:2:3: this quote does not close\n"
            "   2 | c,\"d\n"
            "     |   ^\n"
            "  close it, or take it away; \"\" is a quote inside\n");
  EXPECT_EQ(cells_of("a,b\n\"c\"d,e\n")[0][0],
            "lab.csv:2:4: text stands behind a closing quote\n"
            "   2 | \"c\"d,e\n"
            "     |    ^\n"
            "  write \"\" for a quote inside\n");
  EXPECT_EQ(cells_of("a,b\r\nc,\x1b[2J\r\n")[0][0],
            "lab.csv:2:3: a character that cannot be shown, \\u001b\n"
            "   2 | c,\\u001b[2J\n"
            "     |   ^~~~~~\n"
            "  remove it\n");
  EXPECT_EQ(cells_of("a,\xE9t\xE9\n")[0][0],
            "lab.csv: the file is not UTF-8 text\n"
            "  save it again as CSV in UTF-8\n");
}

TEST(Csv, TheDelimiterIsTheOneThatPartsTheRowsEvenly) {
  EXPECT_EQ(csv_delimiter("bag,cp\na,10.4\n"), ',');
  EXPECT_EQ(csv_delimiter("bag;cp, % DM;adf\na;10,4;36,2\n"), ';');
  EXPECT_EQ(csv_delimiter("bag\tcp\na\t10.4\n"), '\t');
  EXPECT_EQ(csv_delimiter("bag|cp\na|10.4\n"), '|');
  EXPECT_EQ(csv_delimiter("bag\na\n"), ',');
  EXPECT_EQ(csv_delimiter("bag;cp\na;10,4\nb;9,8;torn\n"), ';');
  EXPECT_EQ(csv_delimiter("sep=;\nbag;cp\n"), ';');
  EXPECT_EQ(cells_of("sep=;\r\nbag;cp\r\n", ';'), (Cells{{"bag", "cp"}}));
}

TEST(Csv, LimitsHoldToTheByte) {
  CsvLimits limits;
  limits.bytes = 20;
  limits.rows = 3;
  limits.cells = 4;
  limits.text = 5;
  const auto accepts = [&](std::string_view text) { return read_csv("f", text, ',', limits).ok(); };
  EXPECT_TRUE(accepts("a\nb\nc\n"));
  EXPECT_FALSE(accepts("a\nb\nc\nd\n"));
  EXPECT_TRUE(accepts("a,b,c,d"));
  EXPECT_FALSE(accepts("a,b,c,d,e"));
  EXPECT_TRUE(accepts("12345,\"12345\""));
  EXPECT_FALSE(accepts("123456"));
  EXPECT_FALSE(accepts("\"123456\""));
  EXPECT_TRUE(accepts("12345,12345,12345,12"));
  EXPECT_FALSE(accepts("12345,12345,12345,123"));
}

}  // namespace
}  // namespace pluckbook
