#include "report/chart.h"

#include <cmath>

#include "base/text.h"
#include "report/chart_axes.h"

namespace pluckbook {
namespace {

constexpr int columns = 70;
constexpr int rows = 13;

int column_of(const ChartAxes& axes, Date day) {
  return static_cast<int>(std::lround(axes.along(day) * (columns - 1)));
}
int row_of(const ChartAxes& axes, Share share) {
  return rows - 1 - static_cast<int>(std::lround(axes.up(share) * (rows - 1)));
}

using Canvas = std::vector<std::string>;

void mark(Canvas& canvas, int row, int column, char sign) {
  if (row >= 0 && row < rows && column >= 0 && column < columns) {
    canvas[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = sign;
  }
}

Canvas drawn(const DietChart& chart, const ChartAxes& axes) {
  Canvas canvas(rows, std::string(columns, ' '));
  for (const DietPoint& point : chart.days) {
    for (int row = row_of(axes, point.high); row <= row_of(axes, point.low); ++row) {
      mark(canvas, row, column_of(axes, point.date), ':');
    }
  }
  for (const DietPoint& point : chart.days) {
    mark(canvas, row_of(axes, point.median), column_of(axes, point.date), '-');
  }
  for (const ChartPoint& point : chart.need) {
    const int column = column_of(axes, point.date);
    if (column % 2 == 0) mark(canvas, row_of(axes, point.share), column, '=');
  }
  for (const ChartPoint& bag : chart.bags) {
    mark(canvas, row_of(axes, bag.share), column_of(axes, bag.date), 'o');
  }
  for (const ChartPoint& point : chart.need) {
    if (chart.crossing != point.date) continue;
    mark(canvas, row_of(axes, point.share), column_of(axes, point.date), 'X');
  }
  return canvas;
}

/// Ticks under the first of each month, and their names.
std::pair<std::string, std::string> month_axis(const ChartAxes& axes) {
  std::string ticks(columns, '-');
  std::string names(columns + 3, ' ');
  int free_from = 0;
  for (const MonthTick& month : month_ticks(axes)) {
    const int column = column_of(axes, month.date);
    ticks[static_cast<std::size_t>(column)] = '+';
    if (column < free_from) continue;
    names.replace(static_cast<std::size_t>(column), 3, month.name);
    free_from = column + 5;
  }
  names.erase(names.find_last_not_of(' ') + 1);
  return {ticks, names};
}

}  // namespace

std::string chart_text(const DietChart& chart) {
  if (chart.days.empty()) return "";
  const ChartAxes axes = axes_of(chart);
  const Canvas canvas = drawn(chart, axes);
  std::string text = chart.title + "\n";
  for (int row = 0; row < rows; ++row) {
    const double at = axes.high - (axes.high - axes.low) * row / (rows - 1);
    const std::string label = row % 3 == 0 ? fixed(at, 1) : "";
    std::string line = pad_left(label, 5) + " |" + canvas[static_cast<std::size_t>(row)];
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  const auto [ticks, names] = month_axis(axes);
  text += "      +" + ticks + "\n       " + names + "\n";
  text += "o bag   - middle   : 8 years in 10";
  if (!chart.need.empty()) text += "   = need";
  if (chart.crossing) text += "   X about " + in_words_without_year(*chart.crossing);
  return text + "\n";
}

}  // namespace pluckbook
