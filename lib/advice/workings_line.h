// workings_line.h - how lines of arithmetic are put together; for workings_*.cpp alone.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "advice/workings.h"

namespace pluckbook {

inline constexpr const char* rumen_source =
    "J. Sprinkle, University of Arizona AZ9523, revised December 2011: the rumen's least (read)";

/// Takes a reader's pounds to the kilograms of an equation, and back.
inline const Figure one_kilogram{"one kg", 1, Measure::one_kilogram};

inline Figure weight(std::string name, KgBody mass) {
  return {std::move(name), mass.value(), Measure::weight};
}
inline Figure matter(std::string name, KgDmPerDay amount) {
  return {std::move(name), amount.value(), Measure::mass_per_day};
}
inline Figure amount(std::string name, KgPerDay mass) {
  return {std::move(name), mass.value(), Measure::mass_per_day};
}
inline Figure share(std::string name, Share of_dry_matter) {
  return {std::move(name), of_dry_matter.value(), Measure::share};
}
inline Figure part_in_percent(std::string name, double fraction) {
  return {std::move(name), fraction, Measure::share};
}
inline Figure percent_of(std::string name, double percent) {
  return {std::move(name), percent / 100, Measure::share};
}
inline Figure energy(std::string name, McalPerDay mcal) {
  return {std::move(name), mcal.value(), Measure::energy};
}
inline Figure density(std::string name, McalPerKgDm mcal) {
  return {std::move(name), mcal.value(), Measure::energy_density};
}
inline Figure bare(std::string name, double number) {
  return {std::move(name), number, Measure::bare};
}

/// A line whose words are the formula with the inputs' names in it; the result is named by it.
WorkingsLine line(std::string quantity, std::string formula, std::vector<Figure> inputs,
                  Figure result, std::string source = "");
/// The same where the names would be too many: the words are given, or none.
WorkingsLine line_in_words(std::string quantity, std::string words, std::string formula,
                           std::vector<Figure> inputs, Figure result, std::string source = "");
WorkingsLine given(Figure figure, std::string source);

/// "{0} x {1} + {2} x {3}" for so many products.
std::string sum_of_products(std::size_t products);

/// "publication; table (status)"
std::string cited(const Citation& citation);

/// The published equations beside a slice's table row.
WorkingsSection equation_workings(const EquationNeed& need, const Need& table,
                                  const std::string& who);

// The parts of the day, in order.
std::vector<WorkingsSection> need_workings(const HerdDay& day);
std::vector<WorkingsSection> intake_workings(const HerdDay& day);
std::vector<WorkingsSection> balance_workings(const HerdDay& day);

}  // namespace pluckbook
