// price.h - what to buy today for one herd: the gap at the cover asked for, the cheapest safe mix
// and every feed beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/feeding_day.h"
#include "advice/outlook.h"
#include "supplement/least_cost.h"
#include "supplement/mix_protein.h"

namespace pluckbook {

/// The cheapest mix at another cover: what each step of certainty costs.
struct CoverStep {
  double cover = 0;
  Mix mix;
};

/// The cheapest mix at one end of the published range of forage displaced.
struct DisplacedMix {
  DisplacementEnd end = DisplacementEnd::usual;
  Mix mix;
};

struct PriceAnswer {
  const Herd* herd = nullptr;
  const Pasture* pasture = nullptr;  // none without a book
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
  std::optional<Mix> runner_up;
  std::vector<CoverStep> certainty;     // 50, 75, 80 and 90 %; none without a book
  std::vector<DisplacedMix> displaced;  // the ends that change which feeds are fed
  MixProtein protein;                   // with the mix
  std::vector<std::string> cautions, notes;
};

struct PriceSettings {
  Date day;
  double cover = 0.8;  // share of outcomes
  /// Price on the forage she eats once the rumen has its 7 % protein, not on what protein-poor
  /// grass holds her to. Off by default: published rises run from 10 to 50 %, none is sure.
  bool intake_recovers = false;
  EnergyMeasure energy = EnergyMeasure::tdn;
  ProteinMeasure protein = ProteinMeasure::crude;
};

/// Prices a supplement for a herd on a day: the diet taken at the (1 - cover) quantile of each
/// nutrient, the leading intake rule.
/// Fails: no pasture, no feeds at all. A feed that cannot be used is a note, not a failure.
Result<PriceAnswer> price_for(const Book& book, const Herd& herd, const PriceSettings& settings);

/// One laboratory result, one animal, one list of feeds.
struct LoneDay {
  AnimalAt animal;
  int head = 1;
  FootedResult forage;                                   // crude protein and TDN are required
  std::optional<KgDmPerDay> intake;                      // what she eats of it, where it is known
  std::optional<KgPerDay> need_crude_protein, need_tdn;  // in place of the table's
  double trip = 0;                                       // money for one feeding trip
};

/// The herd that a lone animal stands for. The answer points to it and into `feeds`.
Herd herd_of(const LoneDay& lone);

/// Prices a supplement without a book: the result is taken as it is, with no allowance for chance.
/// Fails: an animal no table holds; no feed that can be priced.
Result<PriceAnswer> price_alone(const LoneDay& lone, const Herd& herd, const Book& feeds,
                                const PriceSettings& settings);

}  // namespace pluckbook
