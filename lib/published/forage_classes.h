// forage_classes.h - the season's usual course of diet CP and TDN by class of forage, and how far
// pastures, years and weeks stray from it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "numeric/gaussian_process.h"

namespace pluckbook {

struct ForageClass {
  std::string id, name;
  int green_up_day_of_year = 0;
  std::vector<double> days_after_green_up;  // knots, ascending; the curve wraps at 365
  std::vector<double> cp_percent, tdn_percent;
  bool semi_arid = true;  // which set of proposed variances applies
  std::string status, source;
};

const std::vector<ForageClass>& forage_classes();
/// By id; '-', '_' and spaces count alike ("northern mixed-grass"). nullptr when there is none.
const ForageClass* find_forage_class(std::string_view name);
std::vector<std::string> forage_class_names();

/// How one nutrient of the diet strays from the curve, on its scale (log CP or logit TDN).
struct DietVariance {
  Kernel kernel;       // offset: pasture sd; season: curve-level sd; year; wiggle
  double stop_sd = 0;  // one stop; falls with the square root of the stops
  double trip_sd = 0;  // alike on all stops of one trip
  double lab_sd = 0;   // same laboratory as usual
  std::string source, status;
};

enum class DietNutrient { crude_protein, tdn };

/// The published defaults (proposed_defaults and the error model of one bag).
/// kernel.offset combines the pasture sd and the class curve's own uncertainty in quadrature; the
/// season term carries the pasture's own seasonal shape (assumed: half the wiggle, length 1).
const DietVariance& diet_variance(DietNutrient nutrient, bool semi_arid);

}  // namespace pluckbook
