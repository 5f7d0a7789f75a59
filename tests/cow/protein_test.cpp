#include "cow/protein.h"

#include <gtest/gtest.h>

namespace pluckbook::test {
namespace {

// Worked for 1200 lb and 7.571 kg of milk: 428.2 + 396.0 = 824.2 g MP; / 0.67 (read, Arkansas
// MP391) = 1230 g or 2.71 lb CP, the figure of the row 1200 lb, 20 lb milk, month 1.
TEST(Protein, NeedIsTheWorkedOneAndGivesTheTablesCrudeProtein) {
  const ProteinNeed need = protein_need(from_lb<KgBody>(1200), KgPerDay(7.571), {}, {});
  EXPECT_NEAR(need.maintenance.value() * 1000, 428.2, 0.05);
  EXPECT_NEAR(need.milk.value() * 1000, 396.0, 0.05);
  EXPECT_NEAR(need.metabolizable().value() * 1000, 824.2, 0.1);
  EXPECT_NEAR(in_lb(need.crude()), 2.71, 0.005);
}

// Worked for 7.5 kg TDN: 975 g (NRC 2000 p. 17, read), MP 624; 695 g (NASEM 2016), MP 445.
TEST(Protein, BothMicrobialEquationsStandBesideEachOther) {
  const RumenDiet diet{KgDmPerDay(12.5), from_percent(60), std::nullopt, from_percent(3)};
  const MicrobialProtein microbial = microbial_protein(diet);
  EXPECT_NEAR(microbial.by_share.value() * 1000, 975, 0.01);
  EXPECT_NEAR(microbial.by_line_2016.value() * 1000, 695.2, 0.1);
  EXPECT_EQ(microbial.degradable_wanted(), microbial.by_share);
  const ProteinSupply enough = protein_supply(diet, from_percent(14), 0.2);
  EXPECT_NEAR(enough.from_microbes.value() * 1000, 624, 0.1);
}

// NASEM 2016 (recalled): with 3.9 % fat or more, 0.096 x (TDN - 2.25 x fat) + 53.33 g.
TEST(Protein, AFatDietGoesByItsFatFreeTdn) {
  const RumenDiet diet{KgDmPerDay(10), from_percent(60), std::nullopt, from_percent(5)};
  EXPECT_NEAR(microbial_protein(diet).by_line_2016.value() * 1000,
              0.096 * (6000 - 2.25 * 500) + 53.33, 0.01);
}

// NRC 2000 p. 17, read: 2.2 % less per 1 % eNDF below 20 %; at 10 % 0.13 x 0.78 = 0.101.
TEST(Protein, ADietShortOfFibreMakesLess) {
  RumenDiet diet{KgDmPerDay(10), from_percent(60), from_percent(10), Share(0)};
  EXPECT_NEAR(microbial_protein(diet).by_share.value() / 6, 0.1014, 0.00005);
  diet.effective_fibre = from_percent(35);
  EXPECT_DOUBLE_EQ(microbial_protein(diet).fibre_correction, 1);
}

// By hand: 10 kg at 8 % CP, a quarter undegradable: 600 g for the rumen, 200 g past it. The rumen
// could use 0.13 x 5000 = 650 g, so 600 become microbes: 600 x 0.64 + 200 x 0.8 = 544 g.
TEST(Protein, MicrobesCannotMakeMoreThanTheDegradableProteinAllows) {
  const RumenDiet diet{KgDmPerDay(10), from_percent(50), std::nullopt, Share(0)};
  const ProteinSupply supply = protein_supply(diet, from_percent(8), 0.25);
  EXPECT_NEAR(supply.made.value() * 1000, 600, 1e-9);
  EXPECT_NEAR(supply.metabolizable().value() * 1000, 544, 1e-9);
  const ProteinSupply forage =
      protein_supply(diet, from_percent(8), 0.25, EscapeDigestion::forage_2016);
  EXPECT_NEAR(forage.from_escape.value() * 1000, 120, 1e-9);
}

}  // namespace
}  // namespace pluckbook::test
