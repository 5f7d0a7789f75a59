#include "report/chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace pluckbook {
namespace {

constexpr int width = 70;
constexpr int height = 13;

struct Scale {
  Date first;
  long days = 1;
  double low = 0, high = 1;

  int column(Date day) const {
    const double along = static_cast<double>(days_between(first, day)) / static_cast<double>(days);
    return static_cast<int>(std::lround(along * (width - 1)));
  }
  int row(Share share) const {
    const double up = (in_percent(share) - low) / (high - low);
    return height - 1 - static_cast<int>(std::lround(up * (height - 1)));
  }
};

using Canvas = std::vector<std::string>;

void mark(Canvas& canvas, int row, int column, char sign) {
  if (row >= 0 && row < height && column >= 0 && column < width) {
    canvas[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = sign;
  }
}

Scale scale_of(const DietChart& chart) {
  Scale scale;
  scale.first = chart.days.front().date;
  scale.days = std::max(1L, days_between(scale.first, chart.days.back().date));
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
  for (const auto& bag : chart.bags) widen(bag.second);
  for (const auto& need : chart.need) widen(need.second);
  scale.low = std::floor(low);
  scale.high = std::max(std::ceil(high), scale.low + 1);
  return scale;
}

Canvas drawn(const DietChart& chart, const Scale& scale) {
  Canvas canvas(height, std::string(width, ' '));
  for (const DietPoint& point : chart.days) {
    for (int row = scale.row(point.high); row <= scale.row(point.low); ++row) {
      mark(canvas, row, scale.column(point.date), ':');
    }
  }
  for (const DietPoint& point : chart.days) {
    mark(canvas, scale.row(point.median), scale.column(point.date), '-');
  }
  for (const auto& [day, share] : chart.need) {
    const int column = scale.column(day);
    if (column % 2 == 0) mark(canvas, scale.row(share), column, '=');
  }
  for (const auto& [day, share] : chart.bags) {
    mark(canvas, scale.row(share), scale.column(day), 'o');
  }
  return canvas;
}

/// Ticks under the first of each month, and their names.
std::pair<std::string, std::string> month_axis(const DietChart& chart, const Scale& scale) {
  std::string ticks(width, '-');
  std::string names(width + 3, ' ');
  int free_from = 0;
  for (const DietPoint& point : chart.days) {
    if (point.date.day() != 1) continue;
    const int column = scale.column(point.date);
    ticks[static_cast<std::size_t>(column)] = '+';
    if (column < free_from) continue;
    names.replace(static_cast<std::size_t>(column), 3, in_words(point.date).substr(2, 3));
    free_from = column + 5;
  }
  names.erase(names.find_last_not_of(' ') + 1);
  return {ticks, names};
}

}  // namespace

std::string chart_text(const DietChart& chart) {
  if (chart.days.empty()) return "";
  const Scale scale = scale_of(chart);
  const Canvas canvas = drawn(chart, scale);
  std::string text = chart.title + "\n";
  for (int row = 0; row < height; ++row) {
    const double at = scale.high - (scale.high - scale.low) * row / (height - 1);
    const std::string label = row % 3 == 0 ? fixed(at, 1) : "";
    std::string line = pad_left(label, 5) + " |" + canvas[static_cast<std::size_t>(row)];
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  const auto [ticks, names] = month_axis(chart, scale);
  text += "      +" + ticks + "\n       " + names + "\n";
  text += "o bag   - middle   : 8 years in 10";
  if (!chart.need.empty()) text += "   = need";
  return text + "\n";
}

}  // namespace pluckbook
