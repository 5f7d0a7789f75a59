// Limits of safe use on minerals, water and whole cottonseed. Limits and their sources:
// reference/safe_use.yaml; the figures here are written out by hand so that a change is seen.
#include "supplement/kept_and_named.h"

namespace pluckbook {
namespace {

/// A mineral-rich feed beside the clean one; grass without a figure is taken at the usual one.
void expect_mineral_held(const std::string& nutrient, double in_feed, double usual, double most,
                         const std::string& words) {
  const auto rich = own("rich cube", 100, {{"cp", 30}, {"tdn", 80}, {nutrient, in_feed}});
  const auto clean = own("clean cube", 2000, {{"cp", 42}, {"tdn", 78}, {nutrient, 0}});
  expect_kept_and_named({words, dormant_day(1.3, 5.5), {rich, clean}, [=](const Fed& f) {
                           const double all = f.forage + f.x[0] + f.x[1];
                           return (usual * f.forage + in_feed * f.x[0] - most * all) / in_feed;
                         }});
}

// Merck Veterinary Manual after NASEM 2016 (read): K 2.0 %, Mg 0.40 %, Cu 40 ppm, Se 5 ppm. Usual
// grass is assumed: 1.2 %, 0.15 %, 8 ppm, 0.2 ppm.
TEST(SafeMinerals, hold_potassium_to_two_percent_of_all_she_eats) {
  expect_mineral_held("k", 8, 1.2, 2.0, "potassium at most 2 % of all she eats");
}
TEST(SafeMinerals, hold_magnesium_to_four_tenths_of_a_percent_of_all_she_eats) {
  expect_mineral_held("mg", 3, 0.15, 0.40, "magnesium at most 0.4 % of all she eats");
}
TEST(SafeMinerals, hold_copper_to_40_ppm_of_all_she_eats) {
  expect_mineral_held("cu", 0.0400, 0.0008, 0.0040, "copper at most 40 ppm of all she eats");
}
TEST(SafeMinerals, hold_selenium_to_5_ppm_of_all_she_eats) {
  expect_mineral_held("se", 0.0060, 0.00002, 0.0005, "selenium at most 5 ppm of all she eats");
}

TEST(SafeMinerals, keep_calcium_under_seven_times_phosphorus) {
  GrazingDay day = dormant_day(1.0, 5.5);
  day.calcium = Share(0.0070);
  day.phosphorus = Share(0.0012);
  const auto limed = own("limed cube", 150, {{"cp", 30}, {"tdn", 70}, {"ca", 6}, {"p", 0.3}});
  const auto even = own("even cube", 900, {{"cp", 30}, {"tdn", 70}, {"ca", 0.8}, {"p", 0.6}});
  expect_kept_and_named(
      {"calcium at most 7 times phosphorus", day, {limed, even}, [](const Fed& f) {
         return 0.0070 * f.forage + 0.06 * f.x[0] + 0.008 * f.x[1] -
                7 * (0.0012 * f.forage + 0.003 * f.x[0] + 0.006 * f.x[1]);
       }});
}

// NDSU Extension (read): sulfate of water; 0.334 of it is sulfur; 0.11 l a day per kg of weight
// (assumed). 550 kg x 0.11 l x 1500 ppm x 0.334 / 1e6 = 0.0303 kg of sulfur a day.
TEST(SafeMinerals, count_the_sulfur_of_the_water) {
  GrazingDay day = dormant_day(1.8, 5.5);
  day.water_sulfate_ppm = 1500;
  EXPECT_NEAR(water_sulfur(day).value(), 0.0303, 5e-5);
  const auto sour = own("sour grains", 100, {{"cp", 30}, {"tdn", 85}, {"fat", 5}, {"s", 0.9}});
  const Case counted{"sulfur at most 0.5 % of all she eats, the water's counted",
                     day,
                     {sour, dear_cube()},
                     [&](const Fed& f) {
                       return 0.0303 - 5e-5 + 0.0015 * f.forage + 0.009 * f.x[0] + 0.003 * f.x[1] -
                              0.005 * (f.forage + f.x[0] + f.x[1]);
                     }};
  expect_kept_and_named(counted);
  day.water_sulfate_ppm.reset();
  EXPECT_FALSE(names(cheapest_mix(day, counted.offers).binding, "sulfur"));
}

// Auburn (read): 6 to 8 lb, heifers and stockers 4 to 5 lb; trade page (read): 15 % of dry matter.
TEST(SafeMinerals, hold_whole_cottonseed_to_pounds_and_to_a_share_of_dry_matter) {
  const auto seed = offer(feed_like("whole cottonseed", 100));
  GrazingDay day = dormant_day(2.3, 5.5);
  day.weight = KgBody(1000);  // half a percent of 1000 kg is more than 8 lb as fed
  day.forage_intake = KgDmPerDay(21);
  day.fat = Share(0.01);
  const double dm = seed.dm.value();
  expect_kept_and_named({"whole cottonseed at most 8 lb (3.62 kg) a day",
                         day,
                         {seed, dear_cube()},
                         [&](const Fed& f) { return f.x[0] - 8 * kg_per_lb * dm; }});
  day.forage_intake = KgDmPerDay(12);
  day.fat = Share(0);
  expect_kept_and_named(
      {"whole cottonseed at most 15 % of all she eats", day, {seed, dear_cube()}, [](const Fed& f) {
         return f.x[0] - 0.15 * (f.forage + f.x[0] + f.x[1]);
       }});
  day.young = true;
  day.weight = KgBody(700);
  expect_kept_and_named({"whole cottonseed at most 5 lb (2.26 kg) a day",
                         day,
                         {seed, dear_cube()},
                         [&](const Fed& f) { return f.x[0] - 5 * kg_per_lb * dm; }});
}

// Half a percent of the weight of a mature cow (trade page and Mississippi State, read).
TEST(SafeMinerals, hold_whole_cottonseed_to_half_a_percent_of_weight) {
  const auto seed = offer(feed_like("whole cottonseed", 100));
  GrazingDay day = dormant_day(1.5, 5.5);
  day.weight = KgBody(450);
  day.forage_intake = KgDmPerDay(16);  // 15 % of it is more than half a percent of her weight
  day.fat = Share(0);
  expect_kept_and_named(
      {"whole cottonseed at most 0.5 % of body weight", day, {seed, dear_cube()}, [](const Fed& f) {
         return f.x[0] - 0.005 * 450;
       }});
}

// Kansas State (read): 0, 20 and 40 % of the degradable protein from urea did no harm.
TEST(SafeMinerals, hold_urea_to_forty_percent_of_the_supplements_degradable_protein) {
  GrazingDay day = dormant_day(0.75, 5.4);
  day.crude_protein = Share(0.04);
  const auto urea = own("urea mix", 100, {{"cp", 100}, {"tdn", 40}, {"npn_cpe", 60}, {"rup", 10}});
  const auto meal = own("meal", 900, {{"cp", 42}, {"tdn", 78}, {"npn_cpe", 0}, {"rup", 40}});
  expect_kept_and_named({"protein from urea at most 40 % of the supplement's degradable protein",
                         day,
                         {urea, meal},
                         [](const Fed& f) {
                           return 0.60 * f.x[0] -
                                  0.40 * (1.00 * 0.90 * f.x[0] + 0.42 * 0.60 * f.x[1]);
                         }});
}

}  // namespace
}  // namespace pluckbook
