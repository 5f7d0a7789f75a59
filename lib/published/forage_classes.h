// forage_classes.h - the season's usual course of diet CP and TDN by class of forage, and how far
// pastures, years and weeks stray from it.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/gaussian_process.h"

namespace pluckbook {

enum class DietNutrient { crude_protein, tdn };
inline constexpr std::array diet_nutrients = {DietNutrient::crude_protein, DietNutrient::tdn};

/// The series of a nutrient in a kernel, and its place in a pair.
constexpr std::size_t series_of(DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? 1 : 0;
}

/// How far one bag strays from the pasture's diet, on the nutrient's scale.
struct BagError {
  double stop_sd = 0;       // one stop; falls with the square root of the stops
  double trip_sd = 0;       // alike on all stops of one trip
  double lab_sd = 0;        // a laboratory against itself
  double other_lab_sd = 0;  // what one laboratory as a whole stands off another
};
const BagError& bag_error(DietNutrient nutrient);

/// How the diet strays from the usual course of its class, log CP and logit TDN together.
struct DietVariance {
  /// offset combines the pasture sd and the class curve's own uncertainty in quadrature; season is
  /// the pasture's own seasonal shape (assumed: half the wiggle, length 1); the wiggle's length is
  /// the geometric mean of the two nutrients' lengths.
  Kernel kernel;
  std::string source, status;
};

struct ForageClass {
  std::string id, name;
  int green_up_day_of_year = 0;
  std::vector<double> days_after_green_up;  // knots, ascending; the curve wraps at 365
  std::vector<double> cp_percent, tdn_percent;
  DietVariance variance;
  std::string status, source;
};

const std::vector<ForageClass>& forage_classes();
/// By id; '-', '_' and spaces count alike ("northern mixed-grass"). nullptr when there is none.
const ForageClass* find_forage_class(std::string_view name);
std::vector<std::string> forage_class_names();

/// When a book's own bags refit the published variances, and how firmly the published ones hold
/// against them: sd of each parameter about its published value.
struct RefitRules {
  int least_bags = 0, least_seasons = 0;  // of one class in the book
  int most_years = 0;                     // heard of a pasture, the newest
  int most_pastures = 0;  // heard of a class, those sampled in most years: more teach little
  int most_bags = 0, most_bags_of_a_pasture = 0;  // heard
  double log_sd = 0, log_length = 0, atanh_correlation = 0, depth = 0;
  std::array<double, 2> level{};
};
const RefitRules& refit_rules();

/// How well a green-up that was written down is known, in days.
double recorded_green_up_sd();

/// How far an event ("rain", "fire", "frost") moves the diet, on the scale; 0 for any other.
double event_sd(std::string_view event, DietNutrient nutrient);

}  // namespace pluckbook
