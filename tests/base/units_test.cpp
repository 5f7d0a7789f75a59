#include "base/units.h"

#include <gtest/gtest.h>

#include <functional>
#include <type_traits>

namespace pluckbook {
namespace {

template <class Op, class A, class B>
constexpr bool compiles = std::is_invocable_v<Op, A, B>;

// What must not compile.
static_assert(!compiles<std::plus<>, KgAsFedPerDay, KgDmPerDay>);
static_assert(!compiles<std::plus<>, KgPerDay, KgDmPerDay>);
static_assert(!compiles<std::plus<>, Share, DmShare>);
static_assert(!compiles<std::plus<>, MoneyPerKgAsFed, MoneyPerKgDm>);
static_assert(!compiles<std::multiplies<>, KgAsFedPerDay, Share>);
static_assert(!compiles<std::multiplies<>, KgAsFedPerDay, MoneyPerKgDm>);
static_assert(!compiles<std::multiplies<>, KgDmPerDay, MoneyPerKgAsFed>);
static_assert(!compiles<std::multiplies<>, Share, Share>);
static_assert(!compiles<std::less<>, Share, McalPerKgDm>);
static_assert(!compiles<std::plus<>, Mcal, McalPerDay>);
static_assert(!std::is_convertible_v<double, Share>);
static_assert(!std::is_convertible_v<Share, double>);

// What must, and to what.
static_assert(std::is_same_v<decltype(KgDmPerDay(1) * Share(1)), KgPerDay>);
static_assert(std::is_same_v<decltype(KgAsFedPerDay(1) * DmShare(1)), KgDmPerDay>);
static_assert(std::is_same_v<decltype(KgDmPerDay(1) * MoneyPerKgDm(1)), MoneyPerDay>);
static_assert(std::is_same_v<decltype(KgDmPerDay(1) * McalPerKgDm(1)), McalPerDay>);

TEST(Units, PoundsRoundTrip) {
  for (double lb : {0.0, 0.1, 1.0, 1234.5}) EXPECT_NEAR(in_lb(from_lb<KgBody>(lb)), lb, 1e-12 * lb);
  EXPECT_DOUBLE_EQ(from_lb<KgBody>(1200).value(), 544.310844);  // 1200 x 0.45359237, by hand
}

TEST(Units, PercentRoundTrips) {
  for (double percent : {0.0, 6.4, 101.0})
    EXPECT_DOUBLE_EQ(in_percent(from_percent(percent)), percent);
}

TEST(Units, TemperaturesRoundTrip) {
  for (double degrees : {-40.0, 0.0, 59.0})
    EXPECT_NEAR(in_fahrenheit(from_fahrenheit(degrees)), degrees, 1e-12);
  EXPECT_DOUBLE_EQ(from_fahrenheit(59).value(), 15);
  EXPECT_DOUBLE_EQ(from_fahrenheit(-40).value(), -40);  // the two scales meet
}

TEST(Units, DryMatterAndAsFedAreInverse) {
  const DmShare dm(0.9);
  EXPECT_DOUBLE_EQ((KgDmPerDay(1.8) / dm).value(), 2.0);
  EXPECT_DOUBLE_EQ((KgDmPerDay(1.8) / dm * dm).value(), 1.8);
}

TEST(Units, CostIsTheSamePerKgAsFedOrDry) {
  const DmShare dm(0.9);
  const MoneyPerKgAsFed price(0.36);
  const KgAsFedPerDay fed(2.5);
  EXPECT_DOUBLE_EQ((fed * price).value(), (fed * dm * (price / dm)).value());
}

}  // namespace
}  // namespace pluckbook
