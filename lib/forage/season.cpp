#include "forage/season.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {
namespace {

constexpr double year = 365;

}  // namespace

double to_scale(DietNutrient nutrient, Share value) {
  const double x = value.value();
  return nutrient == DietNutrient::tdn ? std::log(x / (1 - x)) : std::log(x);
}

Share from_scale(DietNutrient nutrient, double scaled) {
  return Share(nutrient == DietNutrient::tdn ? 1 / (1 + std::exp(-scaled)) : std::exp(scaled));
}

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

ClassCurve::ClassCurve(const ForageClass& forage, DietNutrient nutrient) {
  const std::vector<double>& percent =
      nutrient == DietNutrient::tdn ? forage.tdn_percent : forage.cp_percent;
  for (std::size_t i = 0; i < percent.size(); ++i)
    knots_.push_back({forage.days_after_green_up[i], to_scale(nutrient, from_percent(percent[i]))});
  knots_.push_back({knots_.front().x + year, knots_.front().y});
  for (std::size_t i = 1; i < knots_.size(); ++i)
    mean_ += (knots_[i].x - knots_[i - 1].x) * (knots_[i].y + knots_[i - 1].y) / (2 * year);
}

double ClassCurve::at(double days_after_green_up) const {
  return linear_at(knots_, days_after_green_up - year * std::floor(days_after_green_up / year));
}

double ClassCurve::lowest_day() const {
  return std::min_element(knots_.begin(), knots_.end(),
                          [](const Knot& a, const Knot& b) { return a.y < b.y; })
      ->x;
}

}  // namespace pluckbook
