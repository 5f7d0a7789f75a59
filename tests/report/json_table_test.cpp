#include "report/json_table.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

Json of(const char* text) {
  return Json::parse(text);
}

TEST(JsonTable, AnInnerRowStandsBehindItsOwnersFields) {
  const Json json = of(R"({"herds": [{"herd": "river-cows", "nutrients": [
      {"nutrient": "tdn", "need": {"value": 15.5, "unit": "lb/day"}},
      {"nutrient": "cp", "need": {"value": 2.5, "unit": "lb/day"}}]}]})");
  EXPECT_EQ(csv_of(json, "herds/nutrients"),
            "herd,nutrient,need_lb_per_day\r\n"
            "river-cows,tdn,15.5\r\n"
            "river-cows,cp,2.5\r\n");
}

TEST(JsonTable, WhatIsUnknownIsEmptyAndKeepsItsColumnAndUnit) {
  const Json json = of(R"({"options": [{"feed": "corn", "as_fed": null},
      {"feed": "hay", "as_fed": {"value": 3, "unit": "% of DM"}}]})");
  EXPECT_EQ(csv_of(json, "options"), "feed,as_fed_percent_of_dm\r\ncorn,\r\nhay,3\r\n");
}

TEST(JsonTable, NumbersThatShareAUnitEachCarryIt) {
  const Json json = of(R"({"days": [{"date": "2026-07-01",
      "tdn": {"median": 60, "low": 58, "unit": "% of DM"}}]})");
  EXPECT_EQ(csv_of(json, "days"),
            "date,tdn_median_percent_of_dm,tdn_low_percent_of_dm\r\n2026-07-01,60,58\r\n");
}

TEST(JsonTable, WhereRowsDifferInTheirUnitItHasAColumnOfItsOwn) {
  const Json json = of(R"({"options": [{"quote": {"value": 225, "unit": "USD/ton"}},
      {"quote": {"value": 22, "unit": "USD/cwt"}}, {"quote": null}]})");
  EXPECT_EQ(csv_of(json, "options"), "quote,quote_unit\r\n225,USD/ton\r\n22,USD/cwt\r\n,\r\n");
}

TEST(JsonTable, ANullWhereOtherRowsHaveAnObjectAddsNoColumn) {
  const Json json = of(R"({"rows": [{"falls": null}, {"falls": {"low": "2026-08-20"}}]})");
  EXPECT_EQ(csv_of(json, "rows"), "falls_low\r\n\r\n2026-08-20\r\n");
}

TEST(JsonTable, ATextThatLooksLikeAFormulaIsMadeHarmless) {
  const Json json = of(R"({"rows": [{"a": "=1+1", "b": "+x", "c": "-x", "d": "@x", "e": "\tx"},
      {"a": -2.5, "b": "x", "c": "say \"a, b\"", "d": "two\nlines", "e": true}]})");
  EXPECT_EQ(csv_of(json, "rows"),
            "a,b,c,d,e\r\n"
            "'=1+1,'+x,'-x,'@x,\\u0009x\r\n"
            "-2.5,x,\"say \"\"a, b\"\"\",two\\u000alines,true\r\n");
}

TEST(JsonTable, WithoutRowsThereIsOnlyAnEmptyHeader) {
  EXPECT_EQ(csv_of(of(R"({"rows": []})"), "rows"), "\r\n");
}

}  // namespace
}  // namespace pluckbook
