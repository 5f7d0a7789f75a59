#include "report/figures.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace pluckbook {
namespace {

int decimals_of(Measure measure) {
  switch (measure) {
    case Measure::weight:
    case Measure::mass_per_day:
    case Measure::share:
    case Measure::energy:
    case Measure::kilograms:
    case Measure::kilograms_per_day:
    case Measure::as_printed:
      return 3;
    case Measure::energy_density:
      return 4;
    case Measure::one_kilogram:
    case Measure::bare:
      break;
  }
  return 5;
}

std::string number_text(double value, int decimals) {
  const double scale = std::pow(10, decimals - 1);
  const double short_value = std::round(value * scale) / scale;
  const bool exact = std::abs(value - short_value) < 1e-9 * std::max(1.0, std::abs(value));
  return exact ? shortest(short_value) : fixed(value, decimals);
}

}  // namespace

std::string unit_of(const Figure& figure, const Reader& reader) {
  switch (figure.measure) {
    case Measure::weight:
    case Measure::mass_per_day:
    case Measure::one_kilogram:
      return mass_unit(reader);
    case Measure::share:
      return "%";
    case Measure::energy:
      return "Mcal";
    case Measure::energy_density:
      return "Mcal/kg";
    case Measure::kilograms:
    case Measure::kilograms_per_day:
      return "kg";
    case Measure::as_printed:
      return figure.unit;
    case Measure::bare:
      break;
  }
  return "";
}

double in_reader_units(const Figure& figure, const Reader& reader) {
  switch (figure.measure) {
    case Measure::weight:
    case Measure::mass_per_day:
    case Measure::one_kilogram:
      return in_mass_unit(figure.value, reader);
    case Measure::share:
      return figure.value * 100;
    default:
      return figure.value;
  }
}

std::string figure_text(const Figure& figure, const Reader& reader) {
  const std::string unit = unit_of(figure, reader);
  return number_text(in_reader_units(figure, reader), decimals_of(figure.measure)) +
         (unit.empty() ? "" : " " + unit);
}

std::string numbers_text(const WorkingsLine& line, const Reader& reader) {
  std::vector<std::string> numbers;
  for (const Figure& input : line.inputs) numbers.push_back(figure_text(input, reader));
  return filled(line.formula, numbers);
}

}  // namespace pluckbook
