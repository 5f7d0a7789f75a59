// walk.h - how many stops a bag takes before it speaks for its pasture, and what more stops cannot
// mend: the picker's own day and the laboratory.
#pragma once

namespace pluckbook {

/// Shares of the protein in the diet, as on the log scale; 19 times in 20 where a bound is meant.
struct WalkPlan {
  int stops = 0;
  double within = 0;  // what the mean of the stops keeps to
  double stop_sd = 0, trip_sd = 0, lab_sd = 0;
  double bag_within = 0;  // what one bag of so many stops keeps to, all in all
};

/// Stops so that their mean is within a share of the pasture's own mean, 19 times in 20:
/// (1.96 stop_sd / within)^2, rounded up.
/// Requires: within > 0.
/// Source: reference/sampling_error.yaml (computed from single clips of one day; careful for
/// plucks).
WalkPlan plan_walk(double within);

/// Paces from one stop to the next when they part a walk evenly.
/// Source: a pace of 2.5 ft, one step (assumed, common practice).
int paces_between(double walk_metres, int stops);

}  // namespace pluckbook
