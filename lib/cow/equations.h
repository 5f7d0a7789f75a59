// equations.h - what an animal needs by the published equations alone, every part kept: to stand
// beside the tables, and to serve what the tables do not hold.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "base/problem.h"
#include "cow/animal.h"
#include "cow/energetics.h"
#include "cow/minerals.h"
#include "cow/protein.h"
#include "cow/surroundings.h"

namespace pluckbook {

/// Which published intake equation holds for an animal.
enum class IntakeForm { cow, yearling, calf };  // calf: under 12 months

/// An animal on a day as the equations see it.
struct AnimalState {
  KgBody weight, mature_weight, birth_weight;
  KgPerDay milk, gain;
  double days_pregnant = 0;  // 0: open
  double bred = 0;           // 0 open to 1 bred: moves the cow's intake
  bool milking = false, intact_male = false;
  IntakeForm intake_form = IntakeForm::cow;
};

/// The state of an animal in the settings of the requirement rows: a cow calves on day 282 of
/// gestation and every 366 days, the cow is bred between days 61 and 91.5 after calving, a heifer
/// grows along the published targets (60 % of mature weight at mating, 80 % at first and 92 % at
/// second calving) and gives 74 % of the mature peak milk.
/// Requires: figures an animal can have (see impossible).
AnimalState state_of(const AnimalAt& animal, KgBody mature_weight);

/// What the tables hold fixed and the equations can move. As it stands here: the tables' settings.
struct Circumstances {
  const Breed* breed = nullptr;  // British where none
  double condition = 5;
  Celsius last_month{20};  // mean air temperature of the month before
  McalPerDay activity{0};  // from Activity::counted() or usual_activity()
  Panting panting = Panting::none;
  std::variant<std::monostate, ColdByRule, ColdByHeatBalance> cold;  // one method, never both
};

/// Net energy a day, by use.
struct EnergyNeed {
  Maintenance maintenance;
  McalPerDay milk, pregnancy, activity, heat, cold;
  McalPerDay gain;  // NEg
  McalPerDay nem() const { return maintenance.total() + milk + pregnancy + activity + heat + cold; }
};

/// A day's need by the equations, and the diet that just meets it at the intake they predict.
struct EquationNeed {
  AnimalState state;
  Pregnancy pregnancy;
  Growth growth;
  EnergyNeed energy;
  ProteinNeed protein;
  MineralNeed calcium, phosphorus;
  McalPerKgDm nem_density;  // of that diet
  KgDmPerDay intake;
  Share tdn_chain;  // of that diet by the plain chain
  Share tdn;        // the same as the rows print it
  std::vector<std::string> notes;

  Share crude_protein() const { return protein.crude() / intake; }
  Share calcium_share() const { return calcium.total() / intake; }
  Share phosphorus_share() const { return phosphorus.total() / intake; }
};

/// Dry matter a day that the published equation predicts on a diet of that NEm.
/// Source: NRC 2000 chapter 7, recalled; 48 recalled cow rows come back within 0.05 lb.
KgDmPerDay predicted_intake(const AnimalState& state, McalPerKgDm nem);

/// The whole need of a state. A need that no forage meets (TDN over 85 %) leaves a note.
EquationNeed need_of_state(const AnimalState& state, const Circumstances& circumstances = {});

/// The same for an animal asked about. Fails: figures no animal has; a condition outside 1 to 9; a
/// temperature outside -50 to 50 C, which is one in F.
Result<EquationNeed> need_by_equations(const AnimalAt& animal,
                                       const Circumstances& circumstances = {});

}  // namespace pluckbook
