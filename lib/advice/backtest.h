// backtest.h - how past projections did: the book is replayed result by result with only what was
// known on the day each came, and what was said then is held against the bags that followed.
#pragma once

#include <array>
#include <functional>
#include <vector>

#include "base/problem.h"
#include "book/records.h"
#include "published/forage_classes.h"

namespace pluckbook {

/// Ways to say what a later bag will hold. All but the first need no model.
enum class Forecaster {
  model,          // the diet series
  last_value,     // the newest bag stays
  straight_line,  // through the last two bags of the season, at least 1 % of dry matter
  class_curve,    // the published curve of the forage, without a bag
};
inline constexpr std::array forecasters = {Forecaster::model, Forecaster::last_value,
                                           Forecaster::straight_line, Forecaster::class_curve};

/// How one forecaster did on later bags.
struct ForecastScore {
  int bags = 0;
  double rms_error = 0;  // points of dry matter
  /// Mean log density of the bags on the series' scale: the model by its own spread and a bag's
  /// error, the others by a normal spread of their own past error, which flatters them.
  double log_score = 0;
};

/// Bags plucked so many days after the newest one that was known.
struct LeadScores {
  int first_day = 0, last_day = 0;
  std::array<ForecastScore, forecasters.size()> by_forecaster;
  int held = 0;  // bags within the model's 80 % band, a bag's own error included
};

/// Days between the shortfall date as projected and as all bags tell it today.
struct DateScore {
  int dates = 0;
  double mean_absolute_days = 0;
};

struct NutrientBacktest {
  DietNutrient nutrient = DietNutrient::crude_protein;
  std::vector<LeadScores> leads;
  std::array<DateScore, forecasters.size()> dates;
};

struct Backtest {
  std::vector<const Pasture*> pastures;  // of the book it was asked on
  int results = 0;                       // days on which something was known and projected from
  std::vector<NutrientBacktest> nutrients;
};

/// Called as the work goes on: so many of so many days done.
using Progress = std::function<void(std::size_t done, std::size_t of)>;

/// A shortfall date is the first day of seven in which the middle of the diet stands below the need
/// of a herd that grazed there on the day of the projection; one later than 180 days counts as the
/// last of them. Dates are judged where bags followed up to three weeks before them.
/// Requires: `book` outlives the answer. Fails: no pasture has a result and a later bag.
Result<Backtest> backtest(const Book& book, const std::vector<const Pasture*>& pastures,
                          const Progress& progress);

}  // namespace pluckbook
