#include <utility>
#include <vector>

#include "base/text.h"
#include "report/chart.h"
#include "report/chart_axes.h"

namespace pluckbook {
namespace {

// The drawing's own units; the page scales it to the column it stands in.
constexpr double width = 460, height = 276;
constexpr double left = 34, right = 8, top = 12, bottom = 76;

std::string at(double value) {
  return fixed(value, 1);
}

class Drawing {
 public:
  explicit Drawing(const DietChart& chart) : chart_(chart), axes_(axes_of(chart)) {}

  Markup all() const {
    return grid() + band() + line("class curve", "class-curve", chart_.class_curve) +
           marks("bags of earlier years", "earlier", chart_.earlier, 3) + middle() +
           line("need", "need", chart_.need) + marks("bags", "bags", chart_.bags, 4.5) +
           crossing() + legend();
  }

 private:
  double x(Date day) const { return left + axes_.along(day) * (width - left - right); }
  double y(Share share) const { return top + (1 - axes_.up(share)) * (height - top - bottom); }
  std::string point(Date day, Share share) const { return at(x(day)) + "," + at(y(share)); }

  Markup label(double x, double y, const std::string& text, const std::string& anchor) const {
    return element("text", {{"x", at(x)}, {"y", at(y)}, {"text-anchor", anchor}}, words(text));
  }

  Markup rule(double x1, double y1, double x2, double y2, const std::string& kind) const {
    return element(
        "line", {{"class", kind}, {"x1", at(x1)}, {"y1", at(y1)}, {"x2", at(x2)}, {"y2", at(y2)}});
  }

  Markup grid() const {
    Markup lines;
    const double floor = height - bottom;
    for (const double percent : share_ticks(axes_)) {
      const double level = y(from_percent(percent));
      lines += rule(left, level, width - right, level, "grid");
      lines += label(left - 6, level + 4, fixed(percent, 0), "end");
    }
    double free_from = 0;
    for (const MonthTick& month : month_ticks(axes_)) {
      const double place = x(month.date);
      lines += rule(place, floor, place, floor + 5, "tick");
      if (place < free_from || place > width - right - 12) continue;
      lines += label(place, floor + 19, month.name, "middle");
      free_from = place + 34;
    }
    return lines + rule(left, floor, width - right, floor, "tick");
  }

  Markup band() const {
    std::string points;
    for (const DietPoint& day : chart_.days) points += point(day.date, day.high) + " ";
    for (auto day = chart_.days.rbegin(); day != chart_.days.rend(); ++day) {
      points += point(day->date, day->low) + " ";
    }
    points.pop_back();
    return element("polygon", {{"class", "band"}, {"data-band", "80"}, {"points", points}});
  }

  Markup polyline(const std::string& series, const std::string& kind, std::string points) const {
    if (points.empty()) return {};
    points.pop_back();
    return element("polyline", {{"class", kind}, {"data-series", series}, {"points", points}});
  }

  Markup line(const std::string& series, const std::string& kind,
              const std::vector<ChartPoint>& along) const {
    std::string points;
    for (const ChartPoint& p : along) points += point(p.date, p.share) + " ";
    return polyline(series, kind, points);
  }

  Markup middle() const {
    std::string points;
    for (const DietPoint& day : chart_.days) points += point(day.date, day.median) + " ";
    return polyline("diet", "diet", points);
  }

  Markup marks(const std::string& series, const std::string& kind,
               const std::vector<ChartPoint>& bags, double radius) const {
    Markup circles;
    for (const ChartPoint& bag : bags) {
      circles +=
          element("circle", {{"cx", at(x(bag.date))}, {"cy", at(y(bag.share))}, {"r", at(radius)}});
    }
    if (circles.empty()) return {};
    return element("g", {{"class", kind}, {"data-series", series}}, circles);
  }

  Markup crossing() const {
    if (!chart_.crossing) return {};
    const double place = x(*chart_.crossing);
    const bool near_end = place > width - 90;
    return rule(place, top, place, height - bottom, "crossing") +
           label(place + (near_end ? -5 : 5), top + 10, in_words_without_year(*chart_.crossing),
                 near_end ? "end" : "start");
  }

  /// A sample of each series and its name, three to a row under the months.
  Markup legend() const {
    std::vector<std::pair<Markup, std::string>> entries;
    const auto sample = [&](const std::string& kind) { return rule(0, 0, 22, 0, kind); };
    const auto mark = [&](const std::string& kind) {
      return element("g", {{"class", kind}},
                     element("circle", {{"cx", "11"}, {"cy", "0"}, {"r", "4"}}));
    };
    const Markup range = element(
        "rect", {{"class", "band"}, {"x", "0"}, {"y", "-6"}, {"width", "22"}, {"height", "12"}});
    entries.emplace_back(sample("diet"), "diet");
    entries.emplace_back(range, "8 years in 10");
    if (!chart_.need.empty()) entries.emplace_back(sample("need"), "need");
    if (!chart_.bags.empty()) entries.emplace_back(mark("bags"), "bag");
    if (!chart_.earlier.empty()) entries.emplace_back(mark("earlier"), "earlier years");
    if (!chart_.class_curve.empty()) entries.emplace_back(sample("class-curve"), "usual season");
    Markup all;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const std::size_t row = i / 3, column = i % 3;
      const double across = left + static_cast<double>(column) * (width - left) / 3;
      const double down = height - 34 + static_cast<double>(row) * 21;
      all += element("g", {{"transform", "translate(" + at(across) + " " + at(down) + ")"}},
                     entries[i].first + label(28, 4, entries[i].second, "start"));
    }
    return element("g", {{"class", "legend"}}, all);
  }

  const DietChart& chart_;
  ChartAxes axes_;
};

}  // namespace

Markup chart_svg(const DietChart& chart, const std::string& id) {
  if (chart.days.empty()) return {};
  const std::string finding = chart.finding.empty() ? chart.title : chart.finding;
  return element("svg",
                 {{"role", "img"},
                  {"class", "chart"},
                  {"viewBox", "0 0 " + fixed(width, 0) + " " + fixed(height, 0)},
                  {"aria-labelledby", "title-" + id + " desc-" + id}},
                 element("title", {{"id", "title-" + id}}, words(chart.title)) +
                     element("desc", {{"id", "desc-" + id}}, words(finding)) +
                     Drawing(chart).all());
}

}  // namespace pluckbook
