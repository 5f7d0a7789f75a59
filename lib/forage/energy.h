// energy.h - every published way from the figures of one page to TDN that the page allows, the most
// trusted first. A series takes the first, and says when that changes.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "published/forage_energy.h"

namespace pluckbook {

/// The figures of a page on dry matter by the names of lab_values.h, in the analyte's unit.
struct Figures {
  std::map<std::string, double, std::less<>> by_name;
  std::optional<double> of(std::string_view name) const;
};

struct EnergyEstimate {
  std::string method;  // "laboratory", "NEm", "DOMD", "E13", "E1": short, for comparing
  double tdn_percent = 0;
  std::string how;          // the arithmetic in words; empty for TDN as printed
  std::string source;       // of the equation, when one was used
  double error_points = 0;  // what the equation may miss by
};

/// The sum of NRC 2001, with its parts.
struct Summative {
  double ndf_free, nfc;                                                 // percent of dry matter
  double digested_nfc, digested_protein, digested_fat, digested_fibre;  // points of TDN
  double tdn;
  double de;  // Mcal/kg, at maintenance
};
/// Needs: CP, ADICP, NDF, lignin, fat, ash; NDICP where determined. Nothing when one is missing.
std::optional<Summative> summative_of(const Figures& figures);

/// TDN by the 48 hour digestibility of NDF. Needs: NDFD, CP, NDF, fat, ash.
std::optional<double> tdn_by_digested_fibre(const Figures& figures,
                                            const DigestedFibreEquation& equation);

/// The chain of reference/energy.yaml walked back. ME in MJ/kg, DE and NEm in Mcal/kg of dry
/// matter.
double tdn_of_de(double de);
double tdn_of_me(double me_mj);
double nem_of_tdn(double tdn);
/// Requires: a NEm the chain reaches between TDN 0 and 100.
double tdn_of_nem(double nem);

/// In order: the laboratory's TDN, then its DE, ME or net energy, digestible matter, the full sum,
/// fibre digestibility, the line on fibre of the forage's class, and E1.
std::vector<EnergyEstimate> energy_estimates(const Figures& figures, const EnergyChoice& choice);

}  // namespace pluckbook
