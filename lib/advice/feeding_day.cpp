#include "advice/feeding_day.h"

#include <fmt/format.h>

#include <algorithm>

#include "book/first_lines.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

GrazingDay grazing_day(const Herd& herd, const HerdNeed& need, const Diet& diet,
                       KgDmPerDay forage_intake, NewestFigures newest) {
  GrazingDay day;
  day.weight = need.average.weight;
  day.milking = need.milking_share > 0.5;
  day.young = herd.cow_class != CowClass::mature_cow && herd.cow_class != CowClass::bull;
  day.bull = herd.cow_class == CowClass::bull;
  day.forage_intake = forage_intake;
  day.crude_protein = diet.crude_protein;
  day.tdn = diet.tdn;
  if (newest != nullptr) {
    day.ndf = newest->ndf;
    day.fat = newest->fat;
    day.calcium = newest->calcium;
    day.phosphorus = newest->phosphorus;
    day.nitrate_n_ppm = newest->nitrate_n_ppm;
  }
  day.need_crude_protein = need.average.crude_protein_amount();
  day.need_tdn = need.average.tdn_amount();
  day.need_nem = need.average.nem;
  day.need_calcium = need.average.intake * need.average.calcium;
  day.need_phosphorus = need.average.intake * need.average.phosphorus;
  return day;
}

FeedingDay day_of(const Herd& herd, const HerdNeed& need, const Diet& diet, NewestFigures newest,
                  const Intake& intake) {
  FeedingDay day;
  day.intake = intake;
  const DayBalance balance = balance_at(need, diet, intake);
  day.gaps = {{DietNutrient::crude_protein, balance.crude_protein, diet.crude_protein,
               need.average.crude_protein},
              {DietNutrient::tdn, balance.tdn, diet.tdn, need.average.tdn}};
  day.grazing = grazing_day(herd, need, diet, intake.amount, newest);
  return day;
}

/// One line for all the quotes that are old, so that none is overlooked among the others.
void note_old_quotes(OffersOnDay& on_day) {
  std::vector<std::string> old;
  for (const FeedOffer& offer : on_day.offers)
    if (offer.old_quote_days)
      old.push_back(fmt::format("{} ({} days)", offer.id, *offer.old_quote_days));
  if (!old.empty())
    on_day.notes.push_back(
        fmt::format("quotes over 60 days old, ask again: {}", fmt::join(old, ", ")));
}

}  // namespace

Diet diet_at_cover(const DietSeries& series, NewestFigures newest, Date day, double cover) {
  const DietSeries::Both held = series.quantiles(day, 1 - cover);
  Diet diet{held.crude_protein, held.tdn, std::nullopt};
  if (newest != nullptr) diet.ndf = newest->ndf;
  return diet;
}

Intake fed_intake(const Herd& herd, const HerdNeed& need, const Diet& diet, FedIntake fed) {
  Diet eaten = diet;
  if (fed == FedIntake::recovered)
    eaten.crude_protein =
        std::max(diet.crude_protein, from_percent(intake_rules().cp_floor_percent));
  return intake_of(herd, need, eaten, leading_rule(herd));
}

FeedingDay feeding_day(const Herd& herd, const HerdNeed& need, const Diet& diet,
                       NewestFigures newest, FedIntake fed, double trip_cost_per_head) {
  FeedingDay day = day_of(herd, need, diet, newest, fed_intake(herd, need, diet, fed));
  day.intake_recovered = fed_intake(herd, need, diet, FedIntake::recovered).amount;
  day.grazing.trip_cost_per_head = trip_cost_per_head;
  return day;
}

FeedingDay feeding_day_on(const Herd& herd, const HerdNeed& need, const Diet& diet,
                          NewestFigures newest, KgDmPerDay eaten, double trip_cost_per_head) {
  Intake intake;
  intake.amount = intake.before_limits = eaten;
  intake.rule = IntakeRule::own_figure;
  intake.weight = need.average.weight;
  FeedingDay day = day_of(herd, need, diet, newest, intake);
  day.intake_recovered = eaten;
  day.grazing.trip_cost_per_head = trip_cost_per_head;
  return day;
}

void take_water_of(const Pasture& pasture, GrazingDay& day) {
  day.water_sulfate_ppm = pasture.water_sulfate_ppm;
  day.water_solids_ppm = pasture.water_solids_ppm;
}

double trip_cost_per_head(const Book& book, const Pasture& pasture, const Herd& herd) {
  return pasture.trip.value_or(book.trip) / std::max(1, herd.head);
}

OffersOnDay offers_on(const Book& book, Date day) {
  OffersOnDay on_day;
  for (const Feed& feed : book.feeds) {
    Result<FeedOffer> offer = offer_of(feed, day);
    if (!offer) {
      on_day.notes.push_back(
          fmt::format("{} is left out: {}", feed.id, offer.problems().front().what));
    } else if (!offer->cost) {
      on_day.notes.push_back(
          fmt::format("{} is left out: no quote on or before {}", feed.id, in_words(day)));
    } else {
      for (const std::string& note : offer->notes) {
        on_day.notes.push_back(fmt::format("{}: {}", feed.id, note));
      }
      on_day.offers.push_back(std::move(*offer));
    }
  }
  note_old_quotes(on_day);
  return on_day;
}

Problem nothing_on_offer(const Book& book, Date day) {
  if (book.feeds.empty()) {
    return input_problem("the book holds no feed to price",
                         line_to_add("feed", "cube-20", book.currency));
  }
  const std::vector<std::string> notes = offers_on(book, day).notes;
  return input_problem("no feed can be priced on " + to_iso(day),
                       fmt::format("{}; add to it  quote: {{price: 355 {}/ton, date: {}}}",
                                   notes.back(), book.currency, to_iso(day)));
}

}  // namespace pluckbook
