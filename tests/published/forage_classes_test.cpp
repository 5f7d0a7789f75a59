#include "published/forage_classes.h"

#include <cmath>

#include "published/tsv.h"

namespace pluckbook::test {
namespace {

const ForageClass& class_named(const std::string& id) {
  const ForageClass* found = find_forage_class(id);
  EXPECT_NE(found, nullptr) << id;
  return found != nullptr ? *found : forage_classes().front();
}

TEST(ForageClasses, CurvesAreTheCollectedOnes) {
  const auto copies = read_tsv("curves");
  ASSERT_EQ(copies.size(), 13U + 12U * 2U * 17U);
  for (const TsvRow& copy : copies) {
    SCOPED_TRACE(copy.at("id") + " " + copy.at("key") + " " + copy.at("knot"));
    const ForageClass& forage = class_named(copy.at("id"));
    const double value = number(copy, "value");
    if (copy.at("key") == "green_up") {
      EXPECT_EQ(forage.green_up_day_of_year, value);
      continue;
    }
    const auto& curve = copy.at("key") == "cp" ? forage.cp_percent : forage.tdn_percent;
    EXPECT_EQ(curve.at(static_cast<std::size_t>(number(copy, "knot")) - 1), value);
  }
}

TEST(ForageClasses, ThirteenClassesShareSeventeenKnots) {
  const std::vector<double> knots{0,   15,  30,  45,  60,  75,  90,  105, 120,
                                  150, 180, 210, 240, 270, 300, 330, 350};
  ASSERT_EQ(forage_classes().size(), 13U);
  for (const ForageClass& forage : forage_classes()) {
    EXPECT_EQ(forage.days_after_green_up, knots);
    EXPECT_EQ(forage.status, "computed");
    EXPECT_FALSE(forage.source.empty());
  }
}

// Facts give Florida by months (read); the knots are read off them by straight lines between
// mid-months, which a day that is a mid-month shows best.
TEST(ForageClasses, FloridaKnotsLieOnItsMonthlyFigures) {
  const ForageClass& florida = class_named("florida native range");
  ASSERT_EQ(florida.green_up_day_of_year, 45);  // 14 February, the middle of the month: 7.0 %
  EXPECT_EQ(florida.cp_percent[0], 7.0);
  EXPECT_EQ(florida.cp_percent[2], 7.8);          // day 75, mid March
  EXPECT_EQ(florida.cp_percent[4], 8.0);          // day 105, mid April
  EXPECT_NEAR(florida.cp_percent[8], 8.5, 0.05);  // day 165, mid June
  EXPECT_EQ(florida.cp_percent[14], 6.2);         // day 345: 26 of 30.5 days from 6.7 to 6.1
  EXPECT_EQ(florida.tdn_percent[0], 44);          // winter
  EXPECT_EQ(florida.tdn_percent[9], 52);          // day 195, summer
}

TEST(ForageClasses, AreFoundAsPeopleWriteThem) {
  EXPECT_NE(find_forage_class("northern mixed-grass"), nullptr);
  EXPECT_NE(find_forage_class("Tall Fescue"), nullptr);
  EXPECT_EQ(find_forage_class("moss"), nullptr);
  for (const std::string& name : forage_class_names())
    EXPECT_NE(find_forage_class(name), nullptr) << name;
}

TEST(DietVariance, CombinesPublishedDefaultsAsTheHeaderSays) {
  const DietVariance& protein = diet_variance(DietNutrient::crude_protein, true);
  EXPECT_DOUBLE_EQ(protein.kernel.offset, std::sqrt(0.10 * 0.10 + 0.12 * 0.12));
  EXPECT_DOUBLE_EQ(protein.kernel.season, 0.10);
  EXPECT_DOUBLE_EQ(protein.kernel.season_length, 1);
  EXPECT_DOUBLE_EQ(protein.kernel.year, 0.15);
  EXPECT_DOUBLE_EQ(protein.kernel.wiggle, 0.20);
  EXPECT_DOUBLE_EQ(protein.kernel.wiggle_length, 90);
  const DietVariance& tdn = diet_variance(DietNutrient::tdn, false);
  EXPECT_DOUBLE_EQ(tdn.kernel.offset, std::sqrt(0.08 * 0.08 + 0.15 * 0.15));
  EXPECT_DOUBLE_EQ(tdn.kernel.year, 0.08);
  EXPECT_DOUBLE_EQ(tdn.kernel.wiggle, 0.16);
  EXPECT_DOUBLE_EQ(tdn.kernel.wiggle_length, 80);
  EXPECT_DOUBLE_EQ(diet_variance(DietNutrient::crude_protein, false).kernel.wiggle_length, 120);
  EXPECT_DOUBLE_EQ(diet_variance(DietNutrient::tdn, true).kernel.year, 0.12);
}

// The table of sampling_error: sd of log CP by stops, another laboratory's sd 0.045 (computed).
TEST(DietVariance, ErrorOfABagFallsWithStopsAsPublished) {
  const DietVariance& v = diet_variance(DietNutrient::crude_protein, true);
  EXPECT_DOUBLE_EQ(v.lab_sd, 0.03);
  const std::pair<int, double> table[] = {{1, 0.20}, {5, 0.11}, {10, 0.09}, {15, 0.09}, {40, 0.08}};
  for (const auto& [stops, sd] : table) {
    const double variance = v.stop_sd * v.stop_sd / stops + v.trip_sd * v.trip_sd + 0.045 * 0.045;
    EXPECT_NEAR(std::sqrt(variance), sd, 0.0055) << stops;
  }
  const DietVariance& tdn = diet_variance(DietNutrient::tdn, true);
  EXPECT_DOUBLE_EQ(tdn.stop_sd, 0.20);
  EXPECT_DOUBLE_EQ(tdn.trip_sd, 0.06);
  EXPECT_DOUBLE_EQ(tdn.lab_sd, 0.04);
}

}  // namespace
}  // namespace pluckbook::test
