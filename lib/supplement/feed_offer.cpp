#include "supplement/feed_offer.h"

#include <array>

#include "base/text.h"
#include "published/feeds.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

constexpr std::array nutrients{"cp",  "tdn", "rup", "npn_cpe", "ndf",   "adf",
                               "fat", "ca",  "p",   "s",       "starch"};
constexpr int old_quote_days = 60;
constexpr double dm_where_unknown = 0.90;  // assumed: dry feeds lie at 88 to 92 % dry matter

std::map<std::string, FeedFigure> figures_of(const Feed& feed, const PublishedFeed* published) {
  std::map<std::string, FeedFigure> figures;
  if (published != nullptr)
    for (const char* nutrient : nutrients)
      if (const auto it = published->values.find(nutrient); it != published->values.end())
        figures[nutrient] = {it->second.value / 100, it->second.status};
  // A published NEm belongs to the published TDN: the feed's own TDN brings its own NEm.
  if (published != nullptr && !feed.analysis.nutrients.contains("tdn"))
    if (const auto it = published->values.find("nem_kg"); it != published->values.end())
      figures["nem"] = {it->second.value, it->second.status};
  for (const auto& [nutrient, share] : feed.analysis.nutrients)
    figures[nutrient] = {share.value(), "own"};
  return figures;
}

void take_dry_matter(const Feed& feed, const PublishedFeed* published, FeedOffer& offer) {
  if (feed.analysis.dm) {
    offer.dm = *feed.analysis.dm;
    offer.dm_standing = "own";
    return;
  }
  if (published != nullptr)
    if (const auto it = published->values.find("dm"); it != published->values.end()) {
      offer.dm = DmShare(it->second.value / 100);
      offer.dm_standing = it->second.status;
      return;
    }
  offer.dm = DmShare(dm_where_unknown);
  offer.dm_standing = "assumed";
  offer.notes.push_back("dry matter " + fixed(100 * dm_where_unknown, 0) + " % assumed");
}

void take_quote(const Feed& feed, Date on, FeedOffer& offer) {
  const Quote* quote = newest_quote(feed, on);
  if (quote == nullptr) {
    offer.notes.push_back("no quote on or before " + in_words(on));
    return;
  }
  if (!quote->date)
    offer.notes.push_back("the quote has no date");
  else if (const long age = days_between(*quote->date, on); age > old_quote_days)
    offer.old_quote_days = age;
  offer.cost =
      DeliveredCost{quote->price, quote->freight, feed.shrink, feed.waste, quote->date, quote};
}

Problem no_protein(const Feed& feed) {
  return input_problem(
      "feed '" + feed.id + "' has no crude protein figure",
      "Give its analysis (cp: 20), or say which published feed it is like (like: range cube 20).",
      place_of(feed.origin));
}

Problem no_dry_matter(const Feed& feed) {
  return input_problem(
      "feed '" + feed.id + "' has no dry matter at all",
      "Dry matter is the percent of the feed as it lies that is not water: dm: 90.",
      place_of(feed.origin));
}

}  // namespace

const Quote* newest_quote(const Feed& feed, Date on) {
  const Quote* newest = nullptr;
  for (const Quote& quote : feed.quotes) {
    if (quote.date && *quote.date > on) continue;
    const bool older =
        newest != nullptr && newest->date && (!quote.date || *quote.date < *newest->date);
    if (!older) newest = &quote;
  }
  return newest;
}

double FeedOffer::figure_or(const std::string& nutrient, double otherwise) const {
  const auto it = figures.find(nutrient);
  return it == figures.end() ? otherwise : it->second.value;
}

MoneyPerKgDm FeedOffer::cost_per_kg_dm() const {
  return cost->fed() / dm;
}

std::optional<double> FeedOffer::cost_per_kg_of(const std::string& nutrient) const {
  const double share = figure_or(nutrient, 0);
  if (!cost || share <= 0) return std::nullopt;
  return cost_per_kg_dm().value() / share;
}

Result<FeedOffer> offer_of(const Feed& feed, Date on) {
  const PublishedFeed* published = feed.like.empty() ? nullptr : find_published_feed(feed.like);
  FeedOffer offer;
  offer.feed = &feed;
  offer.id = feed.id;
  offer.name = feed.name.empty() ? feed.id : feed.name;
  if (published != nullptr) {
    offer.published_id = published->id;
    offer.feed_class = published->feed_class;
  }
  offer.figures = figures_of(feed, published);
  if (!offer.has("cp")) return no_protein(feed);
  take_dry_matter(feed, published, offer);
  if (!(offer.dm.value() > 0)) return no_dry_matter(feed);
  take_quote(feed, on, offer);
  return offer;
}

}  // namespace pluckbook
