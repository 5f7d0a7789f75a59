#include "forage/footing.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "book/lab_values.h"

namespace pluckbook {
namespace {

using Values = std::map<std::string, double>;

LabResult page(Values values, Basis basis = Basis::dry_matter) {
  LabResult result;
  result.received = Date(2026, 6, 25);
  result.basis = basis;
  result.values = std::move(values);
  result.origin = {"samples/2026/north.yaml", 14, 1};
  return result;
}

FootedResult footed(Values values, Basis basis = Basis::dry_matter) {
  auto result = on_dry_matter(page(std::move(values), basis));
  EXPECT_TRUE(result.ok()) << (result.ok() ? "" : to_text(result.problems()[0]));
  return result.ok() ? *std::move(result) : FootedResult{};
}

std::string refusal(Values values, Basis basis = Basis::dry_matter) {
  const auto result = on_dry_matter(page(std::move(values), basis));
  return result.ok() ? "" : result.problems().front().what;
}

// Examples as printed, exact values computed: hay and haylage, Bactawar, Union County extension
// (read; it truncates, so 0.1 is allowed); grass pasture, Oregon State ANS 312 course text (read).
TEST(Footing, AsReceivedGoesToDryMatterLikeThePrintedExamples) {
  struct Example {
    double dm, cp, printed, exact;
  };
  for (const Example& e :
       {Example{90, 14, 15.5, 15.5556}, Example{40, 8, 20, 20}, {20, 4, 20, 20}}) {
    const FootedResult result = footed({{"dm", e.dm}, {"cp", e.cp}}, Basis::as_received);
    EXPECT_NEAR(in_percent(result.crude_protein->value), e.printed, 0.1);
    EXPECT_NEAR(in_percent(result.crude_protein->value), e.exact, 1e-4);
  }
}

TEST(Footing, SaysHowAFigureWasGot) {
  EXPECT_EQ(footed({{"cp", 6.4}}).crude_protein->how, "as printed");
  EXPECT_EQ(footed({{"dm", 91.5}, {"cp", 6.4}}, Basis::as_received).crude_protein->how,
            "6.4 % as received / 0.915");
}

TEST(Footing, FiguresOnDryMatterStayAsTheyAreWhateverTheDryMatter) {
  const FootedResult result = footed({{"dm", 92.1}, {"cp", 10.4}, {"tdn", 60.1}});
  EXPECT_DOUBLE_EQ(in_percent(result.crude_protein->value), 10.4);
  EXPECT_DOUBLE_EQ(in_percent(result.tdn->value), 60.1);
  EXPECT_EQ(result.tdn->extra_sd, 0);
  EXPECT_TRUE(result.warnings.empty());
}

TEST(Footing, EveryShareIsPutOnDryMatter) {
  const FootedResult result = footed(
      {{"dm", 50}, {"adf", 19}, {"ndf", 31}, {"ash", 4}, {"fat", 1}, {"ca", 0.2}, {"p", 0.1}},
      Basis::as_received);
  EXPECT_DOUBLE_EQ(result.adf->value(), 0.38);
  EXPECT_DOUBLE_EQ(result.ndf->value(), 0.62);
  EXPECT_DOUBLE_EQ(result.ash->value(), 0.08);
  EXPECT_DOUBLE_EQ(result.fat->value(), 0.02);
  EXPECT_DOUBLE_EQ(result.calcium->value(), 0.004);
  EXPECT_DOUBLE_EQ(result.phosphorus->value(), 0.002);
}

// The most careful guide's caution begins at 700 ppm NO3-N: Beck, Oklahoma State (read).
TEST(Footing, NitrateNIsPutOnDryMatterAndHeldAgainstItsOwnUnit) {
  EXPECT_DOUBLE_EQ(*footed({{"nitrate_n_ppm", 400}, {"dm", 50}}, Basis::as_received).nitrate_n_ppm,
                   800);
  EXPECT_TRUE(footed({{"nitrate_n_ppm", 700}}).warnings.empty());
  const FootedResult high = footed({{"nitrate_n_ppm", 701}});
  ASSERT_EQ(high.warnings.size(), 1U);
  EXPECT_EQ(high.warnings[0].what,
            "nitrate N 701 ppm is unusual: 0 to 700 ppm is what forage mostly holds");
  EXPECT_NE(high.warnings[0].remedy.find("veterinarian"), std::string::npos);
}

// TDN = 88.9 - 0.779 ADF: "RFV vs RFQ", 14 Feb 2008, and Manitoba Agriculture (read); the column
// for E1 of ADF 25 to 50 computed from it.
TEST(Footing, PredictsTdnFromAdfWhereTheLaboratoryGivesNone) {
  const std::vector<std::pair<double, double>> column = {
      {25, 69.4}, {30, 65.5}, {35, 61.6}, {38, 59.3}, {40, 57.7}, {45, 53.9}, {50, 50.0}};
  for (const auto& [adf, tdn] : column) {
    const FootedResult result = footed({{"adf", adf}});
    EXPECT_NEAR(in_percent(result.tdn->value), tdn, 0.1) << "ADF " << adf;
    EXPECT_FALSE(result.tdn->source.empty());
    // Five points either way (assumed, from the spread of the equations) on the logit scale.
    const double t = result.tdn->value.value();
    EXPECT_NEAR(result.tdn->extra_sd, 0.05 / (t * (1 - t)), 1e-12);
  }
  EXPECT_EQ(footed({{"adf", 38}}).tdn->how, "TDN = 88.9 - 0.779 ADF (E1), ADF 38.0 %");
}

TEST(Footing, SaysWhenAdfIsOutsideWhatTheEquationWasWrittenFor) {
  EXPECT_TRUE(footed({{"adf", 45}}).warnings.empty());
  const FootedResult result = footed({{"adf", 48}});
  ASSERT_EQ(result.warnings.size(), 1U);
  EXPECT_EQ(
      result.warnings[0].what,
      "TDN is predicted from ADF 48.0 %, outside the 25 to 45 % the equation was written for");
}

TEST(Footing, TheLaboratorysTdnWinsOverTheEquation) {
  const FootedResult near = footed({{"adf", 36.2}, {"tdn", 60.1}});
  EXPECT_DOUBLE_EQ(in_percent(near.tdn->value), 60.1);
  EXPECT_TRUE(near.warnings.empty());
  const FootedResult far = footed({{"adf", 36.2}, {"tdn", 50}});  // E1 says 60.7
  EXPECT_DOUBLE_EQ(in_percent(far.tdn->value), 50);
  ASSERT_EQ(far.warnings.size(), 1U);
  EXPECT_EQ(far.warnings[0].severity, Severity::warning);
}

TEST(Footing, WithoutFibreOrTdnThereIsNoEnergy) {
  EXPECT_FALSE(footed({{"cp", 9}}).tdn.has_value());
  EXPECT_FALSE(footed({{"tdn", 60}}).crude_protein.has_value());
}

TEST(Footing, RefusesAsReceivedWithoutDryMatter) {
  EXPECT_EQ(refusal({{"cp", 9}}, Basis::as_received),
            "figures as received, and no dry matter to put them on");
}

TEST(Footing, RefusesPartsGreaterThanTheirWhole) {
  EXPECT_EQ(refusal({{"adf", 61}, {"ndf", 36}}),
            "ADF 61.0 % is not below NDF 36.0 %, of which it is a part");
  EXPECT_NE(refusal({{"adf", 36}, {"ndf", 36}}), "");
  EXPECT_NE(refusal({{"adf", 30}, {"lignin", 40}}), "");
  EXPECT_NE(refusal({{"cp", 4}, {"adicp", 5}}), "");
  EXPECT_NE(refusal({{"lignin_of_ndf", 45}, {"ndf", 60}, {"adf", 26}}), "");  // 27 % over ADF
}

// Limits as they stand in the book's table of analytes, each tested on both sides.
TEST(Footing, RefusesWhatNoForageHoldsAndWarnsOfWhatFewDo) {
  for (const Analyte& analyte : analytes()) {
    const std::string id(analyte.name);
    const auto warned = [&](double v) {
      const auto result = on_dry_matter(page({{id, v}}));
      return result.ok() && !result->warnings.empty();
    };
    EXPECT_EQ(refusal({{id, analyte.refuse_low}}), "") << id;
    EXPECT_EQ(refusal({{id, analyte.refuse_high}}), "") << id;
    EXPECT_NE(refusal({{id, analyte.refuse_low - 0.001}}), "") << id;
    EXPECT_NE(refusal({{id, analyte.refuse_high + 0.001}}), "") << id;
    if (analyte.warn_low > analyte.refuse_low) {
      EXPECT_TRUE(warned(analyte.warn_low - 0.001)) << id;
    }
    if (analyte.warn_high < analyte.refuse_high) {
      EXPECT_TRUE(warned(analyte.warn_high + 0.001)) << id;
    }
  }
  EXPECT_EQ(plausible_range("cp")->warn_low, 2);
  EXPECT_FALSE(plausible_range("sawdust").has_value());
}

TEST(Footing, TheRangesAreOrderedAndTakeInWhatWasRead) {
  const auto takes_in = [](const char* id, double seen) {
    const PlausibleRange r = plausible_range(id).value();
    EXPECT_LE(r.refuse_low, r.warn_low) << id;
    EXPECT_GE(r.refuse_high, r.warn_high) << id;
    EXPECT_LE(r.warn_low, seen) << id;
    EXPECT_GE(r.warn_high, seen) << id;
  };
  takes_in("cp", 2.5);    // dry-season tropical diets, Coates and Dixon 2008 (read)
  takes_in("cp", 26.9);   // hand-plucked ryegrass-clover, Machado et al. 2005 (read)
  takes_in("tdn", 52.3);  // Coastal bermudagrass hay, J. Dairy Sci. 1964, 47:865 (read)
  takes_in("p", 0.41);    // the same
  takes_in("mg", 0.22);   // the same
  takes_in("adf", 35);    // alfalfa over market grades, USDA hay guidelines (read)
  takes_in("dm", 20);     // grass at cutting, tein.net, "What the analysis means" (read)
}

TEST(Footing, ReadsTheRefusalAloudWithPlaceAndRemedy) {
  const auto text_of = [](Values values) {
    return to_text(on_dry_matter(page(std::move(values))).problems().front());
  };
  EXPECT_EQ(text_of({{"cp", 84}}),
            "samples/2026/north.yaml:14:1: crude protein 84 % is outside 0.5 to 45 %\n"
            "  If the laboratory printed g/kg, or the point slipped, write 8.4.\n");
  EXPECT_EQ(text_of({{"cp", 0.084}}),
            "samples/2026/north.yaml:14:1: crude protein 0.084 % is outside 0.5 to 45 %\n"
            "  If the laboratory printed a fraction, write 8.4.\n");
  EXPECT_EQ(text_of({{"p", 800}}),
            "samples/2026/north.yaml:14:1: phosphorus 800 % is outside 0.01 to 1.5 %\n"
            "  If the laboratory printed ppm, write 0.08.\n");
}

TEST(Footing, ListsEveryRefusalAtOnce) {
  EXPECT_EQ(on_dry_matter(page({{"cp", 84}, {"tdn", 6}, {"ndf", 60}})).problems().size(), 2U);
}

TEST(Footing, WarnsWhenThePartsAddUpToMoreThanTheWhole) {
  EXPECT_TRUE(footed({{"cp", 20}, {"ndf", 70}, {"fat", 3}, {"ash", 10}}).warnings.empty());
  const FootedResult over = footed({{"cp", 20.1}, {"ndf", 70}, {"fat", 3}, {"ash", 10}});
  ASSERT_EQ(over.warnings.size(), 1U);
  EXPECT_EQ(over.warnings[0].what, "protein, NDF, fat and ash add up to 103.1 % of dry matter");
}

// Available protein = CP less bound protein: NDSU AS-1080, May 1994 (read).
TEST(Footing, AvailableAndBoundProteinMakeCrudeProteinWhereThePageHasNone) {
  const FootedResult result = footed({{"available_cp", 9.1}, {"adicp", 0.9}});
  EXPECT_NEAR(in_percent(result.crude_protein->value), 10.0, 1e-9);
  EXPECT_EQ(result.crude_protein->how, "available 9.1 % + bound 0.9 %");
}

TEST(Footing, AdjustedOrAvailableProteinAloneIsNotTakenForCrudeProtein) {
  const FootedResult result = footed({{"adjusted_cp", 9.1}});
  EXPECT_FALSE(result.crude_protein.has_value());
  EXPECT_EQ(result.notes.size(), 1U);
  EXPECT_TRUE(footed({{"available_cp", 9.1}, {"cp", 9.5}}).notes.empty());
}

// A share of protein, of NDF or of what was eaten is the same whatever the basis of the page.
TEST(Footing, SharesOfSomethingElseAreNotDividedByDryMatter) {
  const FootedResult result =
      footed({{"dm", 50}, {"cp", 5}, {"rdp_of_cp", 62}, {"domd", 60}}, Basis::as_received);
  EXPECT_DOUBLE_EQ(result.degradable->value(), 0.62);
  EXPECT_EQ(result.tdn->method, "DOMD");
  EXPECT_NEAR(in_percent(result.tdn->value), 60.6, 0.1);
}

TEST(Footing, TheWayTdnWasGotIsStoredWithIt) {
  EXPECT_EQ(footed({{"tdn", 60}}).tdn->method, "laboratory");
  EXPECT_EQ(footed({{"adf", 38}}).tdn->method, "E1");
  LabResult said = page({{"tdn", 60}});
  said.tdn_by = "summative";
  EXPECT_EQ(on_dry_matter(said)->tdn->method, "laboratory, summative");
}

TEST(Footing, EveryWayToTdnThatThePageAllowsIsKept) {
  const FootedResult result = footed({{"tdn", 60}, {"adf", 38}, {"nem", 1.3}});
  ASSERT_EQ(result.energy.size(), 3U);
  EXPECT_EQ(result.energy[1].method, "NEm");
  EXPECT_EQ(result.energy[2].method, "E1");
}

}  // namespace
}  // namespace pluckbook
