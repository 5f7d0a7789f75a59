#include "forage/walk.h"

#include <cmath>

#include "published/forage_classes.h"

namespace pluckbook {
namespace {

constexpr double nineteen_in_twenty = 1.96;  // standard deviations to either side
constexpr double pace_metres = 2.5 * 0.3048;

}  // namespace

WalkPlan plan_walk(double within) {
  // The error of a bag is the same in either kind of range; only how pastures stray differs.
  const DietVariance& v = diet_variance(DietNutrient::crude_protein, true);
  WalkPlan plan;
  plan.within = within;
  plan.stop_sd = v.stop_sd;
  plan.trip_sd = v.trip_sd;
  plan.lab_sd = v.lab_sd;
  const double needed = std::pow(nineteen_in_twenty * v.stop_sd / within, 2);
  plan.stops = static_cast<int>(std::ceil(needed - 1e-9));  // 4.0000000001 is 4
  plan.bag_within = nineteen_in_twenty * std::sqrt(v.stop_sd * v.stop_sd / plan.stops +
                                                   v.trip_sd * v.trip_sd + v.lab_sd * v.lab_sd);
  return plan;
}

int paces_between(double walk_metres, int stops) {
  return static_cast<int>(std::lround(walk_metres / stops / pace_metres));
}

}  // namespace pluckbook
