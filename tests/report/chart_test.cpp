#include "report/chart.h"

#include <gtest/gtest.h>

#include "advice/a_book.h"
#include "base/text.h"

namespace pluckbook {
namespace {

DietChart a_chart() {
  DietChart chart;
  chart.title = "crude protein";
  const Date first = testing::day("2026-06-01");
  for (int i = 0; i <= 90; ++i) {
    const Share middle = from_percent(14 - 0.08 * i);
    chart.days.push_back(
        {first + Days(i), middle, middle - from_percent(1), middle + from_percent(1)});
    chart.need.push_back({first + Days(i), from_percent(9)});
  }
  chart.bags.push_back({first + Days(14), from_percent(13)});
  return chart;
}

TEST(Chart, ShowsBagCurveRangeAndNeedInPlainAscii) {
  const std::string text = chart_text(a_chart());
  for (const char* sign : {"o", "-", ":", "=", "Jul", "Aug"}) {
    EXPECT_NE(text.find(sign), std::string::npos) << sign;
  }
  for (const char c : text) EXPECT_TRUE(c == '\n' || (c >= ' ' && c <= '~'));
  for (std::string_view line : split(text, '\n')) EXPECT_LE(line.size(), 80U);
}

TEST(Chart, WithoutDaysThereIsNone) {
  EXPECT_EQ(chart_text({}), "");
}

}  // namespace
}  // namespace pluckbook
