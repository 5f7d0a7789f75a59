#include "cow/surroundings.h"

#include <gtest/gtest.h>

namespace pluckbook::test {
namespace {

constexpr KgBody grown_cow = from_lb<KgBody>(1200);

// Read, North Dakota State University: a 1300-lb cow late in pregnancy needs 12.7 lb TDN; at 25 F
// with 20 mph of wind (4 F effective) in a heavy winter coat she stands 14 F under her critical
// 18 F and needs 14 % more: 14.48 lb.
TEST(Cold, TheNorthDakotaExampleComesBack) {
  const ColdByRule cold = cold_by_rule(Coat::dry_heavy_winter, from_fahrenheit(4));
  EXPECT_NEAR(cold.extra_share, 0.14, 1e-12);
  EXPECT_NEAR(12.7 * (1 + cold.extra_share), 14.48, 0.005);
}

// Read, Kansas State 2024: 59, 45, 32 and 18 F.
TEST(Cold, CriticalTemperaturesAreThePrintedOnes) {
  EXPECT_NEAR(in_fahrenheit(cold_by_rule(Coat::wet_or_summer, Celsius(0)).critical), 59, 1e-9);
  EXPECT_NEAR(in_fahrenheit(cold_by_rule(Coat::dry_fall, Celsius(0)).critical), 45, 1e-9);
  EXPECT_NEAR(in_fahrenheit(cold_by_rule(Coat::dry_winter, Celsius(0)).critical), 32, 1e-9);
  EXPECT_NEAR(in_fahrenheit(cold_by_rule(Coat::dry_heavy_winter, Celsius(0)).critical), 18, 1e-9);
  EXPECT_EQ(cold_by_rule(Coat::dry_winter, Celsius(10)).extra_share, 0);
}

ColdByHeatBalance balance(const Exposure& exposure) {
  return cold_by_heat_balance(grown_cow, exposure, McalPerDay(18), McalPerDay(0), 0.6);
}

// NRC 2000 chapter 10 (recalled), worked for 18 Mcal of ME eaten and nothing retained.
TEST(Cold, TheHeatBalanceIsTheWorkedOne) {
  Exposure exposure;
  exposure.air = Celsius(-25);
  const ColdByHeatBalance still = balance(exposure);
  EXPECT_NEAR(still.area_m2, 6.127, 0.001);
  EXPECT_NEAR(still.heat, 2.938, 0.001);
  EXPECT_NEAR(still.tissue, 9.0, 1e-9);
  EXPECT_NEAR(still.coat, 10.775, 1e-9);
  EXPECT_NEAR(still.critical.value(), -10.4, 0.05);
  EXPECT_NEAR(still.me.value(), 4.53, 0.005);
  EXPECT_NEAR(still.nem.value(), 2.72, 0.005);
  exposure.wind_km_h = 30;
  exposure.air = Celsius(-10);
  EXPECT_NEAR(balance(exposure).critical.value(), 4.4, 0.05);
  EXPECT_NEAR(balance(exposure).me.value(), 6.37, 0.01);
}

TEST(Cold, AWetOrSummerCoatIsTheWorkedOne) {
  Exposure wet;
  wet.coat = CoatState::wet;
  EXPECT_NEAR(balance(wet).critical.value(), 3.1, 0.05);
  Exposure summer;
  summer.hair_cm = 0.6;
  EXPECT_NEAR(balance(summer).critical.value(), 1.7, 0.05);
  summer.air = Celsius(15);
  EXPECT_EQ(balance(summer).me.value(), 0);
}

TEST(Cold, InsulationFollowsAgeHideAndMud) {
  Exposure exposure;
  exposure.age = Age::newborn;
  EXPECT_NEAR(balance(exposure).tissue, 2.5, 1e-9);
  exposure.age = Age::one_month;
  EXPECT_NEAR(balance(exposure).tissue, 6.5, 1e-9);
  exposure.age = Age::yearling;
  EXPECT_NEAR(balance(exposure).tissue, 5.1875 + 5 * 0.3125, 1e-9);
  exposure.hide = Hide::thick;
  exposure.coat = CoatState::mud_below;
  EXPECT_NEAR(balance(exposure).coat, 10.775 * 0.8 * 1.2, 1e-9);
  exposure.hide = Hide::thin;
  exposure.coat = CoatState::covered;
  EXPECT_NEAR(balance(exposure).coat, 10.775 * 0.2 * 0.8, 1e-9);
  exposure.wind_km_h = 200;  // the printed line would go below nothing
  EXPECT_EQ(balance(exposure).coat, 0);
}

// NRC 2000 after CSIRO 1990 (recalled), worked: 4.11 Mcal on level ground, 6.06 on bare hills.
TEST(Activity, TheEquationIsTheWorkedOneAndIsHeldToTheCap) {
  const McalPerDay maintenance(8.677);
  const Grazing level{KgDmPerDay(12), from_percent(60), Terrain::level, 2};
  const Grazing hills{KgDmPerDay(12), from_percent(60), Terrain::hilly, 1};
  EXPECT_NEAR(activity_of(grown_cow, level, maintenance).by_equation.value(), 4.11, 0.005);
  EXPECT_NEAR(activity_of(grown_cow, hills, maintenance).by_equation.value(), 6.06, 0.005);
  const Activity capped = activity_of(grown_cow, hills, maintenance);
  EXPECT_TRUE(capped.capped());
  EXPECT_NEAR(capped.counted().value(), 0.2 * 8.677, 1e-9);
  const Grazing little{KgDmPerDay(0), from_percent(60), Terrain::level, 60};
  const Activity small = activity_of(grown_cow, little, maintenance);
  EXPECT_FALSE(small.capped());
  EXPECT_EQ(small.counted(), small.by_equation);
  EXPECT_NEAR(usual_activity(maintenance).value(), 0.8677, 1e-9);
}

TEST(Activity, RollingGroundLiesBetweenLevelAndHilly) {
  const auto on = [](Terrain terrain) {
    return activity_of(grown_cow, {KgDmPerDay(12), from_percent(60), terrain, 2}, McalPerDay(9))
        .by_equation;
  };
  EXPECT_LT(on(Terrain::level), on(Terrain::rolling));
  EXPECT_LT(on(Terrain::rolling), on(Terrain::hilly));
}

// Ribeiro et al. 1977, read: 2 J/kg a metre, 26 J/kg a metre climbed; 5 km and 100 m: 1.64 Mcal.
TEST(Activity, HeatOfWalkingIsTheWorkedOne) {
  EXPECT_NEAR(walking_heat(grown_cow, 5, 100).value(), 1.64, 0.005);
}

// NRC 2000 (recalled): 7 % and 18 %.
TEST(HeatStress, PantingAddsToMaintenance) {
  EXPECT_EQ(heat_stress(McalPerDay(10), Panting::none).value(), 0);
  EXPECT_NEAR(heat_stress(McalPerDay(10), Panting::shallow).value(), 0.7, 1e-9);
  EXPECT_NEAR(heat_stress(McalPerDay(10), Panting::open_mouth).value(), 1.8, 1e-9);
}

}  // namespace
}  // namespace pluckbook::test
