#include "published/requirements.h"

#include "published/tsv.h"

namespace pluckbook::test {
namespace {

void same_cow_fields(const CowRow& row, const TsvRow& copy, const std::string& milk_column) {
  EXPECT_EQ(row.mature_weight_lb, number(copy, "mature_weight_lb"));
  EXPECT_EQ(row.peak_milk_lb, number(copy, milk_column));
  EXPECT_EQ(row.month, number(copy, "month_since_calving"));
  EXPECT_EQ(row.dmi_lb, number(copy, "dmi_lb"));
  EXPECT_EQ(row.tdn_percent, number(copy, "tdn_pct"));
  EXPECT_EQ(row.cp_percent, number(copy, "cp_pct"));
}

template <class Row>
void same_minerals(const Row& row, const TsvRow& copy) {
  EXPECT_EQ(row.ca_percent, number(copy, "ca_pct"));
  EXPECT_EQ(row.p_percent, number(copy, "p_pct"));
}

template <class Row>
void same_growth(const Row& row, const TsvRow& copy) {
  EXPECT_EQ(row.weight_lb, number(copy, "weight_lb"));
  EXPECT_EQ(row.gain_lb, number(copy, "gain_lb"));
  EXPECT_EQ(row.dmi_lb, number(copy, "dmi_lb"));
  EXPECT_EQ(row.tdn_percent, number(copy, "tdn_pct"));
  EXPECT_EQ(row.cp_percent, number(copy, "cp_pct"));
}

/// Calls check(row, copy) for each row of a table and its independent copy, in order.
template <class Row, class Check>
void each_row(const RequirementTable<Row>& table, const std::string& name, std::size_t count,
              Check check) {
  const auto copies = read_tsv(name);
  ASSERT_EQ(table.rows.size(), count);
  ASSERT_EQ(copies.size(), count);
  for (std::size_t i = 0; i < count; ++i) {
    SCOPED_TRACE(name + " row " + std::to_string(i + 1));
    check(table.rows[i], copies[i]);
  }
}

TEST(Requirements, MatureCowRowsAreTheCollectedOnes) {
  each_row(mature_cow_requirements(), "mature_cows", 180, [](const CowRow& row, const TsvRow& c) {
    same_cow_fields(row, c, "peak_milk_lb");
    same_minerals(row, c);
    EXPECT_EQ(row.milking, c.at("stage") == "milking");
    EXPECT_EQ(row.milk_lb, number(c, "milk_lb"));
    EXPECT_EQ(row.nem_mcal, number(c, "nem_mcal"));
    EXPECT_EQ(row.neg_mcal, 0);
  });
}

TEST(Requirements, PrintedCowRowsAreTheCollectedOnes) {
  each_row(mature_cow_requirements_printed(), "mature_cows_recalled", 48,
           [](const CowRow& row, const TsvRow& c) {
             same_cow_fields(row, c, "peak_milk_lb");
             EXPECT_EQ(row.milking, row.month <= 6);
           });
}

TEST(Requirements, FirstCalfRowsAreTheCollectedOnes) {
  each_row(first_calf_requirements(), "first_calf_heifers", 108,
           [](const CowRow& row, const TsvRow& c) {
             same_cow_fields(row, c, "mature_peak_milk_lb");
             same_minerals(row, c);
             EXPECT_EQ(row.milking, c.at("stage") == "milking");
             EXPECT_EQ(row.weight_lb, number(c, "weight_lb"));
             EXPECT_EQ(row.milk_lb, number(c, "milk_lb"));
             EXPECT_EQ(row.nem_mcal, number(c, "nem_maintenance_milk_pregnancy_mcal"));
             EXPECT_EQ(row.neg_mcal, number(c, "neg_mcal"));
           });
}

TEST(Requirements, BredHeiferRowsAreTheCollectedOnes) {
  each_row(bred_heifer_requirements(), "bred_heifers", 45,
           [](const BredHeiferRow& row, const TsvRow& c) {
             same_growth(row, c);
             same_minerals(row, c);
             EXPECT_EQ(row.mature_weight_lb, number(c, "mature_weight_lb"));
             EXPECT_EQ(row.month_of_pregnancy, number(c, "month_of_pregnancy"));
             EXPECT_EQ(row.nem_mcal, number(c, "nem_maintenance_pregnancy_mcal"));
             EXPECT_EQ(row.neg_mcal, number(c, "neg_mcal"));
           });
}

TEST(Requirements, GrowingRowsAreTheCollectedOnes) {
  const auto check = [](const std::string& mature) {
    return [mature](const GrowingRow& row, const TsvRow& c) {
      same_growth(row, c);
      same_minerals(row, c);
      EXPECT_EQ(row.mature_weight_lb, number(c, mature));
      EXPECT_EQ(row.nem_mcal, number(c, "nem_maintenance_mcal"));
      EXPECT_EQ(row.neg_mcal, number(c, "neg_mcal"));
    };
  };
  each_row(growing_requirements(), "growing_heifers_and_stockers", 90, check("finished_weight_lb"));
  each_row(bull_requirements(), "bulls", 13, check("mature_weight_lb"));
}

TEST(Requirements, PrintedGrowingRowsAreTheCollectedOnes) {
  each_row(growing_requirements_printed(), "growing_recalled", 5, same_growth<GrowingRow>);
  each_row(bull_requirements_printed(), "bulls_read", 14, same_growth<GrowingRow>);
}

TEST(Requirements, AmountsAgreeWithSharesTimesIntake) {
  for (const std::string name : {"mature_cows", "mature_cows_recalled", "first_calf_heifers",
                                 "bred_heifers", "growing_heifers_and_stockers", "bulls"}) {
    for (const TsvRow& row : read_tsv(name)) {
      // Both factors are rounded to print: half a unit of each.
      const double dmi = number(row, "dmi_lb");
      const double tdn = number(row, "tdn_pct"), cp = number(row, "cp_pct");
      EXPECT_NEAR(number(row, "tdn_lb"), dmi * tdn / 100,
                  print_rounding(row, "tdn_lb") + 0.05 * tdn / 100 + 0.05 * dmi / 100)
          << name;
      EXPECT_NEAR(number(row, "cp_lb"), dmi * cp / 100,
                  print_rounding(row, "cp_lb") + 0.05 * cp / 100 + 0.005 * dmi / 100)
          << name;
    }
  }
}

TEST(Requirements, EveryTableSaysWhereItComesFromAndHowItStands) {
  EXPECT_EQ(mature_cow_requirements().citation.status, "computed");
  EXPECT_EQ(mature_cow_requirements_printed().citation.status, "recalled");
  EXPECT_EQ(first_calf_requirements().citation.status, "computed");
  EXPECT_EQ(bred_heifer_requirements().citation.status, "computed");
  EXPECT_EQ(growing_requirements().citation.status, "computed");
  EXPECT_EQ(growing_requirements_printed().citation.status, "recalled");
  EXPECT_EQ(bull_requirements().citation.status, "computed");
  EXPECT_EQ(bull_requirements_printed().citation.status, "read");
  EXPECT_NE(mature_cow_requirements().citation.source.find("National Research Council. 2000"),
            std::string::npos);
  EXPECT_NE(bull_requirements_printed().citation.source.find("The Cattleman, February 2015"),
            std::string::npos);
  EXPECT_EQ(bull_requirements_printed().citation.table, "Chart 1");
}

}  // namespace
}  // namespace pluckbook::test
