// condition.h - body condition score (1 thin to 9 fat) in weight and in energy, as printed.
#pragma once

#include "published/requirements.h"

namespace pluckbook {

/// Weight and fat of one cow at each score.
struct ConditionRow {
  int score = 0;
  double fat_percent = 0;     // of empty body
  double weight_percent = 0;  // of the weight at score 5
};

/// Net energy between a score and the one below it; proportional to weight.
struct ConditionEnergyRow {
  int score = 0;
  double weight_at_5_lb = 0;
  double mcal = 0;
};

/// Body composition by score: fat = fat_step CS and protein = protein_at_0 - protein_fall CS of
/// the empty body; weight = weight at 5 / (weight_at_0 - weight_fall CS).
struct ReserveFigures {
  double fat_step, protein_at_0, protein_fall;
  double empty_body;                  // of shrunk weight
  double fat_energy, protein_energy;  // Mcal/kg
  double weight_at_0, weight_fall;
  double diet_of_reserve;  // Mcal of diet NEm that 1 Mcal of reserve replaces
  Citation citation;
};

const ReserveFigures& reserve_figures();
const RequirementTable<ConditionRow>& condition_weights();
const RequirementTable<ConditionEnergyRow>& condition_energy();

}  // namespace pluckbook
