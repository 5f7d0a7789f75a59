#include "advice/price.h"

#include <fmt/format.h>

#include <algorithm>

#include "numeric/interpolation.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

/// The diet that `cover` of the outcomes are better than.
Share cautious(const DietSeries& series, DietNutrient nutrient, Date day, double cover) {
  const double middle = to_scale(nutrient, series.on(nutrient, day).median);
  return from_scale(nutrient, middle + series.sd_on(nutrient, day) * normal_quantile(1 - cover));
}

GrazingDay grazing_day(const Book& book, const Herd& herd, const Pasture& pasture,
                       const DietSeries& series, const PriceAnswer& answer, const Diet& diet) {
  GrazingDay day;
  day.weight = answer.need.average.weight;
  day.milking = answer.need.milking_share > 0.5;
  day.young = herd.cow_class != CowClass::mature_cow && herd.cow_class != CowClass::bull;
  day.bull = herd.cow_class == CowClass::bull;
  day.forage_intake = answer.intake.amount;
  day.crude_protein = diet.crude_protein;
  day.tdn = diet.tdn;
  if (const FootedResult* result = series.newest_result(answer.date)) {
    day.ndf = result->ndf;
    day.fat = result->fat;
    day.calcium = result->calcium;
    day.phosphorus = result->phosphorus;
  }
  day.need_crude_protein = answer.need.average.crude_protein_amount();
  day.need_tdn = answer.need.average.tdn_amount();
  day.need_calcium = answer.need.average.intake * answer.need.average.calcium;
  day.need_phosphorus = answer.need.average.intake * answer.need.average.phosphorus;
  day.trip_cost_per_head = pasture.trip.value_or(book.trip) / std::max(1, herd.head);
  return day;
}

/// The day at the cover asked for: diet, intake, gaps, and what the model needs.
void set_day(const Book& book, const DietSeries& series, const PriceSettings& settings,
             PriceAnswer& answer) {
  const Herd& herd = *answer.herd;
  Diet diet{cautious(series, DietNutrient::crude_protein, answer.date, answer.cover),
            cautious(series, DietNutrient::tdn, answer.date, answer.cover), std::nullopt};
  if (const FootedResult* newest = series.newest_result(answer.date)) diet.ndf = newest->ndf;
  const IntakeRule rule = leading_rule(herd);
  Diet fed = diet;
  fed.crude_protein = std::max(diet.crude_protein, from_percent(intake_rules().cp_floor_percent));
  const Intake recovered = intake_of(herd, answer.need, fed, rule);
  answer.intake_recovered = recovered.amount;
  answer.intake = settings.intake_recovers ? recovered : intake_of(herd, answer.need, diet, rule);
  const DayBalance balance = balance_at(answer.need, diet, answer.intake);
  answer.gaps = {{DietNutrient::crude_protein, balance.crude_protein, diet.crude_protein,
                  answer.need.average.crude_protein},
                 {DietNutrient::tdn, balance.tdn, diet.tdn, answer.need.average.tdn}};
  answer.day = grazing_day(book, herd, *answer.pasture, series, answer, diet);
}

void add_offers(const Book& book, PriceAnswer& answer) {
  for (const Feed& feed : book.feeds) {
    Result<FeedOffer> offer = offer_of(feed, answer.date);
    if (!offer) {
      answer.notes.push_back(
          fmt::format("{} is left out: {}", feed.id, offer.problems().front().what));
    } else if (!offer->cost) {
      answer.notes.push_back(
          fmt::format("{} is left out: no quote on or before {}", feed.id, in_words(answer.date)));
    } else {
      for (const std::string& note : offer->notes) {
        answer.notes.push_back(fmt::format("{}: {}", feed.id, note));
      }
      answer.offers.push_back(std::move(*offer));
    }
  }
}

std::vector<std::size_t> feeds_in(const Mix& mix) {
  std::vector<std::size_t> which;
  for (const MixPart& part : mix.parts) which.push_back(part.offer);
  return which;
}

}  // namespace

Result<PriceAnswer> price_for(const Book& book, const Herd& herd, const PriceSettings& settings) {
  const Date day = settings.day;
  const Result<Grazing> grazing = grazing_of(book, herd, day);
  if (!grazing) return grazing.problems();
  if (book.feeds.empty()) {
    return input_problem("the book holds no feeds to price", "write what is offered in feeds.yaml");
  }
  Result<DietSeries> series = DietSeries::of(book, *grazing->pasture);
  if (!series) return series.problems();
  Result<HerdNeed> need = need_on(herd, day);
  if (!need) return need.problems();

  PriceAnswer answer;
  answer.herd = &herd;
  answer.pasture = grazing->pasture;
  answer.date = day;
  answer.cover = settings.cover;
  answer.need = std::move(*need);
  set_day(book, *series, settings, answer);
  if (grazing->move->bare) {
    answer.notes.push_back(
        "the pasture is grazed short: the intake assumed here is not to be had, so energy is "
        "shorter than this says; hay or a move comes first");
  }
  add_offers(book, answer);
  if (answer.offers.empty()) {
    return input_problem("no feed of the book can be priced on " + to_iso(day),
                         answer.notes.empty() ? "" : answer.notes.back());
  }
  answer.mix = cheapest_mix(answer.day, answer.offers);
  answer.options = all_options(answer.day, answer.offers, answer.mix);
  answer.cautions = cautions_for(answer.day, answer.offers, feeds_in(answer.mix));
  return answer;
}

}  // namespace pluckbook
