#include "cow/condition.h"
#include "cow/printed_table.h"

namespace pluckbook::test {
namespace {

// Read: Limousin Today, 2018 herd issue, p. 53, Table 4, after NRC 2000: Mcal NE between a score
// and the one below it, scores 3 to 7, 1200 to 1500 lb.
TEST(ConditionEnergy, EnergyOfAScoreIsThePrintedOne) {
  PrintedTable table("condition_energy_read", 20);
  for (const TsvRow& row : table.rows()) {
    const auto at_5 = from_lb<KgBody>(number(row, "mature_weight_at_bcs5_lb"));
    const double score = number(row, "bcs");
    const Mcal energy = reserves_at(at_5, score) - reserves_at(at_5, score - 1);
    table.near(row, "mcal", energy.value(), 0.65);
  }
  table.report();
}

// Read: University of Nebraska 2011: 207 Mcal from score 4 to 5 at 1100 lb.
TEST(ConditionEnergy, TheNebraskaFigureComesBack) {
  const auto change = condition_change(from_lb<KgBody>(1100), 4, 5, McalPerDay(1));
  EXPECT_NEAR(change.energy.value(), 207, 0.5);
}

// Read: Mississippi State P2508, Table 1, after NRC 2000: weight at each score, percent of that
// at 5.
TEST(ConditionEnergy, WeightAtAScoreIsThePrintedOne) {
  PrintedTable table("condition_weight_read", 9);
  for (const TsvRow& row : table.rows())
    table.same(row, "weight_pct_of_bcs5", weight_at_score(KgBody(100), number(row, "bcs")).value());
  table.report();
}

// Worked by hand from 226 Mcal a score at 1200 lb: gaining 3 Mcal a day stores 3, so 75 days;
// short of 3 Mcal takes 3 / 0.8 of reserves, so 60 days.
TEST(ConditionEnergy, DaysToGainOrLoseAScoreAreTheWorkedOnes) {
  const auto cow = from_lb<KgBody>(1200);
  const auto up = condition_change(cow, 4, 5, McalPerDay(3));
  const auto down = condition_change(cow, 5, 4, McalPerDay(-3));
  ASSERT_TRUE(up.days && down.days);
  EXPECT_NEAR(*up.days, 75.3, 0.1);
  EXPECT_NEAR(*down.days, 60.3, 0.1);
  EXPECT_FALSE(condition_change(cow, 5, 4, McalPerDay(3)).days);
  EXPECT_FALSE(condition_change(cow, 5, 4, McalPerDay(0)).days);
}

TEST(ConditionEnergy, TheScoreExpectedOnADateIsWhatTheDaysToItSay) {
  const auto cow = from_lb<KgBody>(1200);
  for (const double balance : {-4.0, -1.0, 0.5, 3.0}) {
    const double later = score_after(cow, 5, McalPerDay(balance), 30);
    const auto change = condition_change(cow, 5, later, McalPerDay(balance));
    ASSERT_TRUE(change.days) << balance;
    EXPECT_NEAR(*change.days, 30, 1e-6);
    EXPECT_EQ(later > 5, balance > 0);
  }
  EXPECT_NEAR(score_after(cow, 5, McalPerDay(0), 90), 5, 1e-9);
  EXPECT_NEAR(score_after(cow, 2, McalPerDay(-20), 900), 1, 1e-9);  // held on the scale
}

// A month of single days comes to the same as the month at once.
TEST(ConditionEnergy, DayByDayIsTheSameAsAtOnce) {
  const auto cow = from_lb<KgBody>(1300);
  double score = 5.5;
  for (int day = 0; day < 30; ++day) score = score_after(cow, score, McalPerDay(-2), 1);
  EXPECT_NEAR(score, score_after(cow, 5.5, McalPerDay(-2), 30), 1e-9);
}

}  // namespace
}  // namespace pluckbook::test
