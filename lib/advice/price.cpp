#include "advice/price.h"

#include <algorithm>

#include "supplement/labels.h"

namespace pluckbook {
namespace {

constexpr double covers[] = {0.50, 0.75, 0.80, 0.90};

std::vector<std::size_t> feeds_in(const Mix& mix) {
  std::vector<std::size_t> which;
  for (const MixPart& part : mix.parts) which.push_back(part.offer);
  return which;
}

void append(std::vector<std::string>& all, const std::vector<std::string>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

void add_offers(const Book& book, PriceAnswer& answer) {
  OffersOnDay on_day = offers_on(book, answer.date);
  answer.offers = std::move(on_day.offers);
  append(answer.notes, on_day.notes);
}

bool same_choice(const Mix& a, const Mix& b) {
  return a.status == b.status && a.feedings_per_week == b.feedings_per_week &&
         feeds_in(a) == feeds_in(b);
}

/// The ends of the displacement range at which something else would be bought.
std::vector<DisplacedMix> other_choices(const PriceAnswer& answer) {
  std::vector<DisplacedMix> others;
  for (const DisplacementEnd end : {DisplacementEnd::low, DisplacementEnd::high}) {
    GrazingDay day = answer.day;
    day.displaced = end;
    Mix mix = cheapest_mix(day, answer.offers);
    if (!same_choice(mix, answer.mix)) others.push_back({end, std::move(mix)});
  }
  return others;
}

/// Everything about the feeds, once the day and the offers are known.
void price_offers(PriceAnswer& answer) {
  answer.mix = cheapest_mix(answer.day, answer.offers);
  answer.options = all_options(answer.day, answer.offers, answer.mix);
  answer.runner_up = runner_up(answer.day, answer.offers, answer.mix);
  if (answer.mix.status != MixStatus::none_needed) answer.displaced = other_choices(answer);
  answer.protein = mix_protein(answer.day, answer.offers, answer.mix);
  answer.cautions = cautions_for(answer.day, answer.offers, feeds_in(answer.mix));
  append(answer.notes, labels_over_ceilings(answer.day, answer.offers));
}

void take_day(FeedingDay day, const PriceSettings& settings, PriceAnswer& answer) {
  answer.intake = day.intake;
  answer.intake_recovered = day.intake_recovered;
  answer.gaps = std::move(day.gaps);
  answer.day = day.grazing;
  answer.day.energy = settings.energy;
  answer.day.protein = settings.protein;
}

/// A herd on its pasture: its day at any cover.
struct OnPasture {
  const Book& book;
  const DietSeries& series;
  const PriceSettings& settings;

  void take_day_at(double cover, PriceAnswer& answer) const {
    const NewestFigures newest = series.newest_result(answer.date);
    const Diet diet = diet_at_cover(series, newest, answer.date, cover);
    const FedIntake fed = settings.intake_recovers ? FedIntake::recovered : FedIntake::held;
    take_day(feeding_day(*answer.herd, answer.need, diet, newest, fed,
                         trip_cost_per_head(book, *answer.pasture, *answer.herd)),
             settings, answer);
    take_water_of(*answer.pasture, answer.day);
  }
};

std::vector<CoverStep> steps_of_certainty(const OnPasture& place, const PriceAnswer& answer) {
  std::vector<CoverStep> steps;
  for (const double cover : covers) {
    PriceAnswer at = answer;
    place.take_day_at(cover, at);
    steps.push_back({cover, cheapest_mix(at.day, at.offers)});
  }
  return steps;
}

HerdNeed need_of_one(const LoneDay& lone, Need need) {
  if (lone.need_crude_protein)
    need.crude_protein = need.crude_protein_table = *lone.need_crude_protein / need.intake;
  if (lone.need_tdn) need.tdn = *lone.need_tdn / need.intake;
  HerdNeed herd;
  herd.average = herd.hardest_quarter = std::move(need);
  herd.milking_share = lone.animal.milking ? 1 : 0;
  return herd;
}

}  // namespace

Result<PriceAnswer> price_for(const Book& book, const Herd& herd, const PriceSettings& settings) {
  const Date day = settings.day;
  const Result<Whereabouts> grazing = grazing_of(book, herd, day);
  if (!grazing) return grazing.problems();
  if (book.feeds.empty()) return nothing_on_offer(book, day);
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
  const OnPasture place{book, *series, settings};
  place.take_day_at(settings.cover, answer);
  if (grazing->move->bare) {
    answer.notes.push_back(
        "the pasture is grazed short: the intake assumed here is not to be had, so energy is "
        "shorter than this says; hay or a move comes first");
  }
  if (trip_cost_per_head(book, *grazing->pasture, herd) == 0) {
    answer.notes.push_back(
        "a feeding trip is taken as free, so that feeding every day costs no more: write what one "
        "costs into book.yaml (trip: 18.00)");
  }
  add_offers(book, answer);
  if (answer.offers.empty()) return nothing_on_offer(book, day);
  price_offers(answer);
  answer.certainty = steps_of_certainty(place, answer);
  return answer;
}

Herd herd_of(const LoneDay& lone) {
  Herd herd;
  herd.head = lone.head;
  herd.cow_class = lone.animal.cow_class;
  herd.weight = lone.animal.weight;
  herd.mature_weight = lone.animal.mature_weight;
  herd.peak_milk = lone.animal.peak_milk;
  return herd;
}

Result<PriceAnswer> price_alone(const LoneDay& lone, const Herd& herd, const Book& feeds,
                                const PriceSettings& settings) {
  Result<Need> need = need_of(lone.animal);
  if (!need) return need.problems();
  PriceAnswer answer;
  answer.herd = &herd;
  answer.date = settings.day;
  answer.cover = 0.5;
  answer.need = need_of_one(lone, std::move(*need));
  const Diet diet{lone.forage.crude_protein->value, lone.forage.tdn->value, lone.forage.ndf};
  const double trip = lone.trip / std::max(1, lone.head);
  const FedIntake fed = settings.intake_recovers ? FedIntake::recovered : FedIntake::held;
  take_day(lone.intake ? feeding_day_on(herd, answer.need, diet, &lone.forage, *lone.intake, trip)
                       : feeding_day(herd, answer.need, diet, &lone.forage, fed, trip),
           settings, answer);
  add_offers(feeds, answer);
  if (answer.offers.empty()) return nothing_on_offer(feeds, settings.day);
  price_offers(answer);
  return answer;
}

}  // namespace pluckbook
