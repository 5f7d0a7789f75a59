// rows.h - reading between the rows of a requirement table: the rows around a point and how much
// each counts. Straight lines along one column after another, so a table may have holes.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "base/text.h"
#include "cow/row_part.h"

namespace pluckbook {

/// One column to read along, and where on it. `name` and `unit` go into notes.
template <class Row>
struct Axis {
  double (*column)(const Row&);
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
  bool above = false, below = false;  // the point lies outside the table
};

template <class Row>
Bracket bracket_of(const std::vector<const Row*>& rows, const Axis<Row>& axis) {
  const auto [least, most] = std::minmax_element(
      rows.begin(), rows.end(),
      [&](const Row* a, const Row* b) { return axis.column(*a) < axis.column(*b); });
  Bracket bracket;
  bracket.low = axis.column(**least);
  bracket.high = axis.column(**most);
  bracket.below = axis.at < bracket.low;
  bracket.above = axis.at > bracket.high;
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
/// nearest value and leaves a note.
/// Requires: rows not empty.
template <class Row>
std::vector<WeightedRow<Row>> rows_around(const std::vector<const Row*>& rows,
                                          const std::vector<Axis<Row>>& axes,
                                          std::vector<std::string>& notes, std::size_t depth = 0) {
  if (depth == axes.size()) return {{rows.front(), 1.0, {}}};
  const Axis<Row>& axis = axes[depth];
  const Bracket bracket = bracket_of(rows, axis);
  if (bracket.above || bracket.below) {
    const std::string note = axis.name + " " + shortest(std::round(axis.at * 10) / 10) + " " +
                             axis.unit + " is " + (bracket.above ? "above" : "below") +
                             " the table; its " + (bracket.above ? "last" : "first") + " rows (" +
                             shortest(bracket.low) + " " + axis.unit + ") were used";
    if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
  }
  std::vector<WeightedRow<Row>> all;
  ColumnStep step{axis.name,   axis.unit,    std::clamp(axis.at, bracket.low, bracket.high),
                  bracket.low, bracket.high, bracket.share_of_high,
                  false};
  for (const bool high : {false, true}) {
    step.takes_high = high;
    if (step.share() <= 0) continue;
    std::vector<const Row*> there;
    for (const Row* row : rows)
      if (axis.column(*row) == step.printed()) there.push_back(row);
    for (WeightedRow<Row>& one : rows_around(there, axes, notes, depth + 1)) {
      one.weight *= step.share();
      one.steps.insert(one.steps.begin(), step);
      all.push_back(std::move(one));
    }
  }
  return all;
}

}  // namespace pluckbook
