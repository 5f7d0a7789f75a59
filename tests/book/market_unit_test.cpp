#include "book/market_unit.h"

#include <gtest/gtest.h>

#include "base/units.h"

namespace pluckbook {
namespace {

TEST(MarketUnit, is_a_mass_or_a_mass_and_what_it_comes_in) {
  const struct {
    const char* text;
    double kg;
    const char *size, *container;
  } known[] = {{"ton", kg_per_us_ton, "ton", ""},
               {"cwt", kg_per_cwt, "cwt", ""},
               {"tonne", 1000, "tonne", ""},
               {"50 lb", 50 * kg_per_lb, "50 lb", ""},
               {"50 lb bag", 50 * kg_per_lb, "50 lb", "bag"},
               {"50 lb bags", 50 * kg_per_lb, "50 lb", "bag"},
               {"56 lb bu", 56 * kg_per_lb, "56 lb", "bushel"},
               {"700 lb bale", 700 * kg_per_lb, "700 lb", "bale"},
               {"25 kg sack", 25, "25 kg", "sack"},
               {"24 ton load", 24 * kg_per_us_ton, "24 ton", "load"}};
  for (const auto& one : known) {
    SCOPED_TRACE(one.text);
    const auto unit = market_unit(one.text);
    ASSERT_TRUE(unit);
    EXPECT_DOUBLE_EQ(unit->kg, one.kg);
    EXPECT_EQ(unit->size, one.size);
    EXPECT_EQ(unit->container, one.container);
  }
}

TEST(MarketUnit, is_nothing_without_a_weight) {
  for (const char* text : {"bag", "bale", "scoop", "50 scoops", "lb bag", "50 lb scoop", ""})
    EXPECT_FALSE(market_unit(text)) << text;
  EXPECT_EQ(container_in("bales"), "bale");
  EXPECT_EQ(container_in("scoop"), "");
}

}  // namespace
}  // namespace pluckbook
