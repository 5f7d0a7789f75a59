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

TEST(Table, HeadersAndTextAreBrokenAtSpacesToFit) {
  Table table(
      {{"month", Align::left}, {"USD"}, {"cottonseed-meal, tons"}, {"what it is", Align::left}});
  table.add({"2026-11", "2868.54", "3.45", "meal of the mill"});
  EXPECT_EQ(table.text(50),
            "                  cottonseed-meal,\n"
            "month        USD              tons  what it is\n"
            "2026-11  2868.54              3.45  meal of the\n"
            "                                    mill\n");
}

TEST(Table, ColumnsWithoutRoomFollowBelowAndNoneIsLost) {
  Table table({{"to buy", Align::left}, {"tons"}, {"as sold"}, {"USD/ton"}, {"USD"}});
  table.add({"cottonseed-meal-of-the-mill", "10.42", "1256.8 x 56 lb bushel", "473.99", "4938.98"});
  table.add({"62 trips to home at 9.00", "", "", "", "558.00"});
  EXPECT_EQ(table.text(60),
            "to buy                        tons                as sold\n"
            "cottonseed-meal-of-the-mill  10.42  1256.8 x 56 lb bushel\n"
            "62 trips to home at 9.00\n"
            "\n"
            "to buy                       USD/ton      USD\n"
            "cottonseed-meal-of-the-mill   473.99  4938.98\n"
            "62 trips to home at 9.00               558.00\n");
}

TEST(Table, EveryCellIsSomewhereHoweverNarrowThePage) {
  Table table(
      {{"from"}, {"to"}, {"feed", Align::left}, {"lb/head/day"}, {"herd lb/feeding"}, {"USD"}});
  table.add({"20 Aug", "2 Sep", "distillers", "2.96", "414", "863.72"});
  table.add({"", "", "corn", "1.37", "192", "262.90"});
  for (int width = 1; width < 70; ++width) {
    const std::string text = table.text(width);
    for (const auto& row : table.rows())
      for (const std::string& cell : row) EXPECT_NE(text.find(cell), std::string::npos) << text;
    // The three columns that name a row take 26; behind them the widest number stands alone.
    if (width < 38) continue;
    for (const std::string_view line : split(text, '\n')) EXPECT_LE(display_width(line), width);
  }
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
