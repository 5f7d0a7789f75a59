// footing.h - a laboratory's page put on one footing: dry matter, CP and TDN as fractions, each
// with how it was got. Nothing is guessed: what cannot be told is a Problem.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/units.h"
#include "book/records.h"

namespace pluckbook {

/// A figure on dry matter with its origin.
struct FootedValue {
  Share value;
  std::string how;      // "as printed", "6.4 % as received / 0.915", "TDN = 88.9 - 0.779 ADF (E1)"
  std::string source;   // of the equation, when one was used
  double extra_sd = 0;  // added in quadrature on the series' scale when an equation stands in
};

struct FootedResult {
  std::optional<FootedValue> crude_protein, tdn;
  std::optional<Share> adf, ndf, ash, fat, calcium, phosphorus;
  std::optional<double> nitrate_n_ppm;
  Problems warnings;  // plausibility, kept with the result; never a silent drop
};

/// As received to dry matter by DM; the laboratory's TDN, else predicted from ADF (E1) and said so.
/// Fails: as received without a DM figure; a value no forage has (refuse column); ADF >= NDF;
///        lignin over ADF; bound protein over protein.
/// Source: facts of laboratory practice as cited in reference/energy.yaml and beside the figures.
Result<FootedResult> on_dry_matter(const LabResult& result);

/// The refuse and warn limits for one analyte ("cp") on dry matter, in its unit; dm in percent as
/// received. For messages and readers.
struct PlausibleRange {
  double refuse_low, refuse_high, warn_low, warn_high;
};
std::optional<PlausibleRange> plausible_range(const std::string& analyte);

}  // namespace pluckbook
