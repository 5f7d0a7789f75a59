// two_columns.h - a figure typed as a page prints it, in both its columns: "9.5/10.4", the smaller
// as received and the other on dry matter, or "9.5 ar / 10.4 dm", and a unit after them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/problem.h"

namespace pluckbook {

/// One name of a page with its two figures, in the analyte's unit.
struct BothColumns {
  std::string analyte;  // key of lab_values.h
  double as_received = 0, dry_matter = 0;
};

/// Nothing when the text holds one figure only.
/// Fails: as parse_analyte; marks that contradict the figures: as received is never the larger.
std::optional<Result<BothColumns>> both_columns(std::string_view name, std::string_view text);

/// Whether the two columns part by the page's dry matter, in percent, to 1 % or the last digit.
std::optional<Problem> columns_disagree(const BothColumns& figure, double dry_matter);

}  // namespace pluckbook
