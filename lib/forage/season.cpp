#include "forage/season.h"

#include <vector>

#include "forage/series.h"
#include "numeric/interpolation.h"

namespace pluckbook {

GreenUp green_up_of(const Pasture& pasture, const ForageClass& forage) {
  if (pasture.green_up_month && pasture.green_up_day)
    return {*pasture.green_up_month, *pasture.green_up_day};
  // Counted in a common year, so that the day of the month does not move in leap years.
  const Date day = Date(2025, 1, 1) + Days(forage.green_up_day_of_year - 1);
  return {day.month(), day.day()};
}

Date season_start(GreenUp green_up, Date day) {
  const Date this_year = day_in_year(day.year(), green_up.month, green_up.day);
  if (this_year <= day) return this_year;
  return day_in_year(day.year() - 1, green_up.month, green_up.day);
}

double curve_on_scale(const ForageClass& forage, DietNutrient nutrient,
                      double days_after_green_up) {
  const std::vector<double>& percent =
      nutrient == DietNutrient::tdn ? forage.tdn_percent : forage.cp_percent;
  std::vector<Knot> knots;
  for (std::size_t i = 0; i < percent.size(); ++i)
    knots.push_back({forage.days_after_green_up[i], to_scale(nutrient, from_percent(percent[i]))});
  knots.push_back({knots.front().x + 365, knots.front().y});
  return linear_at(knots, days_after_green_up);
}

}  // namespace pluckbook
