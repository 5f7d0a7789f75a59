#include "advice/horizon.h"

#include <algorithm>
#include <map>

#include "published/energetics.h"

namespace pluckbook {
namespace {

/// Where the herd stands on the first day, then each move ahead, in order of date.
Result<std::vector<Whereabouts>> whereabouts_ahead(const Book& book, const Herd& herd,
                                                   const OutlookSettings& settings) {
  std::vector<Whereabouts> all;
  for (Date day = settings.as_of; day <= settings.until; day += Days(1)) {
    Result<Whereabouts> where = grazing_of(book, herd, day);
    if (!where) return where.problems();
    if (all.empty() || where->move != all.back().move) all.push_back(*where);
  }
  return all;
}

/// The diets of the pastures ahead, each drawn once over all days.
class Pastures {
 public:
  Pastures(const Book& book, const DietSeries& here, const OutlookSettings& settings)
      : book_(book), here_(here), settings_(settings) {}

  struct Ahead {
    DietSeries::Paths paths;
    std::optional<Share> ndf, degradable;
  };

  Result<const Ahead*> ahead(const Pasture& pasture) {
    const auto known = drawn_.find(&pasture);
    if (known != drawn_.end()) return &known->second;
    if (&pasture == &here_.pasture()) return draw(here_);
    const Result<DietSeries> series = DietSeries::of(book_, pasture);
    if (!series) return series.problems();
    return draw(*series);
  }

 private:
  const Ahead* draw(const DietSeries& series) {
    Ahead ahead;
    // Pastures stray apart from each other: each has numbers of its own.
    ahead.paths = series.paths(settings_.as_of, settings_.until, settings_.paths,
                               settings_.seed + drawn_.size());
    if (const FootedResult* newest = series.newest_result(settings_.as_of)) {
      ahead.ndf = newest->ndf;
      ahead.degradable = newest->degradable;
    }
    return &drawn_.emplace(&series.pasture(), std::move(ahead)).first->second;
  }

  const Book& book_;
  const DietSeries& here_;
  const OutlookSettings& settings_;
  std::map<const Pasture*, Ahead> drawn_;
};

/// The rows of a stay's days, from the pasture it is in.
void put_days(const DietSeries::Paths& from, int first, int past_last, DietSeries::Paths& to) {
  const int days = past_last - first;
  to.crude_protein.middleRows(first, days) = from.crude_protein.middleRows(first, days);
  to.tdn.middleRows(first, days) = from.tdn.middleRows(first, days);
}

Result<std::vector<HerdNeed>> needs_ahead(const Herd& herd, const OutlookSettings& settings) {
  std::vector<HerdNeed> needs;
  for (Date day = settings.as_of; day <= settings.until; day += Days(1)) {
    Result<HerdNeed> need = need_on(herd, day);
    if (!need) return need.problems();
    needs.push_back(std::move(*need));
  }
  return needs;
}

}  // namespace

Share share_of(const Need& need, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? need.tdn : need.crude_protein;
}

const Balance& balance_in(const DayBalance& day, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? day.tdn : day.crude_protein;
}

Balance degradable_balance(const DayBalance& day, Share degradable) {
  return {day.tdn.supply * microbial_figures().share,
          day.crude_protein.supply * degradable.value()};
}

Share Horizon::diet(DietNutrient nutrient, int day, int path) const {
  return Share(nutrient == DietNutrient::tdn ? paths.tdn(day, path)
                                             : paths.crude_protein(day, path));
}

Share Horizon::need(DietNutrient nutrient, int day) const {
  return share_of(needs[static_cast<std::size_t>(day)].average, nutrient);
}

Result<Horizon> horizon_of(const Book& book, const Herd& herd, const DietSeries& here,
                           const OutlookSettings& settings) {
  Result<std::vector<HerdNeed>> needs = needs_ahead(herd, settings);
  if (!needs) return needs.problems();
  const Result<std::vector<Whereabouts>> ahead = whereabouts_ahead(book, herd, settings);
  if (!ahead) return ahead.problems();
  Horizon horizon{&herd, settings.as_of, std::move(*needs), {}, {}, {}};
  horizon.paths.first = settings.as_of;
  horizon.paths.crude_protein.resize(horizon.days(), settings.paths);
  horizon.paths.tdn.resize(horizon.days(), settings.paths);
  Pastures pastures(book, here, settings);
  for (std::size_t i = 0; i < ahead->size(); ++i) {
    const Whereabouts& where = (*ahead)[i];
    const Result<const Pastures::Ahead*> there = pastures.ahead(*where.pasture);
    if (!there) return there.problems();
    horizon.stays.push_back({where, (*there)->ndf, (*there)->degradable});
    const auto index_of = [&](const Move& move) {
      return static_cast<int>(std::max(0L, days_between(settings.as_of, move.date)));
    };
    const int first = index_of(*where.move);
    const int past_last = i + 1 < ahead->size() ? index_of(*(*ahead)[i + 1].move) : horizon.days();
    put_days((*there)->paths, first, past_last, horizon.paths);
    horizon.stay_on.resize(static_cast<std::size_t>(past_last), i);
  }
  return horizon;
}

void for_each_path(const Horizon& horizon, IntakeReading reading,
                   const std::function<void(const std::vector<DayBalance>&)>& take) {
  std::vector<IntakeOn> intake_on;
  for (const HerdNeed& need : horizon.needs)
    intake_on.emplace_back(*horizon.herd, need, reading.rule);
  std::vector<DayBalance> days(static_cast<std::size_t>(horizon.days()));
  for (int path = 0; path < horizon.count(); ++path) {
    for (int day = 0; day < horizon.days(); ++day) {
      const auto at = static_cast<std::size_t>(day);
      const Diet diet{horizon.diet(DietNutrient::crude_protein, day, path),
                      horizon.diet(DietNutrient::tdn, day, path),
                      reading.gut_ceiling ? horizon.stay(day).ndf : std::nullopt};
      days[at] = balance_at(horizon.needs[at], diet, intake_on[at](diet));
    }
    take(days);
  }
}

}  // namespace pluckbook
