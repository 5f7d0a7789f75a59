// chart_axes.h - where a day and a share stand on a chart, from 0 to 1, whatever it is drawn with.
#pragma once

#include <string>
#include <vector>

#include "report/chart.h"

namespace pluckbook {

struct ChartAxes {
  Date first;
  long days = 1;
  double low = 0, high = 1;  // percent

  double along(Date day) const {
    return static_cast<double>(days_between(first, day)) / static_cast<double>(days);
  }
  double up(Share share) const { return (in_percent(share) - low) / (high - low); }
};

/// Whole percents that hold every series of the chart. Requires: chart.days is not empty.
ChartAxes axes_of(const DietChart& chart);

struct MonthTick {
  Date date;
  std::string name;  // "Aug"
};
/// The first of each month on the axis.
std::vector<MonthTick> month_ticks(const ChartAxes& axes);

/// Round percents from low to high, at most seven.
std::vector<double> share_ticks(const ChartAxes& axes);

}  // namespace pluckbook
