// price.h - what to buy today for one herd: the gap at the cover asked for, the cheapest safe mix
// and every feed beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/feeding_day.h"
#include "advice/outlook.h"
#include "supplement/least_cost.h"

namespace pluckbook {

struct PriceAnswer {
  const Herd* herd = nullptr;
  const Pasture* pasture = nullptr;
  Date date;
  double cover = 0.8;
  GrazingDay day;
  HerdNeed need;
  Intake intake;
  KgDmPerDay intake_recovered;  // with protein met; equal to intake where protein does not limit
  std::vector<PricedGap> gaps;
  std::vector<FeedOffer> offers;
  Mix mix;
  std::vector<Option> options;
  std::vector<std::string> cautions, notes;
};

struct PriceSettings {
  Date day;
  double cover = 0.8;  // share of outcomes
  /// Price on the forage she eats once the rumen has its 7 % protein, not on what protein-poor
  /// grass holds her to. Off by default: published rises run from 10 to 50 %, none is sure.
  bool intake_recovers = false;
};

/// Prices a supplement for a herd on a day: the diet taken at the (1 - cover) quantile of each
/// nutrient, the leading intake rule.
/// Fails: no pasture, no feeds at all. A feed that cannot be used is a note, not a failure.
Result<PriceAnswer> price_for(const Book& book, const Herd& herd, const PriceSettings& settings);

}  // namespace pluckbook
