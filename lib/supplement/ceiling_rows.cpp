// ceiling_rows.cpp - what the supplement may weigh: grain, its TDN, and each published feed or
// class of feeds (reference/safe_use.yaml).
#include <algorithm>

#include "published/rules.h"
#include "supplement/model_draft.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

// Whole cottonseed. Source: weaned calves 0.33 % of body weight, trade page on gossypol 2022
// (read); bulls at most 10 % of diet, young bulls none (extension consensus, recalled).
constexpr double cottonseed_young = 0.0033, cottonseed_bull_dm = 0.10;

/// What a group of feeds may weigh; held at each feeding, for the rumen of that day.
template <class In>
void add_group_ceiling(Draft& draft, Limit limit, In in, double most) {
  if (std::none_of(draft.offers.begin(), draft.offers.end(), in)) return;
  add_row(
      draft, std::move(limit),
      density(draft, 0,
              [&](const auto& o) { return in(o) ? days_in_one_feeding(o, draft.feedings) : 0.0; }),
      Side::at_most, most);
}

void add_supplement_rows(Draft& draft) {
  const double weight = draft.day.weight.value();
  const SafeUse& grain = safe_use("grain_percent_bw");
  add_group_ceiling(draft,
                    {"grain", "grain at most " + figure(grain.value) + " % of body weight",
                     "kg/day", LimitKind::safety, grain.source, grain.status},
                    is_grain, grain.value / 100 * weight);
  const SafeUse& energy = safe_use("supplement_tdn_percent_bw");
  add_row(draft,
          {"supplement_tdn",
           "TDN of the supplement at most " + figure(energy.value) + " % of body weight", "kg/day",
           LimitKind::safety, energy.source, energy.status},
          density(draft, 0, [](const auto& o) { return o.figure_or("tdn", 0); }), Side::at_most,
          energy.value / 100 * weight);
}

std::string name_of(const Draft& draft, const std::string& feed_or_class) {
  std::string name;
  for (const FeedOffer& offer : draft.offers)
    if (belongs_to(offer, feed_or_class)) name += (name.empty() ? "" : " and ") + offer.name;
  return name;
}

/// Ceilings that go by published feed or by class cannot be put on a feed that is like none.
void note_unlike(Draft& draft) {
  for (const FeedOffer& offer : draft.offers) {
    if (!offer.published_id.empty()) continue;
    draft.model.unchecked.push_back("ceiling by feed: " + offer.name +
                                    " is like no published feed; its label rules");
    if (!offer.has("starch"))
      draft.model.unchecked.push_back("grain: " + offer.name + " has no starch figure");
  }
}

/// Pounds of whole cottonseed as it lies: mature cattle, and heifers and growing cattle.
void add_cottonseed_amount(Draft& draft) {
  const auto in = [](const FeedOffer& o) { return belongs_to(o, "whole_cottonseed"); };
  const auto found = std::find_if(draft.offers.begin(), draft.offers.end(), in);
  if (found == draft.offers.end()) return;
  const SafeUse& rule =
      safe_use(draft.day.young ? "whole_cottonseed_young_lb_day" : "whole_cottonseed_lb_day");
  const KgAsFedPerDay most(rule.value * kg_per_lb);
  add_group_ceiling(draft,
                    {"most_whole_cottonseed_amount",
                     found->name + " at most " + in_both_units(rule.value) + " a day", "kg/day",
                     LimitKind::safety, rule.source, rule.status},
                    in, (most * found->dm).value());
}

void add_feed_ceiling(Draft& draft, const FeedCeiling& ceiling) {
  const auto in = [&](const FeedOffer& o) { return belongs_to(o, ceiling.feed); };
  if (std::none_of(draft.offers.begin(), draft.offers.end(), in)) return;
  const bool cottonseed = ceiling.feed == "whole_cottonseed";
  const GrazingDay& day = draft.day;
  const std::string id = "most_" + ceiling.feed, name = name_of(draft, ceiling.feed);
  if (ceiling.percent_bw) {
    double most = *ceiling.percent_bw / 100;
    if (cottonseed && day.young) most = day.bull ? 0 : cottonseed_young;
    add_group_ceiling(draft,
                      {id, name + " at most " + figure(100 * most) + " % of body weight", "kg/day",
                       LimitKind::safety, ceiling.source, ceiling.status},
                      in, most * day.weight.value());
  }
  if (ceiling.percent_dm) {
    double most = *ceiling.percent_dm / 100;
    if (cottonseed && day.bull) most = std::min(most, cottonseed_bull_dm);
    add_row(draft,
            {id + "_share", name + " at most " + figure(100 * most) + " % of all she eats",
             "kg/day", LimitKind::safety, ceiling.source, ceiling.status},
            density(draft, -most, [&](const auto& o) { return (in(o) ? 1.0 : 0.0) - most; }),
            Side::at_most, 0);
  }
}

}  // namespace

void add_feed_ceilings(Draft& draft) {
  add_supplement_rows(draft);
  note_unlike(draft);
  for (const FeedCeiling& ceiling : feed_ceilings()) add_feed_ceiling(draft, ceiling);
  add_cottonseed_amount(draft);
}

}  // namespace pluckbook
