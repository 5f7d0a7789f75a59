#include "advice/price.h"

namespace pluckbook {
namespace {

/// The day at the cover asked for: diet, intake, gaps, and what the model needs.
void set_day(const Book& book, const DietSeries& series, const PriceSettings& settings,
             PriceAnswer& answer) {
  const NewestFigures newest = series.newest_result(answer.date);
  const Diet diet = diet_at_cover(series, newest, answer.date, answer.cover);
  const FedIntake fed = settings.intake_recovers ? FedIntake::recovered : FedIntake::held;
  FeedingDay day = feeding_day(*answer.herd, answer.need, diet, newest, fed,
                               trip_cost_per_head(book, *answer.pasture, *answer.herd));
  answer.intake = day.intake;
  answer.intake_recovered = day.intake_recovered;
  answer.gaps = std::move(day.gaps);
  answer.day = std::move(day.grazing);
  take_water_of(*answer.pasture, answer.day);
}

void add_offers(const Book& book, PriceAnswer& answer) {
  OffersOnDay on_day = offers_on(book, answer.date);
  answer.offers = std::move(on_day.offers);
  answer.notes.insert(answer.notes.end(), on_day.notes.begin(), on_day.notes.end());
}

std::vector<std::size_t> feeds_in(const Mix& mix) {
  std::vector<std::size_t> which;
  for (const MixPart& part : mix.parts) which.push_back(part.offer);
  return which;
}

}  // namespace

Result<PriceAnswer> price_for(const Book& book, const Herd& herd, const PriceSettings& settings) {
  const Date day = settings.day;
  const Result<Whereabouts> grazing = grazing_of(book, herd, day);
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
