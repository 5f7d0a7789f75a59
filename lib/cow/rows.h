// rows.h - reading between the rows of a requirement table: the rows around a point and how much
// each counts. Straight lines along one column after another, so a table may have holes.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "cow/animal.h"
#include "cow/row_part.h"

namespace pluckbook {

/// One column to read along, where on it, and how an animal is put at a place of it.
template <class Row>
struct Axis {
  double (*column)(const Row&);
  void (*put)(AnimalAt&, double at);
  double at = 0;
  std::string name, unit;
};

template <class Row>
struct WeightedRow {
  const Row* row = nullptr;
  double weight = 0;
  std::vector<ColumnStep> steps;  // one a column, in the order of the axes
};

/// The values of a column that stand next to a point: the same one twice on a row or outside.
struct Bracket {
  double low = 0, high = 0;
  double share_of_high = 0;
};

template <class Row>
Bracket bracket_of(const std::vector<const Row*>& rows, const Axis<Row>& axis) {
  const auto [least, most] = std::minmax_element(
      rows.begin(), rows.end(),
      [&](const Row* a, const Row* b) { return axis.column(*a) < axis.column(*b); });
  Bracket bracket;
  bracket.low = axis.column(**least);
  bracket.high = axis.column(**most);
  const double at = std::clamp(axis.at, bracket.low, bracket.high);
  for (const Row* row : rows) {
    const double value = axis.column(*row);
    if (value <= at) bracket.low = std::max(bracket.low, value);
    if (value >= at) bracket.high = std::min(bracket.high, value);
  }
  if (bracket.high > bracket.low)
    bracket.share_of_high = (at - bracket.low) / (bracket.high - bracket.low);
  return bracket;
}

/// The rows around a point with weights that add to 1. A point outside a column takes the column's
/// nearest value.
/// Requires: rows not empty.
template <class Row>
std::vector<WeightedRow<Row>> rows_around(const std::vector<const Row*>& rows,
                                          const std::vector<Axis<Row>>& axes,
                                          std::size_t depth = 0) {
  if (depth == axes.size()) return {{rows.front(), 1.0, {}}};
  const Axis<Row>& axis = axes[depth];
  const Bracket bracket = bracket_of(rows, axis);
  std::vector<WeightedRow<Row>> all;
  ColumnStep step{axis.name, axis.unit, axis.at, bracket.low, bracket.high, bracket.share_of_high,
                  false};
  for (const bool high : {false, true}) {
    step.takes_high = high;
    if (step.share() <= 0) continue;
    std::vector<const Row*> there;
    for (const Row* row : rows)
      if (axis.column(*row) == step.printed()) there.push_back(row);
    for (WeightedRow<Row>& one : rows_around(there, axes, depth + 1)) {
      one.weight *= step.share();
      one.steps.insert(one.steps.begin(), step);
      all.push_back(std::move(one));
    }
  }
  return all;
}

}  // namespace pluckbook
