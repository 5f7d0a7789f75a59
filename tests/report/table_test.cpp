#include "report/table.h"

#include <gtest/gtest.h>

#include "base/text.h"

namespace pluckbook {
namespace {

TEST(Table, ColumnsStandUnderTheirHeadersWhateverTheLetters) {
  Table table({{"pasture", Align::left}, {"CP, %"}});
  table.add({"Peña", "9.4"});
  table.add({"牧場", "10.1"});
  EXPECT_EQ(table.text(),
            "pasture  CP, %\n"
            "Peña       9.4\n"
            "牧場      10.1\n");
}

TEST(Table, CombiningMarksAndOtherScriptsKeepTheColumns) {
  Table table({{"name", Align::left}, {"CP, %"}});
  table.add({"Pen\u0303a", "9.4"});          // n and a combining tilde
  table.add({"\u05e0\u05d7\u05dc", "8.1"});  // Hebrew, right to left
  table.add({"Žďár", "7.0"});
  EXPECT_EQ(table.text(),
            "name  CP, %\n"
            "Pen\u0303a    9.4\n"
            "\u05e0\u05d7\u05dc     8.1\n"
            "Žďár    7.0\n");
}

TEST(Table, WhatDoesNotFitIsDroppedAndNamed) {
  Table table({{"bag", Align::left}, {"plucked"}, {"a long remark"}});
  table.add({"26-north-01", "2026-06-12", "cows in the bottoms"});
  EXPECT_EQ(table.text(30),
            "bag             plucked\n"
            "26-north-01  2026-06-12\n"
            "(left out to fit: a long\n remark)\n");
}

TEST(Wrapped, NoLineIsTooWideAndNoNumberLosesItsUnit) {
  const std::string text = "protein is below need since 8 Aug: 8.4 % against 9.0 % needed by them";
  for (int width = 20; width < 70; ++width) {
    const std::string out = wrapped(text, width);
    for (std::string_view line : split(out, '\n')) {
      EXPECT_LE(display_width(line), width);
      EXPECT_FALSE(line.starts_with("%")) << out;
      EXPECT_FALSE(line.starts_with("Aug")) << out;
    }
  }
}

}  // namespace
}  // namespace pluckbook
