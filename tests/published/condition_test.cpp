#include "published/condition.h"

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
  }
}

// Read: Limousin Today 2018, Table 4, after NRC 2000; scores 3 to 7, 1200 to 1500 lb.
TEST(Condition, EnergyOfAScoreIsThePrintedOne) {
  const auto copies = read_tsv("condition_energy_read");
  const auto& rows = condition_energy().rows;
  ASSERT_EQ(rows.size(), 20U);
  ASSERT_EQ(copies.size(), 20U);
  for (std::size_t i = 0; i < 20; ++i) {
    EXPECT_EQ(rows[i].score, number(copies[i], "bcs"));
    EXPECT_EQ(rows[i].weight_at_5_lb, number(copies[i], "mature_weight_at_bcs5_lb"));
    EXPECT_EQ(rows[i].mcal, number(copies[i], "mcal"));
  }
}

}  // namespace
}  // namespace pluckbook::test
