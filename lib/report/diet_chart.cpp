#include "report/diet_chart.h"

#include <fmt/format.h>

#include "report/pages.h"

namespace pluckbook {
namespace {

/// The same day of the year, in the season shown; nothing when the season has no such day.
std::optional<Date> moved_into(const DietAnswer& answer, Date day) {
  for (int year = day.year() + 1; year <= answer.until.year(); ++year) {
    const Date moved = day_in_year(year, day.month(), day.day());
    if (moved >= answer.first && moved <= answer.until) return moved;
  }
  return std::nullopt;
}

void add_bags(DietChart& chart, const DietAnswer& answer, DietNutrient nutrient) {
  for (const BagReading& reading : answer.series->bags()) {
    if (!reading.used) continue;
    const Date plucked = reading.bag->plucked;
    for (const FootedResult& result : reading.results) {
      const auto& value = value_of(result, nutrient);
      if (!value) continue;
      if (plucked >= answer.first) {
        chart.bags.push_back({plucked, value->value});
      } else if (const auto moved = moved_into(answer, plucked)) {
        chart.earlier.push_back({*moved, value->value});
      }
    }
  }
}

/// The day the outlook names, so that chart and words cannot disagree.
void add_finding(DietChart& chart, const DietAnswer& answer, DietNutrient nutrient) {
  for (const NutrientOutlook& outlook : answer.outlook) {
    if (outlook.nutrient != nutrient) continue;
    chart.finding = sentence(in_words(nutrient)) + " " + finding(outlook, answer.until);
    chart.crossing = outlook.below_now ? outlook.below_since : outlook.falls_below.median;
  }
}

}  // namespace

DietChart diet_chart(const DietAnswer& answer, DietNutrient nutrient) {
  const bool tdn = nutrient == DietNutrient::tdn;
  DietChart chart;
  const auto first = answer.first.year();
  const auto last = answer.until.year();
  const std::string years =
      first == last ? fmt::format("{}", static_cast<int>(first))
                    : fmt::format("{} to {}", static_cast<int>(first), static_cast<int>(last));
  chart.title = fmt::format("{} of the diet, % of dry matter, {}, {}",
                            tdn ? "TDN" : "crude protein", answer.series->pasture().name, years);
  chart.days = tdn ? answer.tdn_days : answer.cp_days;
  for (const DietPoint& day : chart.days) {
    chart.class_curve.push_back({day.date, answer.series->class_curve(nutrient, day.date)});
  }
  for (const NeedPoint& need : answer.need) {
    chart.need.push_back({need.date, tdn ? need.tdn : need.crude_protein});
  }
  add_bags(chart, answer, nutrient);
  add_finding(chart, answer, nutrient);
  return chart;
}

}  // namespace pluckbook
