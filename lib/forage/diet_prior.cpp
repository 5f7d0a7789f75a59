#include "forage/diet_prior.h"

#include <cstdlib>

namespace pluckbook {
namespace {

/// The year whose usual green-up is nearest to a day.
int nearest_year(GreenUp green_up, Date day) {
  const auto distance = [&](int year) {
    return std::labs(days_between(day_in_year(year, green_up.month, green_up.day), day));
  };
  int nearest = day.year();
  for (const int year : {day.year() - 1, day.year() + 1})
    if (distance(year) < distance(nearest)) nearest = year;
  return nearest;
}

}  // namespace

DietModel published_model(const ForageClass& forage) {
  DietModel model;
  model.kernel = forage.variance.kernel;
  return model;
}

Date date_of(const TimePoint& when) {
  const Date any(2000, 1, 1);
  return any + Days(static_cast<long>(when.day) - static_cast<long>(any.julian_day()));
}

DietNutrient nutrient_of(const TimePoint& when) {
  return diet_nutrients[static_cast<std::size_t>(when.series)];
}

DietPrior::DietPrior(const Book& book, const Pasture& pasture, const ForageClass& forage,
                     const DietModel& model)
    : green_up_(green_up_of(pasture, forage)),
      model_(model),
      curves_{ClassCurve(forage, DietNutrient::crude_protein),
              ClassCurve(forage, DietNutrient::tdn)},
      turn_(curves_[0].lowest_day()) {
  for (const Event& event : book.events) {
    if (event.pasture != pasture.id) continue;
    if (event.kind != EventKind::green_up) {
      events_.push_back(event);
      continue;
    }
    const int year = nearest_year(green_up_, event.date);
    const auto late = static_cast<double>(days_between(usual_green_up(year), event.date));
    onsets_[year] = {late, recorded_green_up_sd() / model_.kernel.onset, late, true};
  }
}

Date DietPrior::usual_green_up(int year) const {
  return day_in_year(year, green_up_.month, green_up_.day);
}

OnsetPrior DietPrior::onset(int year) const {
  const auto found = onsets_.find(year);
  return found == onsets_.end() ? OnsetPrior{} : found->second;
}

void DietPrior::turn_about(int year, double days_late) {
  onsets_[year].turned_about = days_late;
}

double DietPrior::days_after(Date day) const {
  return static_cast<double>(days_between(season_start(green_up_, day), day));
}

int DietPrior::onset_year(Date day) const {
  return season_start(green_up_, day).year() + (days_after(day) > turn_ ? 1 : 0);
}

/// The number, from 1, of the last event on or before a day in the same year of green-up; 0: none.
int DietPrior::event_before(Date day) const {
  int last = 0;
  for (std::size_t i = 0; i < events_.size(); ++i) {
    const Date date = events_[i].date;
    if (date > day || onset_year(date) != onset_year(day)) continue;
    if (last == 0 || date >= events_[static_cast<std::size_t>(last - 1)].date)
      last = static_cast<int>(i) + 1;
  }
  return last;
}

Expected DietPrior::on(DietNutrient nutrient, Date day) const {
  const std::size_t series = series_of(nutrient);
  const ClassCurve& curve = curves_[series];
  const int year = onset_year(day);
  const OnsetPrior late = onset(year);
  const double since = days_after(day) - late.turned_about;
  const double reach = model_.kernel.onset * late.share;
  const double slope = (curve.at(since - reach) - curve.at(since + reach)) / (2 * reach);

  Expected expected;
  expected.slope = slope * late.share;
  expected.swing = curve.at(since) - curve.mean() + slope * (late.expected - late.turned_about);
  expected.mean = model_.level[series] + curve.mean() + model_.depth[series] * expected.swing;
  expected.when = {static_cast<double>(day.julian_day()), season_start(green_up_, day).year(),
                   static_cast<int>(series), year, model_.depth[series] * expected.slope};
  if (const int event = event_before(day); event != 0) {
    expected.when.event = event;
    expected.when.event_sd =
        event_sd(word_of(events_[static_cast<std::size_t>(event - 1)].kind), nutrient);
  }
  return expected;
}

double DietPrior::class_curve(DietNutrient nutrient, Date day) const {
  return curves_[series_of(nutrient)].at(days_after(day) - onset(onset_year(day)).expected);
}

}  // namespace pluckbook
