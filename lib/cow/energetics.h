// energetics.h - maintenance, milk, pregnancy and growth by the published equations, each kept in
// its parts. Weights are what the equations take as shrunk body weight. Coefficients, sources and
// standing: reference/energetics.yaml.
#pragma once

#include "base/units.h"
#include "published/energetics.h"

namespace pluckbook {

/// Weight^0.75, kg^0.75.
double metabolic_size(KgBody weight);

/// What moves maintenance beside weight. As it stands here: what the requirement rows assume.
struct MaintenanceSetting {
  const Breed* breed = nullptr;  // British where none
  bool milking = false, intact_male = false;
  double condition = 5;
  Celsius last_month{20};  // mean air temperature of the month before
};

/// Net energy for maintenance: size x (base x breed x milking x condition x sex + cold).
struct Maintenance {
  double size = 0;                                        // kg^0.75
  double base = 0;                                        // Mcal per kg^0.75
  double breed = 1, milking = 1, condition = 1, sex = 1;  // factors
  double cold = 0;                                        // Mcal per kg^0.75; negative when warm
  McalPerDay total() const {
    return McalPerDay(size * (base * breed * milking * condition * sex + cold));
  }
};
/// Source: NRC 2000 chapters 1 and 10, recalled; base read (Oltjen 2019), bulls' 15 % read (p. 8).
Maintenance maintenance_of(KgBody weight, const MaintenanceSetting& setting);

/// Milk that many days after calving for a peak in week 8.5; none on the day of calving.
/// Source: NRC 2000 p. 45 after Jenkins and Ferrell 1984, read.
KgPerDay milk_on(KgPerDay peak, double days_since_calving);
/// Net energy of that milk at the composition the tables take, charged as NEm one for one.
/// Source: Tyrrell and Reid 1965, recalled; one for one read (NRC 2000 p. 46).
McalPerDay milk_energy(KgPerDay milk);
/// The peak of a cow of that age in years: 74 % of the mature at two (read, Arkansas MP391), 88 %
/// at three (recalled).
KgPerDay peak_at_age(KgPerDay mature_peak, int years);

/// A pregnancy on day t of gestation; all zero on day 0 and before.
struct Pregnancy {
  McalPerDay nem;
  KgPerDay net_protein;
  KgBody conceptus;         // weight of the womb and what is in it
  KgPerDay conceptus_gain;  // weight it puts on that day
};
/// Source: NRC 2000 chapter 4, recalled; its Table 4-2 (p. 43, read) comes back within 0.001 Mcal.
Pregnancy pregnancy_on(KgBody birth_weight, double day_of_gestation);
/// Birth weight of the calf the requirement rows hold: 6.45 % of the dam's mature weight (fitted).
KgBody usual_birth_weight(KgBody mature_weight);

/// A growing animal's gain, with its energy and protein. Zero without gain.
struct Growth {
  KgBody equivalent;  // weight on the scale of the reference animal
  KgPerDay gain;
  McalPerDay retained;  // NEg
  KgPerDay net_protein;
};
/// From the gain. Source: NRC 2000 chapter 3, recalled; a read lecture example comes back within
/// 0.002 Mcal.
Growth growth_of(KgBody weight, KgBody mature_weight, KgPerDay gain);
/// From the energy left for it. Source: conference abstract after NASEM 2016, read; not the exact
/// inverse of the other form, as published.
Growth growth_on(KgBody weight, KgBody mature_weight, McalPerDay retained);

}  // namespace pluckbook
