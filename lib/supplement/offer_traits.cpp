#include "supplement/offer_traits.h"

#include <algorithm>

#include "published/rules.h"

namespace pluckbook {
namespace {

constexpr double grain_starch = 0.50;     // assumed: oats, the leanest grain, hold about 40 to 55 %
constexpr double protein_feed_cp = 0.25;  // Moore et al. 1999 threshold, as facts of displacement

bool allows(const FeedOffer& offer, int feedings_per_week) {
  if (offer.feed == nullptr || offer.feed->feedings_per_week.empty()) return feedings_per_week == 7;
  const auto& ways = offer.feed->feedings_per_week;
  return std::find(ways.begin(), ways.end(), feedings_per_week) != ways.end();
}

std::string class_of(const FeedOffer& offer) {
  if (!offer.feed_class.empty()) return offer.feed_class;
  return is_grain(offer) ? "grain" : "mixed_cube";
}

}  // namespace

bool is_self_fed(const FeedOffer& offer) {
  return offer.feed != nullptr && offer.feed->self_fed;
}

bool carries_npn(const FeedOffer& offer) {
  return offer.figure_or("npn_cpe", 0) > 0;
}

bool is_grain(const FeedOffer& offer) {
  return offer.feed_class == "grain" || offer.figure_or("starch", 0) >= grain_starch;
}

bool belongs_to(const FeedOffer& offer, const std::string& feed_or_class) {
  return feed_or_class == offer.feed_class || feed_or_class == offer.published_id;
}

std::string why_left_out(const FeedOffer& offer, int feedings_per_week) {
  if (!offer.cost) return offer.name + " has no quote on or before the day";
  if (is_self_fed(offer)) return "";
  if (!allows(offer, feedings_per_week))
    return offer.name + " is not fed " + std::to_string(feedings_per_week) + " times a week";
  if (carries_npn(offer) && feedings_per_week < 7)
    return offer.name + " carries urea: fed every day or self-fed only";
  return "";
}

std::set<int> feeding_frequencies(const std::vector<FeedOffer>& offers) {
  std::set<int> all;
  for (const FeedOffer& offer : offers) {
    if (is_self_fed(offer))
      all.insert(0);
    else if (offer.feed == nullptr || offer.feed->feedings_per_week.empty())
      all.insert(7);
    else
      all.insert(offer.feed->feedings_per_week.begin(), offer.feed->feedings_per_week.end());
  }
  return all;
}

double days_in_one_feeding(const FeedOffer& offer, int feedings_per_week) {
  if (is_self_fed(offer) || feedings_per_week <= 0 || feedings_per_week >= 7) return 1;
  return 7.0 / feedings_per_week;
}

double usual_displacement(const FeedOffer& offer, DisplacementEnd end) {
  const Displacement& published = displacement(class_of(offer));
  switch (end) {
    case DisplacementEnd::low:
      return published.low;
    case DisplacementEnd::high:
      return published.high;
    case DisplacementEnd::usual:
      break;
  }
  return published.usual;
}

double displacement_on(const FeedOffer& offer, const GrazingDay& day) {
  if (day.forage_intake.value() <= 0) return 0;
  const bool protein_short =
      day.tdn.value() > intake_rules().tdn_cp_ratio * day.crude_protein.value();
  const bool protein_feed = offer.figure_or("cp", 0) >= protein_feed_cp;
  const double usual = usual_displacement(offer, day.displaced);
  if (!protein_short || !protein_feed) return usual;
  return std::min(usual, displacement(class_of(offer)).deficit);
}

}  // namespace pluckbook
