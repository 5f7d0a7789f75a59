#include "advice/backtest.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <set>

#include "advice/crossing.h"
#include "cow/need.h"
#include "forage/series.h"
#include "numeric/interpolation.h"

namespace pluckbook {
namespace {

// The leads at which published calibration was done, and the gap between them filled.
constexpr std::array<std::pair<int, int>, 4> leads = {{{0, 45}, {46, 75}, {76, 105}, {106, 210}}};
constexpr int horizon_days = 180;
constexpr long supported_days = 21;  // a date this long after the last bag is still told by it
constexpr int stops_unwritten = 10;  // as the series takes it
constexpr double least_share = 0.01;

// ---- what is known of a pasture on a day -------------------------------------------------------

struct Seen {
  Date plucked;
  Share value;
  int stops;
};

/// The used bags of a series that hold the nutrient, the mean of their results each.
std::vector<Seen> bags_of(const DietSeries& series, DietNutrient nutrient) {
  std::vector<Seen> bags;
  for (const BagReading& reading : series.bags()) {
    if (!reading.used) continue;
    double sum = 0;
    int count = 0;
    for (const FootedResult& result : reading.results) {
      if (const auto& value = value_of(result, nutrient)) {
        sum += value->value.value();
        ++count;
      }
    }
    if (count > 0)
      bags.push_back(
          {reading.bag->plucked, Share(sum / count), reading.bag->stops.value_or(stops_unwritten)});
  }
  return bags;
}

/// A pasture as it was known at the end of a day.
struct Knowledge {
  Date day;
  const DietSeries& series;
  DietNutrient nutrient;
  std::vector<Seen> bags;  // never empty
};

Share line_at(const std::vector<Seen>& bags, Date day) {
  const Seen& last = bags.back();
  if (bags.size() < 2) return last.value;
  const Seen& before = bags[bags.size() - 2];
  const auto apart = static_cast<double>(days_between(before.plucked, last.plucked));
  if (apart <= 0 || apart > horizon_days) return last.value;  // two on one day, or another season
  const double ahead = static_cast<double>(days_between(last.plucked, day));
  const double at = last.value.value() + (last.value - before.value).value() / apart * ahead;
  return Share(std::clamp(at, least_share, 1 - least_share));
}

Share forecast(const Knowledge& known, Forecaster forecaster, Date day) {
  switch (forecaster) {
    case Forecaster::model:
      return known.series.on(known.nutrient, day).median;
    case Forecaster::last_value:
      return known.bags.back().value;
    case Forecaster::straight_line:
      return line_at(known.bags, day);
    case Forecaster::class_curve:
      return known.series.class_curve(known.nutrient, day);
  }
  return {};
}

// ---- forecasts of later bags -------------------------------------------------------------------

/// One forecast held against the bag that came.
struct Trial {
  double points, scaled;  // forecast less bag, in points of dry matter and on the scale
};

struct Tally {
  std::array<std::vector<Trial>, forecasters.size()> trials;
  double model_log_density = 0;
  int held = 0;
};

double log_normal_density(double error, double sd) {
  return -0.5 * std::log(2 * std::numbers::pi) - std::log(sd) - 0.5 * (error / sd) * (error / sd);
}

/// The model's spread of one bag: of the diet on that day, and the bag's own error.
double spread_of_bag(const Knowledge& known, const Seen& bag) {
  const double diet = known.series.sd_on(known.nutrient, bag.plucked);
  return std::sqrt(diet * diet + bag_variance(bag_error(known.nutrient), bag.stops));
}

void hold_against(const Knowledge& known, const Seen& bag, Tally& tally) {
  for (std::size_t i = 0; i < forecasters.size(); ++i) {
    const Share said = forecast(known, forecasters[i], bag.plucked);
    tally.trials[i].push_back(
        {in_percent(said - bag.value),
         to_scale(known.nutrient, said) - to_scale(known.nutrient, bag.value)});
  }
  const double error = tally.trials[0].back().scaled;
  const double sd = spread_of_bag(known, bag);
  tally.model_log_density += log_normal_density(error, sd);
  if (std::abs(error) <= normal_quantile(0.9) * sd) ++tally.held;
}

double root_mean_square(const std::vector<Trial>& trials, double Trial::*of) {
  double sum = 0;
  for (const Trial& trial : trials) sum += trial.*of * trial.*of;
  return trials.empty() ? 0 : std::sqrt(sum / static_cast<double>(trials.size()));
}

LeadScores scores_of(const Tally& tally, std::pair<int, int> lead) {
  LeadScores scores{lead.first, lead.second, {}, tally.held};
  for (std::size_t i = 0; i < forecasters.size(); ++i) {
    const std::vector<Trial>& trials = tally.trials[i];
    ForecastScore& score = scores.by_forecaster[i];
    score.bags = static_cast<int>(trials.size());
    if (trials.empty()) continue;
    score.rms_error = root_mean_square(trials, &Trial::points);
    const double sd = root_mean_square(trials, &Trial::scaled);
    score.log_score = forecasters[i] == Forecaster::model ? tally.model_log_density / score.bags
                                                          : log_normal_density(sd, sd);
  }
  return scores;
}

// ---- shortfall dates ---------------------------------------------------------------------------

struct DateTally {
  std::array<double, forecasters.size()> absolute_days{};
  int dates = 0;
};

Share need_share(const Need& need, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? need.tdn : need.crude_protein;
}

/// Need of a herd day by day; empty where the tables do not reach.
std::vector<Share> needs_of(const Herd& herd, DietNutrient nutrient, Date first) {
  std::vector<Share> needs;
  for (int day = 0; day <= horizon_days; ++day) {
    const Result<HerdNeed> need = need_on(herd, first + Days(day));
    if (!need) return {};
    needs.push_back(need_share(need->average, nutrient));
  }
  return needs;
}

/// Days from the first need to the shortfall; nothing when there is none.
template <class Diet>
std::optional<int> shortfall(const std::vector<Share>& needs, Date first, Diet diet) {
  return first_run(static_cast<int>(needs.size()), [&](int day) {
    return diet(first + Days(day)) < needs[static_cast<std::size_t>(day)];
  });
}

void judge_date(const Knowledge& known, const DietSeries& truth, Date last_bag, const Herd& herd,
                DateTally& tally) {
  const std::vector<Share> needs = needs_of(herd, known.nutrient, known.day);
  if (needs.empty()) return;
  const auto fell =
      shortfall(needs, known.day, [&](Date day) { return truth.on(known.nutrient, day).median; });
  if (!fell || *fell == 0 || known.day + Days(*fell) > last_bag + Days(supported_days)) return;
  for (std::size_t i = 0; i < forecasters.size(); ++i) {
    const auto said =
        shortfall(needs, known.day, [&](Date day) { return forecast(known, forecasters[i], day); });
    tally.absolute_days[i] += std::abs(said.value_or(horizon_days) - *fell);
  }
  ++tally.dates;
}

// ---- the replay --------------------------------------------------------------------------------

struct Replay {
  std::array<std::array<Tally, leads.size()>, diet_nutrients.size()> tallies;
  std::array<DateTally, diet_nutrients.size()> dates;
  int results = 0;
};

std::optional<std::size_t> lead_of(long days) {
  for (std::size_t i = 0; i < leads.size(); ++i)
    if (days >= leads[i].first && days <= leads[i].second) return i;
  return std::nullopt;
}

void replay_nutrient(const Book& then, const Knowledge& known, const DietSeries& truth,
                     std::array<Tally, leads.size()>& tallies, DateTally& dates) {
  const Date newest = known.bags.back().plucked;
  Date last_bag = newest;
  for (const Seen& bag : bags_of(truth, known.nutrient)) {
    if (bag.plucked <= newest) continue;
    last_bag = bag.plucked;
    if (const auto lead = lead_of(days_between(newest, bag.plucked)))
      hold_against(known, bag, tallies[*lead]);
  }
  if (last_bag == newest) return;
  for (const Herd& herd : then.herds) {
    const Move* move = move_of(then, herd.id, known.day);
    if (move != nullptr && move->pasture == known.series.pasture().id)
      judge_date(known, truth, last_bag, herd, dates);
  }
}

Result<Done> replay_day(const Book& book, const DietSeries& truth, Date day, Replay& replay) {
  const Book then = as_of(book, day);
  const Pasture* pasture = find_pasture(then, truth.pasture().id);
  const Result<DietSeries> series = DietSeries::of(then, *pasture);
  if (!series) return series.problems();
  for (std::size_t i = 0; i < diet_nutrients.size(); ++i) {
    const Knowledge known{day, *series, diet_nutrients[i], bags_of(*series, diet_nutrients[i])};
    if (!known.bags.empty())
      replay_nutrient(then, known, truth, replay.tallies[i], replay.dates[i]);
  }
  ++replay.results;
  return Done{};
}

/// The days on which something came to be known of a pasture.
std::set<Date> days_of_results(const DietSeries& truth) {
  std::set<Date> days;
  for (const BagReading& reading : truth.bags()) {
    if (!reading.used) continue;
    for (const LabResult& result : reading.bag->results) days.insert(result.received);
  }
  return days;
}

NutrientBacktest summed_up(const Replay& replay, std::size_t i) {
  NutrientBacktest out;
  out.nutrient = diet_nutrients[i];
  for (std::size_t lead = 0; lead < leads.size(); ++lead)
    out.leads.push_back(scores_of(replay.tallies[i][lead], leads[lead]));
  const DateTally& dates = replay.dates[i];
  for (std::size_t f = 0; f < forecasters.size(); ++f) {
    if (dates.dates > 0) out.dates[f] = {dates.dates, dates.absolute_days[f] / dates.dates};
  }
  return out;
}

bool nothing_followed(const Replay& replay) {
  for (const auto& of_nutrient : replay.tallies)
    for (const Tally& tally : of_nutrient)
      if (!tally.trials[0].empty()) return false;
  return true;
}

}  // namespace

Result<Backtest> backtest(const Book& book, const std::vector<const Pasture*>& pastures,
                          const Progress& progress) {
  std::vector<DietSeries> truths;
  std::vector<std::pair<std::size_t, Date>> days;
  for (const Pasture* pasture : pastures) {
    Result<DietSeries> truth = DietSeries::of(book, *pasture);
    if (!truth) return truth.problems();
    for (const Date day : days_of_results(*truth)) days.emplace_back(truths.size(), day);
    truths.push_back(*std::move(truth));
  }
  Replay replay;
  for (std::size_t i = 0; i < days.size(); ++i) {
    const Result<Done> done = replay_day(book, truths[days[i].first], days[i].second, replay);
    if (!done) return done.problems();
    progress(i + 1, days.size());
  }
  if (nothing_followed(replay)) {
    return input_problem("there is nothing to replay: no result is followed by a later bag",
                         "it takes two bags of one pasture, a result for each");
  }
  Backtest out{pastures, replay.results, {}};
  for (std::size_t i = 0; i < diet_nutrients.size(); ++i)
    out.nutrients.push_back(summed_up(replay, i));
  return out;
}

}  // namespace pluckbook
