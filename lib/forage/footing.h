// footing.h - a laboratory's page put on one footing: dry matter, CP and TDN as fractions, each
// with how it was got. Nothing is guessed: what cannot be told is a Problem.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/units.h"
#include "book/records.h"
#include "published/forage_energy.h"

namespace pluckbook {

/// A figure on dry matter with its origin.
struct FootedValue {
  Share value;
  std::string how;      // "as printed", "6.4 % as received / 0.915", "TDN = 88.9 - 0.779 ADF (E1)"
  std::string source;   // of the equation, when one was used
  double extra_sd = 0;  // added in quadrature on the series' scale when an equation stands in
  std::string method;   // of TDN: "laboratory", "NEm", "E1"; the same word, the same bias
};

struct FootedResult {
  std::optional<FootedValue> crude_protein, tdn;
  std::vector<FootedValue> energy;  // TDN by every way the page allows; the first is `tdn`
  std::optional<Share> adf, ndf, ash, fat, calcium, phosphorus;
  std::optional<Share> degradable;  // share of crude protein the rumen degrades
  std::optional<double> nitrate_n_ppm;
  Problems warnings;                  // plausibility, kept with the result; never a silent drop
  std::vector<std::string> notes;     // what the values signal: soil, heat, a protein not used
  std::vector<std::string> cautions;  // nitrate, by guide
};

/// As received to dry matter by DM; other forms of a figure (bound protein of protein) to one; TDN
/// by the first way the page allows (forage/energy.h) and said so.
/// Fails: as received without a DM figure; a value no forage has (refuse column); ADF >= NDF;
///        lignin over ADF; bound protein over protein.
/// Source: facts of laboratory practice as cited in reference/energy.yaml, forage_energy.yaml and
/// beside the figures.
Result<FootedResult> on_dry_matter(const LabResult& result,
                                   const EnergyChoice& choice = any_forage());

/// The refuse and warn limits for one analyte ("cp") on dry matter, in its unit; dm in percent as
/// received. For messages and readers.
struct PlausibleRange {
  double refuse_low, refuse_high, warn_low, warn_high;
};
std::optional<PlausibleRange> plausible_range(const std::string& analyte);

}  // namespace pluckbook
