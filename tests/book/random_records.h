// random_records.h - bags and results as they come in twenty years, from a seed.
#pragma once

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/text.h"
#include "book/records.h"

namespace pluckbook {

class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}
  int below(int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(engine_); }
  bool one_in(int count) { return below(count) == 0; }
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  template <class T>
  const T& of(const std::vector<T>& some) {
    return some[static_cast<std::size_t>(below(static_cast<int>(some.size())))];
  }
  Date day(int year, int from_month) {
    return day_in_year(year, from_month + below(2), 1 + below(28));
  }
  /// Words as people type them, with what YAML would take for its own.
  std::string words() {
    static const std::vector<std::string> parts = {
        "dry", " ",         "grass: cured", "#2",   "\"north\"",  "it's", "\\", "80 %", "- ", "{x}",
        "[1]", "caf\u00e9", "no",           "null", "2026-07-06", "&a",   "*",  "!",    "|",  "`",
        "@",   "\u96ea"};
    std::string text;
    for (int i = below(5) + 1; i > 0; --i) text += of(parts);
    return std::string(trimmed(text));
  }

 private:
  std::mt19937 engine_;
};

inline Book book_with_labs() {
  Book book;
  book.labs.push_back({"county", "County Forage Lab", 10});
  book.labs.push_back({"state", "State Laboratory", 7});
  return book;
}

inline LabResult random_result(Chance& chance, int order) {
  LabResult result;
  result.received = day_in_year(2026, 9, 1 + order);
  if (!chance.one_in(3)) result.lab = chance.one_in(2) ? "county" : "state";
  result.values["dm"] = std::round(chance.between(85, 96) * 1e4) / 1e4;
  result.values["cp"] = std::round(chance.between(3, 18) * 1e6) / 1e6;
  if (chance.one_in(2)) result.values["adf"] = std::round(chance.between(30, 45) * 10) / 10;
  if (chance.one_in(2)) result.values["ndf"] = std::round(chance.between(50, 75) * 10) / 10;
  if (chance.one_in(3)) result.values["ca"] = std::round(chance.between(0.2, 0.9) * 1e3) / 1e3;
  if (chance.one_in(4)) result.note = chance.words();
  return result;
}

inline Bag random_bag(Chance& chance, int number) {
  Bag bag;
  bag.id = "26-north-" + std::to_string(100 + number);
  bag.pasture = "north";
  bag.plucked = chance.day(2026, 5);
  if (chance.one_in(4)) bag.method = Method::clipped;
  if (chance.one_in(2)) bag.stops = 1 + chance.below(40);
  if (chance.one_in(2)) bag.fill = std::round(chance.between(20, 100) * 10) / 10;
  if (chance.one_in(3)) bag.note = chance.words();
  if (chance.one_in(2)) bag.dried = chance.day(2026, 7);
  if (chance.one_in(2)) bag.sent = Sent{Date(2026, 8, 30), chance.one_in(2) ? "county" : "state"};
  if (bag.sent && chance.one_in(6)) bag.lost = Date(2026, 8, 31);
  if (!bag.lost) {
    for (int i = chance.below(3); i > 0; --i) bag.results.push_back(random_result(chance, 9 - i));
  }
  return bag;
}

}  // namespace pluckbook
