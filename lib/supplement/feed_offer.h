// feed_offer.h - a feed of the book made ready for the model: published analysis under the book's
// own values, each figure with its standing, and what a kilogram costs where the cows eat it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "base/units.h"
#include "book/records.h"

namespace pluckbook {

struct FeedFigure {
  double value = 0;      // fraction of DM (rup: of CP; nem: Mcal per kg of DM)
  std::string standing;  // "own" or the published status: read, derived, recalled, label, assumed
};

/// quote + freight, then shrink and waste: (quote + freight) / (1 - shrink) / (1 - waste).
struct DeliveredCost {
  MoneyPerKgAsFed quote, freight;
  double shrink = 0, waste = 0;
  std::optional<Date> quoted_on;
  const Quote* as_quoted = nullptr;  // into the book: the seller's own words and market unit
  MoneyPerKgAsFed delivered() const { return quote + freight; }
  MoneyPerKgAsFed fed() const { return delivered() / ((1 - shrink) * (1 - waste)); }
};

struct FeedOffer {
  const Feed* feed = nullptr;  // into the book
  std::string id, name;
  // The published feed it is like, and its class; "" for a feed of the book's own.
  std::string published_id, feed_class;
  DmShare dm{0.9};
  std::string dm_standing;  // as of a figure
  // cp, tdn, nem, rup, npn_cpe, ndf, fat, ca, p, s, starch, and k, mg, cu, se where a tag has them
  std::map<std::string, FeedFigure> figures;
  std::optional<DeliveredCost> cost;   // none without a quote on or before the day
  std::optional<long> old_quote_days;  // age of the quote, when it is over 60 days
  std::vector<std::string> notes;      // "dm 90 % assumed"

  double figure_or(const std::string& nutrient, double otherwise) const;
  bool has(const std::string& nutrient) const { return figures.contains(nutrient); }
  MoneyPerKgDm cost_per_kg_dm() const;  // requires cost
  /// Money for a kilogram of CP (or TDN), fed; nothing where the feed has none of it.
  std::optional<double> cost_per_kg_of(const std::string& nutrient) const;
};

/// Fails: no protein figure, dm of 0.
Result<FeedOffer> offer_of(const Feed& feed, Date on);

}  // namespace pluckbook
