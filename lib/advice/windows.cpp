#include "advice/windows.h"

#include <algorithm>
#include <map>

#include "advice/outlook.h"

namespace pluckbook {
namespace {

/// The diets of one pasture over all days ahead.
struct PastureAhead {
  DietSeries series;
  std::optional<FootedResult> figures;
  DietSeries::Paths paths;
};

Result<PastureAhead> pasture_ahead(const Book& book, const Pasture& pasture,
                                   const WindowSettings& settings) {
  Result<DietSeries> series = DietSeries::of(book, pasture);
  if (!series) return series.problems();
  PastureAhead ahead{std::move(*series), std::nullopt, {}};
  if (const FootedResult* newest = ahead.series.newest_result(settings.as_of))
    ahead.figures = *newest;
  if (settings.paths > 0)
    ahead.paths = ahead.series.paths(settings.as_of, settings.until, settings.paths, settings.seed);
  return ahead;
}

std::optional<Share> fibre_of(const PastureAhead& ahead) {
  return ahead.figures ? ahead.figures->ndf : std::nullopt;
}

void set_diets(const PastureAhead& ahead, Date middle, const WindowSettings& settings,
               FeedingWindow& window) {
  window.figures = ahead.figures;
  window.at_cover = diet_at_cover(ahead.series, window.newest(), middle, settings.cover);
  window.median = diet_at_cover(ahead.series, window.newest(), middle, 0.5);
  const long day = days_between(settings.as_of, middle);
  for (int path = 0; path < settings.paths; ++path)
    window.paths.push_back({Share(ahead.paths.crude_protein(day, path)),
                            Share(ahead.paths.tdn(day, path)), fibre_of(ahead)});
}

/// The last day of a window that begins on `first`. A rest of fewer than half as many days is fed
/// on alike: nobody changes the feeder for it.
Date last_of_window(Date first, const WindowSettings& settings) {
  const Date last = first + Days(settings.change_every - 1);
  const long rest = days_between(last, settings.until);
  return rest * 2 < settings.change_every ? settings.until : last;
}

}  // namespace

FeedingDay day_in(const FeedingWindow& window, const Herd& herd, const Diet& diet, FedIntake fed) {
  FeedingDay day = feeding_day(herd, window.need, diet, window.newest(), fed, window.trip_per_head);
  take_water_of(*window.pasture, day.grazing);
  return day;
}

Result<std::vector<FeedingWindow>> windows_ahead(const Book& book, const Herd& herd,
                                                 const WindowSettings& settings) {
  std::vector<FeedingWindow> windows;
  std::map<const Pasture*, PastureAhead> pastures;
  for (Date first = settings.as_of; first <= settings.until;
       first = windows.back().last + Days(1)) {
    FeedingWindow window;
    window.first = first;
    window.last = last_of_window(first, settings);
    const Date middle = first + Days((window.days() - 1) / 2);
    const Result<Whereabouts> grazing = grazing_of(book, herd, middle);
    if (!grazing) return grazing.problems();
    window.pasture = grazing->pasture;
    window.trip_per_head = trip_cost_per_head(book, *window.pasture, herd);
    Result<HerdNeed> need = need_on(herd, middle);
    if (!need) return need.problems();
    window.need = std::move(*need);
    auto known = pastures.find(window.pasture);
    if (known == pastures.end()) {
      Result<PastureAhead> ahead = pasture_ahead(book, *window.pasture, settings);
      if (!ahead) return ahead.problems();
      known = pastures.emplace(window.pasture, std::move(*ahead)).first;
    }
    set_diets(known->second, middle, settings, window);
    windows.push_back(std::move(window));
  }
  return windows;
}

}  // namespace pluckbook
