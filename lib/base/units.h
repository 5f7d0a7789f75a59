// units.h - one quantity, one type. Inside the program: kg, Mcal, fractions, money of the book.
// Pounds and percent exist only where text is read or printed; the conversions stand below.
// A product or quotient that makes physical sense is written out; anything else does not compile
// (tests/base/units_test.cpp holds the list of what must not).
#pragma once

#include <compare>

namespace pluckbook {

/// A number of one kind. Adds to and compares with its own kind only.
template <class Kind>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr explicit Quantity(double value) : value_(value) {}
  constexpr double value() const { return value_; }

  constexpr Quantity& operator+=(Quantity o) {
    value_ += o.value_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity o) {
    value_ -= o.value_;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return a += b; }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return a -= b; }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.value_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return a * k; }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.value_ / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  double value_ = 0;
};

using Share = Quantity<struct ShareOfDryMatter>;        // 0.08 = 8 % of dry matter
using DmShare = Quantity<struct DryMatterShareOfFeed>;  // 0.90 = 90 % of the feed as it lies is DM
using KgBody = Quantity<struct KgOfBodyWeight>;
using KgDmPerDay = Quantity<struct KgOfDryMatterPerDay>;
using KgAsFedPerDay = Quantity<struct KgAsFedPerDayKind>;
using KgPerDay = Quantity<struct KgOfNutrientPerDay>;  // protein, TDN, milk, a mineral
using Kg = Quantity<struct KgOfNutrient>;              // of a nutrient over some days
using McalPerDay = Quantity<struct McalPerDayKind>;
using Mcal = Quantity<struct McalKind>;  // of body reserves
using McalPerKgDm = Quantity<struct McalPerKgOfDryMatter>;
using Celsius = Quantity<struct DegreesCelsius>;
using MoneyPerKgAsFed = Quantity<struct MoneyPerKgAsFedKind>;
using MoneyPerKgDm = Quantity<struct MoneyPerKgOfDryMatter>;
using MoneyPerDay = Quantity<struct MoneyPerDayKind>;

constexpr KgPerDay operator*(KgDmPerDay intake, Share share) {
  return KgPerDay(intake.value() * share.value());
}
constexpr Share operator/(KgPerDay amount, KgDmPerDay intake) {
  return Share(amount.value() / intake.value());
}
constexpr McalPerDay operator*(KgDmPerDay intake, McalPerKgDm density) {
  return McalPerDay(intake.value() * density.value());
}
constexpr McalPerKgDm operator/(McalPerDay energy, KgDmPerDay intake) {
  return McalPerKgDm(energy.value() / intake.value());
}
constexpr KgDmPerDay operator*(KgAsFedPerDay feed, DmShare dm) {
  return KgDmPerDay(feed.value() * dm.value());
}
constexpr KgAsFedPerDay operator/(KgDmPerDay matter, DmShare dm) {
  return KgAsFedPerDay(matter.value() / dm.value());
}
constexpr MoneyPerKgDm operator/(MoneyPerKgAsFed price, DmShare dm) {
  return MoneyPerKgDm(price.value() / dm.value());
}
constexpr MoneyPerKgAsFed operator*(MoneyPerKgDm price, DmShare dm) {
  return MoneyPerKgAsFed(price.value() * dm.value());
}
constexpr MoneyPerDay operator*(KgDmPerDay matter, MoneyPerKgDm price) {
  return MoneyPerDay(matter.value() * price.value());
}
constexpr MoneyPerDay operator*(KgAsFedPerDay feed, MoneyPerKgAsFed price) {
  return MoneyPerDay(feed.value() * price.value());
}

// Exact by definition: the international avoirdupois pound (NIST Handbook 44, 2024, appendix C).
inline constexpr double kg_per_lb = 0.45359237;
inline constexpr double kg_per_us_ton = 2000 * kg_per_lb;
inline constexpr double kg_per_cwt = 100 * kg_per_lb;
inline constexpr double kg_per_tonne = 1000;

/// from_lb<KgBody>(1200): for every kind that counts kilograms.
template <class Kilograms>
constexpr Kilograms from_lb(double lb) {
  return Kilograms(lb * kg_per_lb);
}
template <class Kind>
constexpr double in_lb(Quantity<Kind> kilograms) {
  return kilograms.value() / kg_per_lb;
}
constexpr Share from_percent(double percent) {
  return Share(percent / 100);
}
constexpr double in_percent(Share share) {
  return share.value() * 100;
}

/// 32 F is 0 C; a difference of 9 F is one of 5 C. Exact by definition.
inline constexpr double fahrenheit_per_celsius = 1.8;
constexpr Celsius from_fahrenheit(double degrees) {
  return Celsius((degrees - 32) / fahrenheit_per_celsius);
}
constexpr double in_fahrenheit(Celsius temperature) {
  return temperature.value() * fahrenheit_per_celsius + 32;
}

}  // namespace pluckbook
