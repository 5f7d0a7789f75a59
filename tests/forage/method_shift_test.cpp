#include "forage/method_shift.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

/// Bags that outlive the readings pointing at them.
struct Bags {
  explicit Bags(const std::vector<std::map<std::string, double>>& pages) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
      Bag bag;
      bag.id = "n" + std::to_string(i + 1);
      LabResult result;
      result.values = pages[i];
      bag.results.push_back(result);
      bags.push_back(bag);
    }
    for (const Bag& bag : bags) {
      BagReading reading;
      reading.bag = &bag;
      reading.used = true;
      reading.results.push_back(*on_dry_matter(bag.results[0]));
      readings.push_back(std::move(reading));
    }
  }
  std::vector<Bag> bags;
  std::vector<BagReading> readings;
};

TEST(MethodShift, OneWayThroughoutIsNoShift) {
  EXPECT_TRUE(method_shifts({}).empty());
  EXPECT_TRUE(method_shifts(Bags({{{"tdn", 60}, {"adf", 38}}, {{"tdn", 58}}}).readings).empty());
}

// E1 at ADF 38 and 40 gives 59.298 and 57.74 (88.9 - 0.779 ADF): 1.298 and 0.74 over the printed.
TEST(MethodShift, SaysWhatTheOtherWayIsWorthOnPagesThatAllowBoth) {
  const Bags bags({{{"tdn", 58}, {"adf", 38}}, {{"tdn", 57}, {"adf", 40}}, {{"adf", 39}}});
  const auto shifts = method_shifts(bags.readings);
  ASSERT_EQ(shifts.size(), 1U);
  EXPECT_EQ(shifts[0].usual, "laboratory");
  EXPECT_EQ(shifts[0].other, "E1");
  EXPECT_EQ(shifts[0].pages, 2);
  EXPECT_NEAR(*shifts[0].points, (1.298 + 0.74) / 2, 1e-9);
  EXPECT_EQ(in_words(shifts[0]),
            "TDN of bag n3 comes by a line on fibre (E1), of most by the laboratory's figure; on 2 "
            "pages with both it stands 1.0 points higher, which is no change of the grass");
}

TEST(MethodShift, SaysWhenNoPageAllowsBoth) {
  const Bags bags({{{"tdn", 58}}, {{"tdn", 57}}, {{"adf", 39}}});
  const auto shifts = method_shifts(bags.readings);
  ASSERT_EQ(shifts.size(), 1U);
  EXPECT_FALSE(shifts[0].points);
  EXPECT_NE(in_words(shifts[0]).find("not known"), std::string::npos);
}

TEST(MethodShift, ALaboratoryThatChangesItsEquationIsSeenWhereItSaysSo) {
  Bags bags({{{"tdn", 58}}, {{"tdn", 57}}, {{"tdn", 50}}});
  bags.readings[2].results[0].tdn->method = "laboratory, summative";
  const auto shifts = method_shifts(bags.readings);
  ASSERT_EQ(shifts.size(), 1U);
  EXPECT_NE(in_words(shifts[0]).find("the laboratory's figure, summative"), std::string::npos);
}

TEST(MethodShift, BagsThatAreNotUsedDoNotCount) {
  Bags bags({{{"tdn", 58}}, {{"adf", 39}}});
  bags.readings[1].used = false;
  EXPECT_TRUE(method_shifts(bags.readings).empty());
}

}  // namespace
}  // namespace pluckbook
