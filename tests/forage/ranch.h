// ranch.h - a book of one pasture of northern mixed prairie, for the tests of the diet series.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>
#include <utility>

#include "forage/series.h"
#include "published/forage_classes.h"

namespace pluckbook {

inline constexpr auto cp = DietNutrient::crude_protein;
inline constexpr auto tdn = DietNutrient::tdn;

// 135 days after the class's green-up on 15 April, in the middle of a straight piece of its curve,
// from 8.0 % CP and 55.5 % TDN on day 120 to 7.0 and 53.0 on day 150
// (reference/seasonal_curves.yaml, computed there): taking the answer to green-up as straight is
// exact here.
inline const Date late_august(2026, 8, 28);
inline const double usual_cp = std::sqrt(0.080 * 0.070);
inline const double cp_slope = std::log(0.080 / 0.070) / 30;  // by a day's delay
inline const double usual_logit_tdn = (std::log(0.555 / 0.445) + std::log(0.530 / 0.470)) / 2;
inline const double tdn_slope = (std::log(0.555 / 0.445) - std::log(0.530 / 0.470)) / 30;

// Semi-arid range (reference/seasonal_curves.yaml and sampling_error.yaml, computed or assumed
// there). Log CP: pasture 0.10, curve 0.12, own season 0.10, year 0.15, wiggle 0.20. Logit TDN:
// 0.08, 0.15, 0.08, 0.12, 0.16. Green-up: 10 days.
inline const double cp_onset = std::pow(10 * cp_slope, 2), tdn_onset = std::pow(10 * tdn_slope, 2);
inline const double cp_variance = 0.01 + 0.0144 + 0.01 + 0.0225 + 0.04 + cp_onset;
inline const double tdn_variance = 0.0064 + 0.0225 + 0.0064 + 0.0144 + 0.0256 + tdn_onset;
inline const double cp_with_tdn = 0.57 * (std::hypot(0.10, 0.12) * std::hypot(0.08, 0.15) +
                                          0.10 * 0.08 + 0.15 * 0.12 + 0.20 * 0.16) +
                                  std::sqrt(cp_onset * tdn_onset);
inline constexpr double stop = 0.18 * 0.18, trip = 0.06 * 0.06, lab = 0.03 * 0.03;

inline const ForageClass& prairie() {
  return *find_forage_class("northern_mixed_grass");
}

struct Ranch {
  Book book;

  Ranch() {
    Pasture pasture;
    pasture.id = "north";
    pasture.forage = "northern mixed-grass";
    pasture.origin = {"pastures.yaml", 3, 1};
    book.pastures.push_back(pasture);
  }
  Pasture& pasture() { return book.pastures[0]; }

  Bag& bag(Date plucked, std::map<std::string, double> values, int stops = 20) {
    Bag one;
    one.id = "bag-" + std::to_string(book.bags.size());
    one.pasture = "north";
    one.plucked = plucked;
    one.stops = stops;
    if (!values.empty()) {
      one.results.emplace_back();
      one.results.back().received = plucked + Days(10);
      one.results.back().values = std::move(values);
    }
    book.bags.push_back(one);
    return book.bags.back();
  }

  void green_up(Date day) { book.events.push_back({day, "north", EventKind::green_up, "", {}}); }

  DietSeries series() const&& = delete;  // the book must outlive its series
  DietSeries series() const& {
    auto made = DietSeries::of(book, book.pastures[0]);
    EXPECT_TRUE(made.ok());
    return *std::move(made);
  }
};

}  // namespace pluckbook
