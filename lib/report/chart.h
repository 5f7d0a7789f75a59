// chart.h - a season on a terminal, in plain ASCII that keeps its shape when pasted into mail.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "forage/series.h"

namespace pluckbook {

struct DietChart {
  std::string title;                         // with the unit
  std::vector<DietPoint> days;               // the curve and its 80 % range, a row a day
  std::vector<std::pair<Date, Share>> bags;  // marked o
  std::vector<std::pair<Date, Share>> need;  // marked =, may be empty
};

/// o bag, - middle, : 8 years in 10, = need. At most 78 columns wide, 14 rows high.
std::string chart_text(const DietChart& chart);

}  // namespace pluckbook
