#include "cow/animal.h"

#include <cmath>

#include "base/text.h"

namespace pluckbook {

double rounded_pounds(double kilograms) {
  return std::round(kilograms / kg_per_lb * 1e6) / 1e6;
}

std::optional<Problem> outside(const std::string& what, double value, double low, double high,
                               const std::string& unit) {
  if (value >= low && value <= high) return std::nullopt;
  return input_problem(what + " " + fixed(value, 1) + " " + unit + " is outside " + shortest(low) +
                           " to " + shortest(high) + " " + unit,
                       "check the figure and its unit");
}

std::optional<Problem> impossible(const AnimalAt& animal) {
  const bool breeding =
      animal.cow_class == CowClass::mature_cow || animal.cow_class == CowClass::first_calf_heifer;
  const double least = animal.cow_class == CowClass::mature_cow ? 600 : 200;
  if (auto p = outside("weight", pounds(animal.weight), least, 3000, "lb")) return p;
  if (animal.mature_weight)
    if (auto p = outside("mature weight", pounds(*animal.mature_weight), 600, 3000, "lb")) return p;
  if (auto p = outside("peak milk", pounds(animal.peak_milk), 0, 80, "lb/day")) return p;
  if (auto p = outside("gain", pounds(animal.gain), 0, 5, "lb/day")) return p;
  if (animal.cow_class == CowClass::growing && !animal.mature_weight)
    return input_problem("growing cattle need a mature weight", "write mature_weight: 1200 lb");
  if (!breeding) return std::nullopt;
  return outside("time since calving", animal.days_since_calving, 0, 400, "days");
}

std::string frame_note(double share) {
  return "mature weight was taken as weight / " + fixed(share, 2);
}

KgBody mature_weight_of(const AnimalAt& animal, std::vector<std::string>& notes) {
  if (animal.cow_class == CowClass::mature_cow) return animal.weight;
  if (animal.mature_weight) return *animal.mature_weight;
  if (animal.cow_class == CowClass::bull) {
    notes.push_back("mature weight was taken as 2000 lb (907 kg), that of the bull rows");
    return from_lb<KgBody>(2000);
  }
  const double share =
      animal.cow_class == CowClass::first_calf_heifer ? first_calf_share : bred_share;
  notes.push_back(frame_note(share));
  return animal.weight / share;
}

}  // namespace pluckbook
