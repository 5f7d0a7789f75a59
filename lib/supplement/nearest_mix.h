// nearest_mix.h - when the needs cannot all be met: how near one can come with every safe-use limit
// kept, and which limit stands in the way.
#pragma once

#include <string>
#include <vector>

#include "supplement/least_amounts.h"
#include "supplement/least_cost.h"

namespace pluckbook {

struct NearestMix {
  LpStatus status = LpStatus::not_trusted;
  double shortfall = 0;         // sum over the needs of the share of each that is missing
  LpAnswer answer;              // x: the model's columns first, then one shortfall a need
  std::vector<double> missing;  // one a row of the model; 0 where met
  std::string in_the_way, what_helps;
};

/// Least total relative shortfall first, then least cost. Safety, capacity and labels stay hard.
NearestMix nearest_mix(const SupplementModel& model);

}  // namespace pluckbook
