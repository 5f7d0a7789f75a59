#include "report/chart_axes.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {

ChartAxes axes_of(const DietChart& chart) {
  ChartAxes axes;
  axes.first = chart.days.front().date;
  axes.days = std::max(1L, days_between(axes.first, chart.days.back().date));
  double low = 100;
  double high = 0;
  const auto widen = [&](Share share) {
    low = std::min(low, in_percent(share));
    high = std::max(high, in_percent(share));
  };
  for (const DietPoint& point : chart.days) {
    widen(point.low);
    widen(point.high);
  }
  for (const auto* series : {&chart.bags, &chart.earlier, &chart.class_curve, &chart.need}) {
    for (const ChartPoint& point : *series) widen(point.share);
  }
  axes.low = std::floor(low);
  axes.high = std::max(std::ceil(high), axes.low + 1);
  return axes;
}

std::vector<MonthTick> month_ticks(const ChartAxes& axes) {
  std::vector<MonthTick> ticks;
  for (long i = 0; i <= axes.days; ++i) {
    const Date day = axes.first + Days(i);
    if (day.day() == 1) ticks.push_back({day, in_words_without_year(day).substr(2)});
  }
  return ticks;
}

std::vector<double> share_ticks(const ChartAxes& axes) {
  constexpr double most_ticks = 7;
  double step = 1;
  for (const double next : {2.0, 5.0, 10.0, 20.0}) {
    if ((axes.high - axes.low) / step <= most_ticks - 1) break;
    step = next;
  }
  std::vector<double> ticks;
  for (long i = std::lround(std::ceil(axes.low / step)); static_cast<double>(i) * step <= axes.high;
       ++i) {
    ticks.push_back(static_cast<double>(i) * step);
  }
  return ticks;
}

}  // namespace pluckbook
