// a_book.h - a small book in memory: one pasture, one herd, a season of bags.
#pragma once

#include <string>
#include <vector>

#include "book/records.h"

namespace pluckbook::testing {

inline Date day(const char* iso) {
  return *parse_date(iso);
}

inline Bag bag_of(const std::string& id, const char* plucked, double cp, double tdn) {
  Bag bag;
  bag.id = id;
  bag.pasture = "north";
  bag.plucked = day(plucked);
  bag.stops = 20;
  LabResult result;
  result.received = bag.plucked + Days(9);
  result.values = {{"dm", 92.0}, {"cp", cp}, {"tdn", tdn}};
  bag.results.push_back(result);
  return bag;
}

/// A feed like a published one, at so much a ton since July.
inline Feed a_quote(const std::string& id, const std::string& like, double a_ton) {
  Feed feed;
  feed.id = feed.name = id;
  feed.like = like;
  Quote quote;
  quote.price = MoneyPerKgAsFed(a_ton / kg_per_us_ton);
  quote.amount = a_ton;
  quote.unit = "ton";
  quote.kg_per_unit = kg_per_us_ton;
  quote.date = day("2026-07-01");
  feed.quotes.push_back(quote);
  return feed;
}

/// Milking cows on northern mixed-grass that falls through their need in August.
inline Book a_book() {
  Book book;
  book.name = "Alder Bench";
  Pasture pasture;
  pasture.id = "north";
  pasture.name = "North";
  pasture.forage = "northern_mixed_grass";
  book.pastures.push_back(pasture);
  Herd herd;
  herd.id = "cows";
  herd.head = 100;
  herd.weight = from_lb<KgBody>(1200);
  herd.peak_milk = from_lb<KgPerDay>(20);
  herd.calving = Calving{day("2026-03-15"), {1.0}};
  herd.weaning = day("2026-10-10");
  book.herds.push_back(herd);
  book.moves.push_back({day("2026-05-15"), "cows", "north", false, {}});
  book.bags = {bag_of("n1", "2026-05-25", 15.5, 67), bag_of("n2", "2026-06-20", 13.0, 64.5),
               bag_of("n3", "2026-07-15", 10.8, 61)};
  return book;
}

/// The same in late August, short of both, with a protein feed and an energy feed to be had.
inline Book with_feeds() {
  Book book = a_book();
  book.trip = 20;
  book.bags.push_back(bag_of("n4", "2026-08-20", 7.0, 56));
  book.feeds.push_back(a_quote("cube", "range_cube_38", 475));
  book.feeds.push_back(a_quote("hulls", "soybean_hulls", 210));
  return book;
}

}  // namespace pluckbook::testing
