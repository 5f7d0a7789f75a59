// row_part.h - which published rows a need was read from, and how much each counts: what it takes
// to show the reading as arithmetic.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "base/units.h"

namespace pluckbook {

/// Where a point stands between two printed values of a column, in the unit of print, and which of
/// the two a row prints.
struct ColumnStep {
  std::string column, unit;  // "mature weight", "lb"
  double at = 0;             // may lie beyond the table
  double low = 0, high = 0;  // the same twice on a row
  double share_of_high = 0;
  bool takes_high = false;

  bool operator==(const ColumnStep&) const = default;
  double held() const { return std::clamp(at, low, high); }
  double share() const { return takes_high ? share_of_high : 1 - share_of_high; }
  double printed() const { return takes_high ? high : low; }
};

/// One published row of those a need lies between.
struct RowPart {
  std::vector<ColumnStep> steps;
  double weight = 0;  // the product of the steps' shares; those of a need add to 1
  KgDmPerDay intake;
  Share tdn, crude_protein, calcium, phosphorus;
  McalPerDay nem, neg;
  KgBody body_weight;
  KgPerDay milk;

  bool operator==(const RowPart&) const = default;
};

}  // namespace pluckbook
