// model_draft.h - a model while it is built. Every row has one shape: something in a kilogram of
// forage, something in a kilogram of each feed, and a side. With F = F0 - sum s_j x_j - pushed out:
//   level = f F + sum g_j x_j + c u = f F0 + sum (g_j - s_j f) x_j + c u - f (pushed out)
// where u is the protein from urea that counts.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "supplement/least_cost.h"

namespace pluckbook {

inline constexpr double no_limit = std::numeric_limits<double>::infinity();

enum class Side { at_least, at_most };

struct Draft {
  const GrazingDay& day;
  const std::vector<FeedOffer>& offers;
  int feedings = 7;
  SupplementModel model;
  std::vector<Eigen::VectorXd> rows;
  std::vector<double> lower, upper;

  int feeds() const { return static_cast<int>(offers.size()); }
  int counted_column() const { return feeds(); }
  int pushed_out_column() const { return feeds() + 1; }
  int columns() const { return feeds() + 2; }
  double forage() const { return day.forage_intake.value(); }
};

/// What one kilogram holds of the thing a row counts.
struct Density {
  double forage = 0;
  Eigen::VectorXd feeds;
  double counted = 0;  // in a kilogram of counted protein from urea
};

template <class Of>
Density density(const Draft& draft, double forage, Of of, double counted = 0) {
  Density d{forage, Eigen::VectorXd(draft.feeds()), counted};
  for (std::size_t j = 0; j < draft.offers.size(); ++j)
    d.feeds[static_cast<int>(j)] = of(draft.offers[j]);
  return d;
}

void add_row(Draft& draft, Limit limit, const Density& density, Side side, double bound);

/// Names every feed that lacks a figure a limit asks for.
void note_missing(Draft& draft, const std::string& nutrient, const std::string& limit,
                  const std::string& taken_as);

/// A percent or a ratio in words, without what doubles add to it: 7, not 7.000000000000001.
std::string figure(double value);
/// "8 lb (3.62 kg)": a ceiling as it is printed, and in kilograms rounded down, never above it.
std::string in_both_units(double lb);

/// Undegraded protein of the forage, fraction of dry matter: its own, else the class value, never
/// more than all its protein.
double undegraded_of_forage(const GrazingDay& day);

void add_needs(Draft& draft);          // need_rows.cpp
void add_safe_use(Draft& draft);       // safety_rows.cpp
void add_feed_ceilings(Draft& draft);  // ceiling_rows.cpp

}  // namespace pluckbook
