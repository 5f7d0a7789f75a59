#include "cow/energetics.h"
#include "cow/printed_table.h"
#include "cow/protein.h"

namespace pluckbook::test {
namespace {

// Read: NRC 2000, Table 4-2, p. 43; calf of 38.5 kg.
TEST(PregnancyTable, Nrc2000Table42ComesBackToItsLastDigitButOne) {
  PrintedTable table("pregnancy_nem_read", 6);
  for (const TsvRow& row : table.rows())
    table.near(row, "nem_mcal_nrc_2000",
               pregnancy_on(KgBody(38.5), number(row, "day_of_gestation")).nem.value(), 0.0014);
  table.report();
}

// Computed by hand from the recalled equations, CBW 38.5 kg: net protein and MP in grams.
TEST(PregnancyTable, ProteinAndWeightOfTheWombAreTheWorkedOnes) {
  const struct {
    double day, net, metabolizable;
  } worked[] = {
      {130, 9.25, 14.23}, {190, 31.81, 48.93}, {250, 95.38, 146.73}, {280, 156.79, 241.22}};
  for (const auto& one : worked) {
    const Pregnancy p = pregnancy_on(KgBody(38.5), one.day);
    EXPECT_NEAR(p.net_protein.value() * 1000, one.net, 0.005) << one.day;
    EXPECT_NEAR(protein_need(KgBody(1), {}, p, {}).pregnancy.value() * 1000, one.metabolizable,
                0.005);
  }
  EXPECT_NEAR(pregnancy_on(KgBody(38.5), 280).conceptus.value(), 62.0, 0.05);
  EXPECT_NEAR(pregnancy_on(KgBody(38.5), 250).conceptus_gain.value() * 1000, 549, 0.5);
}

TEST(PregnancyTable, TheDailyGainOfTheWombAddsUpToItsWeight) {
  double gained = 0;
  for (int day = 150; day < 280; ++day)
    gained += pregnancy_on(KgBody(38.5), day + 0.5).conceptus_gain.value();
  const double difference = pregnancy_on(KgBody(38.5), 280).conceptus.value() -
                            pregnancy_on(KgBody(38.5), 150).conceptus.value();
  EXPECT_NEAR(gained, difference, 1e-3 * difference);
}

TEST(PregnancyTable, AnOpenCowNeedsNothingForACalf) {
  EXPECT_EQ(pregnancy_on(KgBody(38.5), 0).nem.value(), 0);
  EXPECT_EQ(pregnancy_on(KgBody(38.5), -30).conceptus.value(), 0);
}

}  // namespace
}  // namespace pluckbook::test
