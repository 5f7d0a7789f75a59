// forage_energy.h - published ways from the figures of a forage to its TDN, beside the fibre lines
// of rules.h. Percent of dry matter in, TDN in percent out; each states what it may miss by.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace pluckbook {

/// The sum of digestible parts of NRC 2001 at maintenance.
struct SummativeEquation {
  std::string id, source, status;
  double nfc, bound_protein, fat_not_fatty, fat, fibre, lignin_power, less;
  double error_points;
};
const SummativeEquation& summative_equation();

/// The same idea with the laboratory's digestibility of NDF after 48 hours.
struct DigestedFibreEquation {
  std::string id, source, status;
  double nfc, protein, fat, less;
  double ndfd_constant, ndfd_slope;
  bool free_of_protein;  // NDF and NFC counted without the protein in NDF
  double error_points;
};
/// Requires: an id of reference/forage_energy.yaml ("NDFD", "E11", "E12").
const DigestedFibreEquation& digested_fibre_equation(std::string_view id);

/// NDF less the protein in it, as a share of NDF, where that protein was not determined.
double ndf_free_of_protein();

/// ME, MJ/kg of dry matter = intercept + slope x percent, for "DOMD" or "DMD".
struct DigestibilityLine {
  std::string id, source, status;
  double intercept, slope, error_points;
};
const DigestibilityLine& digestibility_line(std::string_view id);

/// TDN = intercept + slope x NEl in Mcal/lb; and what a net energy of unknown line may miss by.
struct NetEnergyLine {
  double intercept, slope, error_points;
  std::string source, status;
};
const NetEnergyLine& nel_line();

/// DE of the same sum at maintenance, Mcal/kg of dry matter.
struct SummativeDe {
  double nfc, fibre, protein, fat, less;
  std::string source, status;
};
const SummativeDe& summative_de();

/// NEm or NEg, Mcal/lb = slope x TDN - less: what some laboratories take in place of the cubics.
struct StraightNetEnergy {
  double slope, nem_less, neg_less;
  std::string source, status;
};
const StraightNetEnergy& straight_net_energy();

/// Digestible protein = slope x CP - less, percent of dry matter.
struct DigestibleProteinLine {
  std::string id, source, status;
  double slope, less;
  double at(double cp_percent) const { return slope * cp_percent - less; }
};
const std::vector<DigestibleProteinLine>& digestible_protein_lines();

/// What serves a kind of forage.
struct EnergyChoice {
  std::string kind, digested_fibre, fibre;  // ids of equations
  double soil_ash = 0;                      // percent: from here on soil is likely in the bag
};
/// By forage class, as a pasture names it; what serves an unknown kind for any other name.
const EnergyChoice& energy_choice(std::string_view forage_class);
const EnergyChoice& any_forage();

}  // namespace pluckbook
