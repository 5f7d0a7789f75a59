#include "published/condition.h"

#include <cmath>

#include "published/equations.h"
#include "published/tsv.h"

namespace pluckbook::test {
namespace {

// Read: Mississippi State P2508, Table 1, after NRC 2000.
TEST(Condition, WeightsAndFatAreThePrintedOnes) {
  const auto copies = read_tsv("condition_weight_read");
  const auto& rows = condition_weights().rows;
  ASSERT_EQ(rows.size(), 9U);
  ASSERT_EQ(copies.size(), 9U);
  for (std::size_t i = 0; i < 9; ++i) {
    EXPECT_EQ(rows[i].score, number(copies[i], "bcs"));
    EXPECT_EQ(rows[i].fat_percent, number(copies[i], "fat_pct"));
    EXPECT_EQ(rows[i].weight_percent, number(copies[i], "weight_pct_of_bcs5"));
    // Fit to the nine: W(score) = W5 / (1.3835 - 0.0767 score), computed.
    EXPECT_NEAR(rows[i].weight_percent, 100 / (1.3835 - 0.0767 * rows[i].score), 0.5);
  }
}

double reserves(double weight_at_5, double score) {
  // NRC 2000 chapter 3, recalled: fat and protein of empty body by score, 9.4 and 5.7 Mcal/kg.
  const double fat = 0.037683 * score, protein = 0.200886 - 0.0066762 * score;
  const double empty_body = 0.851 * weight_at_5 / (1.3835 - 0.0767 * score);
  return empty_body * (9.4 * fat + 5.7 * protein);
}

// Read: Limousin Today 2018, Table 4, after NRC 2000; scores 3 to 7, 1200 to 1500 lb.
TEST(Condition, EnergyOfAScoreIsThePrintedOneAndFollowsFromBodyComposition) {
  const auto copies = read_tsv("condition_energy_read");
  const auto& rows = condition_energy().rows;
  ASSERT_EQ(rows.size(), 20U);
  ASSERT_EQ(copies.size(), 20U);
  for (std::size_t i = 0; i < 20; ++i) {
    EXPECT_EQ(rows[i].score, number(copies[i], "bcs"));
    EXPECT_EQ(rows[i].weight_at_5_lb, number(copies[i], "mature_weight_at_bcs5_lb"));
    EXPECT_EQ(rows[i].mcal, number(copies[i], "mcal"));
    const double weight = rows[i].weight_at_5_lb * lb;
    EXPECT_NEAR(rows[i].mcal, reserves(weight, rows[i].score) - reserves(weight, rows[i].score - 1),
                1.5);
  }
}

}  // namespace
}  // namespace pluckbook::test
