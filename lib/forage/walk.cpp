#include "forage/walk.h"

#include <cmath>

#include "forage/bag_reading.h"

namespace pluckbook {
namespace {

constexpr double nineteen_in_twenty = 1.96;  // standard deviations to either side
constexpr double pace_metres = 2.5 * 0.3048;

}  // namespace

WalkPlan plan_walk(double within) {
  const BagError& v = bag_error(DietNutrient::crude_protein);
  WalkPlan plan;
  plan.within = within;
  plan.stop_sd = v.stop_sd;
  plan.trip_sd = v.trip_sd;
  plan.lab_sd = v.lab_sd;
  const double needed = std::pow(nineteen_in_twenty * v.stop_sd / within, 2);
  plan.stops = static_cast<int>(std::ceil(needed - 1e-9));  // 4.0000000001 is 4
  plan.bag_within = nineteen_in_twenty * std::sqrt(bag_variance(v, plan.stops));
  return plan;
}

int paces_between(double walk_metres, int stops) {
  return static_cast<int>(std::lround(walk_metres / stops / pace_metres));
}

}  // namespace pluckbook
