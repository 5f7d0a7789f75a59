#include "report/shown.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "base/text.h"
#include "book/market_unit.h"

namespace pluckbook {

std::string mass_unit(const Reader& reader) {
  return reader.units == UnitSystem::us ? "lb" : "kg";
}

double in_mass_unit(double kilograms, const Reader& reader) {
  return reader.units == UnitSystem::us ? kilograms / kg_per_lb : kilograms;
}

double per_mass_unit(double per_kilogram, const Reader& reader) {
  return reader.units == UnitSystem::us ? per_kilogram * kg_per_lb : per_kilogram;
}

SellingUnit selling_unit(const Quote& quote, const Reader& reader) {
  SellingUnit as_quoted{quote.unit, quote.kg_per_unit};
  const auto unit = market_unit(quote.unit);
  const bool counted = unit && std::isdigit(static_cast<unsigned char>(unit->size.front())) != 0;
  if (!unit || counted || !unit->container.empty()) return as_quoted;
  const bool by_the_load = unit->kg >= kg_per_us_ton;
  const bool is_metric = unit->size.find("kg") == 0 || unit->size.find("tonne") == 0;
  if (is_metric == (reader.units == UnitSystem::metric)) return as_quoted;
  if (is_metric)
    return by_the_load ? SellingUnit{"ton", kg_per_us_ton} : SellingUnit{"lb", kg_per_lb};
  return unit->kg > kg_per_lb ? SellingUnit{"tonne", kg_per_tonne} : SellingUnit{"kg", 1};
}

std::string three_figures(double value, int most_decimals) {
  const double size = std::abs(value);
  const int decimals = size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2;
  return fixed(value, std::min(decimals, most_decimals));
}

std::string mass(double kilograms, const Reader& reader) {
  return three_figures(in_mass_unit(kilograms, reader)) + " " + mass_unit(reader);
}

std::string percent(Share share) {
  return fixed(in_percent(share), 1) + " %";
}

std::string in_hundred(double probability) {
  const long rounded = std::lround(probability * 100);
  if (rounded <= 0) return "under 1 in 100";
  if (rounded >= 100) return "over 99 in 100";
  return fmt::format("{} in 100", rounded);
}

std::string in_words(DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? "TDN" : "protein";
}

std::string json_name(DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? "tdn" : "crude_protein";
}

std::string counted(std::size_t count, const std::string& one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string sentence(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

}  // namespace pluckbook
