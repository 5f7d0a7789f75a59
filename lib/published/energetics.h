// energetics.h - the coefficients of the published equations of need, as reference/energetics.yaml
// and reference/protein.yaml hold them. The arithmetic is lib/cow's. Every set says its source.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "published/requirements.h"

namespace pluckbook {

/// NEm = W^0.75 (base x breed x milking x condition x sex + cold_step (neutral - T)), Mcal/day.
struct MaintenanceFigures {
  double base;                            // Mcal per kg^0.75
  double milking, intact_male;            // factors
  double condition_at_1, condition_step;  // factor at score 1, and per score above it
  double cold_step;                       // Mcal per kg^0.75 for each degree C under neutral
  double neutral;                         // C, mean of the month before
  Citation citation;
};
const MaintenanceFigures& maintenance_figures();

/// Maintenance of a breed, or of a group of them, against British cattle.
struct Breed {
  std::string name;  // "british", "santa gertrudis"
  double maintenance = 1;
  Citation citation;
};
const std::vector<Breed>& breeds();
/// The breed of that name, however it is spaced or written; nullptr when there is none.
const Breed* find_breed(std::string_view name);

/// kg/day n weeks after calving: n / (a e^(n / peak_week)); energy of 1 kg from its composition.
struct MilkFigures {
  double peak_week;
  double fat_energy, solids_energy, energy_less;        // Mcal/kg per percent; less
  double fat_percent, solids_percent, protein_percent;  // what the tables take
  double two_year_old, three_year_old;                  // share of the mature peak
  Citation citation;
};
const MilkFigures& milk_figures();

/// An amount per kg of calf birth weight on day t of gestation: (size - fall t) e^((rate -
/// rate_fall t) t).
struct GestationCurve {
  double size, fall, rate, rate_fall;
};
struct PregnancyFigures {
  GestationCurve energy;  // kcal ME; NEm = that x km
  double km;
  GestationCurve nitrogen;  // g
  double nitrogen_to_protein;
  GestationCurve conceptus;  // kg
  double gestation_days;
  double birth_share;  // calf birth weight of the dam's mature weight
  Citation citation;
};
const PregnancyFigures& pregnancy_figures();

struct GrowthFigures {
  double reference_weight;                            // kg at the fatness of maturity
  double empty_body, empty_gain;                      // of shrunk weight, of shrunk gain
  double energy, energy_gain_power;                   // RE from gain
  double gain, gain_energy_power, gain_weight_power;  // gain from RE
  double protein, protein_of_energy;                  // g net per kg gain; g less per Mcal
  double efficiency_at_0, efficiency_fall, efficiency_until, efficiency_above;  // of MP
  double at_first_mating, at_first_calving, at_second_calving;                  // of mature weight
  Citation citation;
};
const GrowthFigures& growth_figures();

/// DMI = W^0.75 (linear N - square N^2 - less) / max(N, least_divisor), N = NEm of the diet.
struct GrowingIntakeFigures {
  double linear, square, less_calf, less_yearling, least_divisor;
  Citation citation;
};
const GrowingIntakeFigures& growing_intake_figures();

/// Metabolizable protein, and table CP = MP / mp_of_cp.
struct ProteinFigures {
  double maintenance;  // g per kg^0.75
  double milk_efficiency, pregnancy_efficiency;
  double mp_of_cp;
  Citation citation;
};
const ProteinFigures& protein_figures();

/// Microbial protein as a share of TDN (NRC 2000), lowered where the diet lacks fibre.
struct MicrobialFigures {
  double share, fibre_least, fibre_step;
  Citation citation;
};
const MicrobialFigures& microbial_figures();

/// The same by NASEM 2016: a line in TDN for lean diets, another in fat-free TDN for fat ones.
struct Microbial2016Figures {
  double lean_slope, lean_constant, fat_slope, fat_constant, fat_from, fat_tdn;
  Citation citation;
};
const Microbial2016Figures& microbial_2016_figures();

/// MP from microbes and from protein that escapes the rumen.
struct ProteinSupplyFigures {
  double microbial_mp, rup_1996, rup_forage_2016, rup_concentrate_2016;
  Citation citation;
};
const ProteinSupplyFigures& protein_supply_figures();

/// g a day = (body W + milk Y + gain x net protein + conceptus CBW / late_days) / absorbed.
struct MineralFigures {
  double body, milk, gain, conceptus, late_days, absorbed;
  Citation citation;
};
const MineralFigures& calcium_figures();
const MineralFigures& phosphorus_figures();

}  // namespace pluckbook
