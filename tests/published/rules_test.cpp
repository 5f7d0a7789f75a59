#include "published/rules.h"

#include <cmath>
#include <set>

#include "published/chain.h"
#include "published/tsv.h"

namespace pluckbook::test {
namespace {

// Read: Rasby (Nebraska) and Michigan State; Hibberd and Thrift 1992 as printed in 2024.
TEST(IntakeGuidance, HoldsBothPrintedForms) {
  const IntakeGuidance& lower = intake_guidance_lower();
  EXPECT_EQ(lower.tdn_percent, (std::vector<double>{48, 55.5, 62}));
  EXPECT_EQ(lower.dry, (std::vector<double>{1.8, 2.0, 2.5}));
  EXPECT_EQ(lower.milking, (std::vector<double>{2.0, 2.3, 2.7}));
  const IntakeGuidance& higher = intake_guidance_higher();
  EXPECT_EQ(higher.dry, (std::vector<double>{1.8, 2.2, 2.5}));
  EXPECT_EQ(higher.milking, (std::vector<double>{2.2, 2.5, 2.7}));
  EXPECT_NE(higher.citation.source.find("Hibberd and Thrift 1992"), std::string::npos);
}

// Worked figures of the collection (computed): 1200-lb cow without milk, NEm 1.1, 1.3 and 1.5.
TEST(IntakeRules, ReproduceTheWorkedIntakes) {
  const IntakeRules& rules = intake_rules();
  const double size = std::pow(1200 * lb, 0.75);
  const auto dmi = [&](double n, double c) { return size * (rules.nrc_square * n * n + c) / n; };
  EXPECT_NEAR(dmi(1.1, rules.nrc_open), 10.13, 0.005);
  EXPECT_NEAR(dmi(1.1, rules.nrc_bred), 10.94, 0.005);
  EXPECT_NEAR(dmi(1.3, rules.nrc_open), 10.65, 0.005);
  EXPECT_NEAR(dmi(1.3, rules.nrc_bred), 11.33, 0.005);
  EXPECT_NEAR(dmi(1.5, rules.nrc_open), 11.33, 0.005);
  EXPECT_NEAR(dmi(1.5, rules.nrc_bred), 11.93, 0.005);
  EXPECT_EQ(rules.nrc_milk, 0.2);
}

// Read: Missouri extension (NDF); Sprinkle, Arizona (protein); Moore et al. 1999 (ratio).
TEST(IntakeRules, HoldTheReadLimits) {
  const IntakeRules& rules = intake_rules();
  EXPECT_EQ(rules.gut_ndf_percent_bw, 1.2);
  EXPECT_EQ(rules.cp_floor_percent, 7);
  EXPECT_EQ(rules.cp_drop_percent, 6.25);
  EXPECT_EQ(rules.cp_low_percent, 4);
  EXPECT_EQ(rules.low_intake_percent_bw, 1.2);
  EXPECT_EQ(rules.tdn_cp_ratio, 7);
  for (const auto* name : {"NRC 2000", "Sprinkle", "Moore", "Missouri"})
    EXPECT_NE(rules.source.find(name), std::string::npos) << name;
}

// NRC 2000: 0.576 = NEm / ME at ME 2.0 is read on page 43; the chain values are computed.
TEST(EnergyChain, ReproducesTheChainOfTheCollection) {
  const EnergyChain& chain = energy_chain();
  const auto of = [](const double(&c)[4], double me) { return cubic(me, c[0], c[1], c[2], c[3]); };
  EXPECT_NEAR(of(chain.nem, 2.0) / 2.0, 0.576, 0.0005);
  struct Line {
    double tdn, me, nem, neg;
  };
  for (const Line line : {Line{45, 1.627, 0.789, 0.252}, Line{50, 1.808, 0.968, 0.420},
                          Line{55, 1.988, 1.141, 0.582}, Line{60, 2.169, 1.310, 0.736},
                          Line{65, 2.350, 1.474, 0.884}, Line{70, 2.531, 1.633, 1.027}}) {
    const double me = chain.de_per_tdn * chain.me_per_de * line.tdn / 100;
    EXPECT_NEAR(me, line.me, 0.0006);
    EXPECT_NEAR(of(chain.nem, me), line.nem, 0.0006);
    EXPECT_NEAR(of(chain.neg, me), line.neg, 0.0006);
  }
  EXPECT_EQ(chain.printed_tdn_divisor, 1.0187);
}

// The worked columns of the collection (computed there from the printed equations).
TEST(FibreEquations, ReproduceTheWorkedColumns) {
  const auto tdn = [](const char* id, double adf, double cp = 0, double ndf = 0) {
    const FibreEquation& e = fibre_equation(id);
    return e.intercept + e.adf * adf + e.cp * cp + e.ndf * ndf;
  };
  const struct {
    const char* id;
    double adf, tdn;
  } worked[] = {{"E1", 38, 59.3}, {"E1b", 38, 59.3}, {"E2", 38, 53.8}, {"E3", 38, 52.7},
                {"E4", 38, 58.0}, {"E5", 38, 51.1},  {"E6", 38, 53.9}, {"E7", 28, 68.2},
                {"E8", 28, 67.5}, {"E9", 38, 64.4},  {"E1", 25, 69.4}, {"E2", 25, 63.6},
                {"E3", 25, 67.6}, {"E4", 25, 71.9},  {"E5", 25, 68.7}, {"E6", 25, 69.2},
                {"E1", 50, 50.0}, {"E2", 50, 44.8},  {"E3", 50, 38.9}, {"E4", 50, 45.2},
                {"E5", 50, 35.0}, {"E6", 50, 39.8}};
  for (const auto& line : worked) EXPECT_NEAR(tdn(line.id, line.adf), line.tdn, 0.051) << line.id;
  EXPECT_NEAR(tdn("E10", 38, 12, 68), 61.9, 0.051);
  EXPECT_EQ(fibre_equations().size(), 11U);
}

TEST(FibreEquations, SayWhereTheyHoldAndHowFarTheyMiss) {
  for (const FibreEquation& e : fibre_equations()) {
    EXPECT_EQ(e.adf_low, 25);
    EXPECT_EQ(e.adf_high, 45);
    EXPECT_EQ(e.error_points, 5);
    EXPECT_FALSE(e.source.empty());
    EXPECT_TRUE(e.status == "read" || e.status == "recalled");
  }
  EXPECT_EQ(fibre_equation("E1").status, "read");
  EXPECT_EQ(fibre_equation("E5").status, "recalled");
}

TEST(SafeUse, HoldsTheCollectedCeilings) {
  const struct {
    const char* id;
    double value;
    const char* status;
  } table[] = {{"npn_share_of_cp", 0.3333, "read"},
               {"urea_lb_day", 0.15, "recalled"},
               {"urea_percent_dm", 1, "recalled"},
               {"grain_percent_bw", 0.25, "derived"},
               {"grain_harm_percent_bw", 0.5, "read"},
               {"supplement_tdn_percent_bw", 0.7, "read"},
               {"fat", 6, "recalled"},
               {"fat_hard_stop", 7, "recalled"},
               {"sulfur", 0.5, "recalled"},
               {"sulfur_cautious", 0.4, "read"},
               {"sulfur_high_grain", 0.3, "read"},
               {"whole_cottonseed_percent_bw", 0.5, "read"},
               {"whole_cottonseed_percent_dm", 15, "read"},
               {"nitrate_n_ppm", 1000, "read"},
               {"nitrate_n_never_ppm", 4000, "read"},
               {"ca_p_low", 1.5, "recalled"},
               {"ca_p_high", 7, "recalled"},
               {"copper_ppm", 40, "read"},
               {"selenium_ppm", 5, "read"},
               {"potassium", 2, "read"},
               {"magnesium", 0.40, "read"},
               {"water_sulfate_ppm", 1000, "read"},
               {"water_solids_ppm", 5000, "read"},
               {"salt_percent_bw", 0.1, "read"},
               {"ionophore_mg_day", 200, "recalled"},
               {"diet_cp_for_energy_feed", 7, "read"}};
  for (const auto& line : table) {
    EXPECT_EQ(safe_use(line.id).value, line.value) << line.id;
    EXPECT_EQ(safe_use(line.id).status, line.status) << line.id;
  }
}

TEST(SafeUse, EveryCeilingSaysWhatHappensAndWhoSaysSo) {
  std::set<std::string> ids;
  for (const SafeUse& limit : safe_use()) {
    EXPECT_TRUE(ids.insert(limit.id).second) << limit.id;
    EXPECT_GT(limit.value, 0);
    EXPECT_GT(limit.caution.size(), 20U) << limit.id;
    EXPECT_GT(limit.source.size(), 10U) << limit.id;
    EXPECT_FALSE(limit.unit.empty());
  }
}

TEST(FeedCeilings, TakeTheLowerEndOfThePublishedRange) {
  const auto ceiling = [](const std::string& feed) {
    for (const FeedCeiling& one : feed_ceilings())
      if (one.feed == feed) return one;
    ADD_FAILURE() << feed;
    return FeedCeiling{};
  };
  EXPECT_EQ(ceiling("distillers").percent_bw, 0.5);
  EXPECT_EQ(ceiling("distillers").percent_dm, 20);
  EXPECT_EQ(ceiling("corn_gluten_feed_dry").percent_bw, 0.5);
  EXPECT_EQ(ceiling("soybean_hulls").percent_bw, 0.5);
  EXPECT_EQ(ceiling("wheat_middlings").percent_bw, 0.5);
  EXPECT_EQ(ceiling("corn_cracked").percent_bw, 0.25);
  EXPECT_EQ(ceiling("barley").percent_bw, 0.3);
  EXPECT_EQ(ceiling("wheat_grain").percent_bw, 0.2);
  EXPECT_EQ(ceiling("oats").percent_bw, 0.4);
  EXPECT_EQ(ceiling("beet_pulp_dry").percent_dm, 25);
  EXPECT_EQ(ceiling("whole_cottonseed").percent_bw, 0.5);
  EXPECT_EQ(ceiling("canola_meal").percent_dm, 15);
  EXPECT_EQ(ceiling("corn_gluten_meal_60").percent_dm, 10);
  EXPECT_EQ(ceiling("sugar").percent_dm, 10);
  EXPECT_FALSE(ceiling("residue").percent_bw.has_value());
}

// Range of the collection: 0.3 to 0.7 starch, 0.2 to 0.6 fibre by-products, 0.8 to 1.0 hay.
TEST(Displacement, LeavesProteinFeedsAloneWhereProteinIsShort) {
  EXPECT_EQ(displacement("oilseed_meal").deficit, 0);
  EXPECT_EQ(displacement("grain").low, 0.3);
  EXPECT_EQ(displacement("grain").usual, 0.5);
  EXPECT_EQ(displacement("grain").high, 0.7);
  EXPECT_EQ(displacement("byproduct").usual, 0.3);
  EXPECT_EQ(displacement("grass_hay").low, 0.8);
  EXPECT_EQ(displacement("grass_hay").high, 1.0);
}

TEST(Sources, EveryOneStatesTopicSourceAndStanding) {
  const auto all = sources_in_use();
  std::set<std::string> topics;
  for (const SourceInUse& one : all) {
    topics.insert(one.topic);
    EXPECT_FALSE(one.what.empty());
    EXPECT_FALSE(one.source.empty());
    EXPECT_FALSE(one.status.empty());
    EXPECT_EQ(one.source.find("://"), std::string::npos) << one.source;
  }
  for (const auto* topic : {"requirements_mature_cows", "condition", "intake", "energy",
                            "sampling_error", "safe_use", "seasonal_curves", "feeds"})
    EXPECT_TRUE(topics.contains(topic)) << topic;
}

}  // namespace
}  // namespace pluckbook::test
