#include "report/bill.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

/// 214 USD a ton, 5.25 USD a mile over 190 miles, 24 tons to the truck: 997.50 USD a truck.
struct ByTheMile {
  Quote quote;
  FeedOffer offer;
  ByTheMile() {
    quote.unit = "ton";
    quote.kg_per_unit = kg_per_us_ton;
    quote.load_kg = 24 * kg_per_us_ton;
    quote.a_truck = 5.25 * 190;
    quote.freight = MoneyPerKgAsFed(quote.a_truck / *quote.load_kg);
    offer.id = "hulls";
    offer.cost = DeliveredCost{quote.price, quote.freight, 0, 0, std::nullopt, &quote};
  }
};

TEST(Haul, TheEmptyPartOfTheLastTruckIsPaidBeyondThePrice) {
  const ByTheMile hulls;
  const auto three_tons = haul_of(3 * kg_per_us_ton, hulls.offer);
  ASSERT_TRUE(three_tons);
  EXPECT_EQ(three_tons->trucks, 1);
  EXPECT_EQ(three_tons->each, 99750);
  EXPECT_EQ(three_tons->empty_part, 87281);  // 997.50 x 21 / 24
  const auto thirty_tons = haul_of(30 * kg_per_us_ton, hulls.offer);
  EXPECT_EQ(thirty_tons->trucks, 2);
  EXPECT_EQ(thirty_tons->empty_part, 74813);  // 997.50 x 18 / 24
}

TEST(Haul, FullTrucksAddNothing) {
  const ByTheMile hulls;
  for (const int loads : {1, 2, 7}) {
    const auto haul = haul_of(loads * 24 * kg_per_us_ton, hulls.offer);
    ASSERT_TRUE(haul);
    EXPECT_EQ(haul->trucks, loads);
    EXPECT_EQ(haul->empty_part, 0);
  }
}

TEST(Haul, FreightByWeightKnowsNoTruck) {
  ByTheMile hulls;
  hulls.quote.a_truck = 0;
  EXPECT_FALSE(haul_of(3 * kg_per_us_ton, hulls.offer));
  hulls.offer.cost.reset();
  EXPECT_FALSE(haul_of(3 * kg_per_us_ton, hulls.offer));
}

}  // namespace
}  // namespace pluckbook
