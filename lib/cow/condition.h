// condition.h - body condition (1 thin to 9 fat) in weight and energy, and what a day's balance of
// net energy does to it. Coefficients, sources and standing: reference/condition.yaml.
#pragma once

#include <optional>

#include "base/units.h"

namespace pluckbook {

/// A cow's weight at a score, from her weight at score 5.
/// Source: fit to the nine read weights of Mississippi State P2508, within their rounding.
/// Requires: score 1 to 9.
KgBody weight_at_score(KgBody at_5, double score);

/// Net energy in her fat and protein at a score.
/// Source: NRC 2000 chapter 3, recalled; the read energies of a score come back within 0.5 Mcal at
/// 1200 lb. Requires: score 1 to 9.
Mcal reserves_at(KgBody at_5, double score);

/// What a day's surplus (positive) or deficit of NEm lays on or takes off: surplus is stored whole,
/// and 1 Mcal of reserves replaces 0.8 Mcal of the diet's. Source: NRC 2000, recalled.
McalPerDay reserve_change(McalPerDay balance);

/// Going from one score to another at a steady balance.
struct ConditionChange {
  Mcal energy;  // of reserves, positive for a gain
  McalPerDay reserves_per_day;
  std::optional<double> days;  // none when the balance goes the other way or is nothing
};
ConditionChange condition_change(KgBody at_5, double from, double to, McalPerDay balance);

/// The score after some days at a steady balance, held between 1 and 9.
double score_after(KgBody at_5, double score, McalPerDay balance, double days);

}  // namespace pluckbook
