// chart.h - one season of one nutrient: the diet's curve and range, its bags, the need, and where
// the two cross. Drawn twice from the same figures: in plain ASCII that keeps its shape when
// pasted into mail, and as SVG.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "forage/series.h"
#include "report/markup.h"

namespace pluckbook {

struct ChartPoint {
  Date date;
  Share share;
};

struct DietChart {
  std::string title;                    // with the unit
  std::string finding;                  // "falls below need about 9 Aug"; may be empty
  std::vector<DietPoint> days;          // the curve and its 80 % range, a row a day
  std::vector<ChartPoint> bags;         // marked o
  std::vector<ChartPoint> earlier;      // bags of earlier years, moved to this one; SVG only
  std::vector<ChartPoint> class_curve;  // the forage class's usual course; SVG only
  std::vector<ChartPoint> need;         // marked =, may be empty
  std::optional<Date> crossing;         // where the middle meets the need, marked X
};

/// o bag, - middle, : 8 years in 10, = need, X where they cross. At most 78 columns, 14 rows.
std::string chart_text(const DietChart& chart);

/// <svg role="img"> with a title and a description that states the finding; each series carries
/// data-series and differs by dash or marker before colour. `id` is unique on the page.
Markup chart_svg(const DietChart& chart, const std::string& id);

}  // namespace pluckbook
