#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "advice/outlook.h"

namespace pluckbook {
namespace {

// A bag plucked today is answered in about two weeks; earlier days cannot be had, and beyond six
// weeks the usual habit of two to four weeks is long past.
constexpr int farthest_days = 42;
constexpr int day_step = 7;
constexpr int stops_planned = 20;  // common practice

struct Candidate {
  const Pasture* pasture = nullptr;
  Date bag_day;
  double gain = 0;  // days of the shortfall date's spread that the bag would take away
  Date target;
};

/// Where the herd grazes on a day, its planned moves followed.
const Pasture& pasture_on(const HerdOutlook& outlook, Date day) {
  const Pasture* there = outlook.pasture;
  for (const Whereabouts& next : outlook.moves_ahead)
    if (next.move->date <= day) there = next.pasture;
  return *there;
}

/// Days by which one bag on `bag_day` narrows the spread of the date: the fall of the scaled sd
/// over the slope of the median at the crossing.
std::optional<Candidate> best_for(const Book& book, const HerdOutlook& outlook, Date today) {
  const auto protein =
      std::find_if(outlook.nutrients.begin(), outlook.nutrients.end(),
                   [](const auto& n) { return n.nutrient == DietNutrient::crude_protein; });
  if (protein == outlook.nutrients.end() || protein->below_now || !protein->falls_below.median) {
    return std::nullopt;
  }
  const Date target = *protein->falls_below.median;
  const Pasture& there = pasture_on(outlook, target);
  const Result<DietSeries> series = DietSeries::of(book, there);
  if (!series) return std::nullopt;
  const auto scaled = [&](Date day) {
    return to_scale(DietNutrient::crude_protein,
                    series->on(DietNutrient::crude_protein, day).median);
  };
  const double slope = std::abs(scaled(target + Days(7)) - scaled(target - Days(7))) / 14;
  if (slope < 1e-4) return std::nullopt;  // the diet hardly moves: no date to narrow
  const double before = series->sd_on(DietNutrient::crude_protein, target);
  Candidate best;
  for (int ahead = 0; ahead <= farthest_days; ahead += day_step) {
    const Date bag_day = today + Days(ahead);
    if (bag_day > target) break;
    const double after =
        series->sd_after_bag(DietNutrient::crude_protein, target, bag_day, stops_planned);
    const double gain = (before - after) / slope;
    if (best.pasture == nullptr || gain > best.gain) {
      best = {&there, bag_day, gain, target};
    }
  }
  if (best.pasture == nullptr) return std::nullopt;
  return best;
}

/// The grazed pasture that has waited longest, when no projected date can be narrowed.
std::optional<NextSample> by_habit(const Book& book, const std::vector<HerdOutlook>& outlooks,
                                   Date today) {
  std::optional<NextSample> oldest;
  long longest = -1;
  for (const HerdOutlook& outlook : outlooks) {
    long waited = 365;
    for (const Bag& bag : book.bags) {
      if (bag.pasture == outlook.pasture->id && bag.method == Method::hand_plucked) {
        waited = std::min(waited, days_between(bag.plucked, today));
      }
    }
    if (waited > longest) {
      longest = waited;
      const std::string last = waited >= 365 ? "no bag of the last year"
                                             : fmt::format("the last bag is {} days old", waited);
      oldest = {outlook.pasture, today + Days(std::max(0L, 28 - waited)),
                last +
                    "; every two to four weeks while grass changes, four to six when dormant "
                    "(common practice)"};
    }
  }
  return oldest;
}

}  // namespace

std::optional<NextSample> next_sample(const Book& book, const std::vector<HerdOutlook>& outlooks,
                                      const OutlookSettings& settings) {
  std::optional<Candidate> best;
  for (const HerdOutlook& outlook : outlooks) {
    const auto candidate = best_for(book, outlook, settings.as_of);
    if (candidate && (!best || candidate->gain > best->gain)) best = candidate;
  }
  if (!best || best->gain < 1) return by_habit(book, outlooks, settings.as_of);
  return NextSample{best->pasture, best->bag_day,
                    fmt::format("one more bag would narrow the protein date ({}) by about {} days "
                                "either way; the usual habit is every two to four weeks",
                                in_words(best->target), std::lround(best->gain))};
}

}  // namespace pluckbook
