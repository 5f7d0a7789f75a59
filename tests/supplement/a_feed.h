// a_feed.h - feeds and grazing days for the tests of this floor. Everything inside is kg; the
// worked examples of extension texts are in pounds and US tons and are turned here.
#pragma once

#include <deque>
#include <map>
#include <string>
#include <vector>

#include "supplement/least_cost.h"

namespace pluckbook {

inline const Date a_day(2026, 8, 15);

inline Quote per_ton(double price, Date on = Date(2026, 8, 1), double freight_per_ton = 0) {
  return {MoneyPerKgAsFed(price / kg_per_us_ton),          price, "ton", kg_per_us_ton, on,
          MoneyPerKgAsFed(freight_per_ton / kg_per_us_ton)};
}

/// A feed of the book's own, analysis in percent of dry matter.
inline Feed own_feed(const std::string& id, double price_per_ton,
                     const std::map<std::string, double>& percent, double dm_percent = 90) {
  Feed feed;
  feed.id = feed.name = id;
  feed.analysis.dm = DmShare(dm_percent / 100);
  for (const auto& [nutrient, value] : percent)
    feed.analysis.nutrients[nutrient] = from_percent(value);
  feed.quotes.push_back(per_ton(price_per_ton));
  return feed;
}

inline Feed feed_like(const std::string& id, double price_per_ton) {
  Feed feed;
  feed.id = feed.name = feed.like = id;
  feed.quotes.push_back(per_ton(price_per_ton));
  return feed;
}

/// Offers point into the book, so the feeds are kept for the length of the test program.
inline FeedOffer offer(Feed feed) {
  static std::deque<Feed> kept;
  kept.push_back(std::move(feed));
  const auto made = offer_of(kept.back(), a_day);
  return made.ok() ? *made : FeedOffer{};
}

/// A dry cow of 1200 lb on forage that holds nothing and stands in nobody's way: what she needs is
/// the gap itself, as in the worked examples.
inline GrazingDay bare_gap(KgPerDay crude_protein, KgPerDay tdn) {
  GrazingDay day;
  day.weight = from_lb<KgBody>(1200);
  day.forage_intake = KgDmPerDay(8);
  day.need_crude_protein = crude_protein;
  day.need_tdn = tdn;
  day.rumen_floor = Share(0);
  return day;
}

/// A dry cow of 550 kg on dormant grass: 11 kg of 5 % protein and 50 % TDN.
inline GrazingDay dormant_day(double need_crude_protein, double need_tdn) {
  GrazingDay day;
  day.weight = KgBody(550);
  day.forage_intake = KgDmPerDay(11);
  day.crude_protein = Share(0.05);
  day.tdn = Share(0.50);
  day.fat = Share(0.025);
  day.sulfur = Share(0.0015);
  day.need_crude_protein = KgPerDay(need_crude_protein);
  day.need_tdn = KgPerDay(need_tdn);
  day.rumen_floor = Share(0);
  return day;
}

inline double amount(const Mix& mix, std::size_t offer) {
  for (const MixPart& part : mix.parts)
    if (part.offer == offer) return part.dry_matter.value();
  return 0;
}

inline bool names(const std::vector<std::string>& all, const std::string& part) {
  for (const std::string& words : all)
    if (words.find(part) != std::string::npos) return true;
  return false;
}

inline std::vector<FeedOffer> offers_of(const std::vector<Feed>& feeds) {
  std::vector<FeedOffer> offers;
  for (const Feed& feed : feeds) offers.push_back(*offer_of(feed, a_day));
  return offers;
}

}  // namespace pluckbook
