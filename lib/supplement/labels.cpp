#include "supplement/labels.h"

#include <algorithm>
#include <limits>

#include "base/text.h"
#include "published/rules.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

/// The strictest ceiling on one feed by body weight, percent.
double ceiling_percent_bw(const FeedOffer& offer) {
  double percent = std::numeric_limits<double>::infinity();
  for (const FeedCeiling& ceiling : feed_ceilings())
    if (ceiling.percent_bw && belongs_to(offer, ceiling.feed))
      percent = std::min(percent, *ceiling.percent_bw);
  if (is_grain(offer)) percent = std::min(percent, safe_use("grain_percent_bw").value);
  return percent;
}

}  // namespace

std::vector<std::string> labels_over_ceilings(const GrazingDay& day,
                                              const std::vector<FeedOffer>& offers) {
  std::vector<std::string> words;
  for (const FeedOffer& offer : offers) {
    if (offer.feed == nullptr) continue;
    const double percent = ceiling_percent_bw(offer);
    const KgDmPerDay ceiling(percent / 100 * day.weight.value());
    const auto over = [&](const std::optional<KgAsFedPerDay>& label) {
      return label && *label * offer.dm > ceiling;
    };
    const std::string held =
        " than the published ceiling, " + shortest(percent) + " % of body weight";
    if (over(offer.feed->least))
      words.push_back("the label of " + offer.name + " asks for more" + held +
                      ": it cannot be fed");
    else if (over(offer.feed->most))
      words.push_back("the label of " + offer.name + " allows more" + held +
                      ": the ceiling is held");
  }
  return words;
}

}  // namespace pluckbook
