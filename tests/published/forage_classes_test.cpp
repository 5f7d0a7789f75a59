#include "published/forage_classes.h"

#include <cmath>
#include <string_view>

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
  const Kernel& range = find_forage_class("northern_mixed_grass")->variance.kernel;
  EXPECT_DOUBLE_EQ(range.of[0].offset, std::sqrt(0.10 * 0.10 + 0.12 * 0.12));
  EXPECT_DOUBLE_EQ(range.of[0].season, 0.10);
  EXPECT_DOUBLE_EQ(range.of[0].year, 0.15);
  EXPECT_DOUBLE_EQ(range.of[0].wiggle, 0.20);
  EXPECT_DOUBLE_EQ(range.of[1].year, 0.12);
  EXPECT_DOUBLE_EQ(range.season_length, 1);
  EXPECT_DOUBLE_EQ(range.wiggle_length, std::sqrt(90.0 * 80.0));
  EXPECT_DOUBLE_EQ(range.correlation, 0.57);  // computed: 803 clips
  EXPECT_DOUBLE_EQ(range.onset, 10);          // days, recalled
  const Kernel& tame = find_forage_class("bermuda_bahia")->variance.kernel;
  EXPECT_DOUBLE_EQ(tame.of[1].offset, std::sqrt(0.08 * 0.08 + 0.15 * 0.15));
  EXPECT_DOUBLE_EQ(tame.of[1].year, 0.08);
  EXPECT_DOUBLE_EQ(tame.of[1].wiggle, 0.16);
  EXPECT_DOUBLE_EQ(tame.wiggle_length, std::sqrt(120.0 * 80.0));
  EXPECT_DOUBLE_EQ(tame.onset, 15);
}

// The table of sampling_error: sd of log CP by stops, another laboratory's sd 0.045 (computed).
TEST(DietVariance, ErrorOfABagFallsWithStopsAsPublished) {
  const BagError& v = bag_error(DietNutrient::crude_protein);
  EXPECT_DOUBLE_EQ(v.lab_sd, 0.03);
  EXPECT_NEAR(std::hypot(v.lab_sd, v.other_lab_sd), 0.045, 1e-15);
  const std::pair<int, double> table[] = {{1, 0.20}, {5, 0.11}, {10, 0.09}, {15, 0.09}, {40, 0.08}};
  for (const auto& [stops, sd] : table) {
    const double variance = v.stop_sd * v.stop_sd / stops + v.trip_sd * v.trip_sd + 0.045 * 0.045;
    EXPECT_NEAR(std::sqrt(variance), sd, 0.0055) << stops;
  }
  const BagError& tdn = bag_error(DietNutrient::tdn);
  EXPECT_DOUBLE_EQ(tdn.stop_sd, 0.20);
  EXPECT_DOUBLE_EQ(tdn.trip_sd, 0.06);
  EXPECT_DOUBLE_EQ(tdn.lab_sd, 0.04);
}

TEST(EventSd, IsKnownForTheEventsThatSetANewLevel) {
  EXPECT_NEAR(event_sd("rain", DietNutrient::crude_protein), std::log(9.0 / 5.7) / 2, 0.01);
  for (const std::string_view event : {"rain", "fire", "frost"})
    for (const DietNutrient nutrient : diet_nutrients) EXPECT_GT(event_sd(event, nutrient), 0.1);
  EXPECT_EQ(event_sd("green-up", DietNutrient::tdn), 0);
}

// "refit when a user has three or more years of bags": reference/seasonal_curves.yaml.
TEST(RefitRules, AskForThreeYearsOfBags) {
  EXPECT_GE(refit_rules().least_seasons, 3);
  EXPECT_GE(refit_rules().least_bags, 10 * refit_rules().least_seasons);
  EXPECT_DOUBLE_EQ(refit_rules().level[0], 0.12);
  EXPECT_DOUBLE_EQ(refit_rules().level[1], 0.15);
  EXPECT_GT(recorded_green_up_sd(), 0);
}

}  // namespace
}  // namespace pluckbook::test
