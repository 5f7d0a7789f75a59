// animal.h - one animal at one point in time, as it is asked about, before any table or equation.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/units.h"
#include "book/records.h"

namespace pluckbook {

/// One animal at one point: for `need --weight --milk --month`.
struct AnimalAt {
  CowClass cow_class = CowClass::mature_cow;
  KgBody weight;  // cows: mature weight
  std::optional<KgBody> mature_weight;
  KgPerDay peak_milk;
  KgPerDay gain;
  double days_since_calving = 30.5;  // cows; bred heifers: days pregnant
  bool milking = true;
};

/// A figure outside its limits, with both in its own unit: "peak milk 400.0 lb/day is outside 0 to
/// 80 lb/day".
std::optional<Problem> outside(const std::string& what, double value, double low, double high,
                               const std::string& unit);

/// The first figure that no animal of the class has.
std::optional<Problem> impossible(const AnimalAt& animal);

/// Mature weight as given; else a heifer's weight / 0.86 (first calf) or / 0.70 (bred), the middle
/// of the published targets, and 2000 lb for a bull; the notes say which.
KgBody mature_weight_of(const AnimalAt& animal, std::vector<std::string>& notes);

/// Share of mature weight at which a heifer is taken to stand when only her weight is known.
inline constexpr double first_calf_share = 0.86, bred_share = 0.70;
std::string frame_note(double share);

/// Pounds without the dust of the way through kilograms: 1200 lb is 1200 lb.
double rounded_pounds(double kilograms);
template <class Kind>
double pounds(Quantity<Kind> mass) {
  return rounded_pounds(mass.value());
}

}  // namespace pluckbook
