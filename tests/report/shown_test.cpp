#include "report/shown.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

TEST(Shown, AmountsInTheReadersUnitsToThreeFigures) {
  EXPECT_EQ(mass(1, {UnitSystem::us, "USD"}), "2.20 lb");  // 1 / 0.45359237 = 2.2046
  EXPECT_EQ(mass(1, {UnitSystem::metric, "CAD"}), "1.00 kg");
  EXPECT_EQ(three_figures(12.345), "12.3");
  EXPECT_EQ(three_figures(123.45), "123");
  EXPECT_EQ(three_figures(9.996), "10.0");
}

TEST(Shown, MoneyPerMassGoesTheOtherWay) {
  EXPECT_NEAR(per_mass_unit(1, {UnitSystem::us, "USD"}), 0.45359237, 1e-12);
}

TEST(Shown, ChancesNeverClaimMoreThanTheyKnow) {
  EXPECT_EQ(in_hundred(0.001), "under 1 in 100");
  EXPECT_EQ(in_hundred(0.999), "over 99 in 100");
  EXPECT_EQ(in_hundred(0.77), "77 in 100");
  EXPECT_EQ(in_hundred(1), "over 99 in 100");  // all of a thousand paths
  EXPECT_EQ(in_hundred(0.995), "over 99 in 100");
  EXPECT_EQ(in_hundred(0.994), "99 in 100");
  EXPECT_EQ(in_hundred(0), "under 1 in 100");  // none of them
  EXPECT_EQ(in_hundred(0.0049), "under 1 in 100");
  EXPECT_EQ(in_hundred(0.005), "1 in 100");
}

}  // namespace
}  // namespace pluckbook
