#include "base/date.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

TEST(Date, ReadsOneFormOnly) {
  ASSERT_TRUE(parse_date("2026-07-06"));
  EXPECT_EQ(to_iso(*parse_date("2026-07-06")), "2026-07-06");
  EXPECT_TRUE(parse_date("2024-02-29"));
  for (const char* bad :
       {"2026-7-6", "7/6/2026", "06.07.2026", "2026-02-29", "2026-13-01", "2026-00-10",
        "2026-06-31", "1899-12-31", "2201-01-01", "2026-07-06 ", ""}) {
    EXPECT_FALSE(parse_date(bad)) << bad;
  }
}

TEST(Date, InWords) {
  const Date day = *parse_date("2026-07-06");
  EXPECT_EQ(in_words(day), "6 Jul 2026");
  EXPECT_EQ(in_words_without_year(day), "6 Jul");
}

TEST(Date, LeapDayFallsBackInPlainYears) {
  EXPECT_EQ(to_iso(day_in_year(2028, 2, 29)), "2028-02-29");
  EXPECT_EQ(to_iso(day_in_year(2027, 2, 29)), "2027-02-28");
  EXPECT_EQ(days_between(*parse_date("2027-12-31"), *parse_date("2028-03-01")), 61);
}

}  // namespace
}  // namespace pluckbook
