// minerals.h - calcium and phosphorus by the published equations, in their parts.
#pragma once

#include "cow/energetics.h"

namespace pluckbook {

/// What a day uses of a mineral, and how much must be eaten for it. kg a day.
struct MineralNeed {
  KgPerDay body, milk, gain, conceptus;
  double absorbed = 1;  // share of what is eaten
  KgPerDay total() const { return (body + milk + gain + conceptus) / absorbed; }
};

/// What the amounts depend on.
struct MineralUse {
  KgBody weight;
  KgPerDay milk;
  KgPerDay net_protein_gain;
  KgBody birth_weight;
  double days_pregnant = 0;
};

/// The conceptus counts in the last 90 days of 282. The published step is taken in a line over its
/// first 21 days, so that need is continuous in date (assumed: ours); the rows stand outside them.
/// Source: NRC 2000 chapter 5, recalled; they reproduce the tables' shares to 0.01 %.
MineralNeed calcium_need(const MineralUse& use);
MineralNeed phosphorus_need(const MineralUse& use);

}  // namespace pluckbook
