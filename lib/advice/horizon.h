// horizon.h - the days ahead of a herd: where it grazes, what it needs, and what its diet may be on
// each of many sample paths.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "advice/herd_day.h"
#include "advice/outlook.h"

namespace pluckbook {

/// Where a herd stands from a day on, with what the newest bag there tells beside CP and TDN; both
/// figures are taken to stay.
struct Stay {
  Whereabouts where;
  std::optional<Share> ndf;         // it limits what the gut holds
  std::optional<Share> degradable;  // of the crude protein
};

struct Horizon {
  const Herd* herd = nullptr;
  Date first;
  std::vector<HerdNeed> needs;       // one a day
  std::vector<Stay> stays;           // by date; the first is where it stands on the first day
  std::vector<std::size_t> stay_on;  // one a day: which of the stays
  DietSeries::Paths paths;           // of each day, the diet of the pasture it then grazes

  int days() const { return static_cast<int>(needs.size()); }
  int count() const { return static_cast<int>(paths.crude_protein.cols()); }
  const Stay& stay(int day) const { return stays[stay_on[static_cast<std::size_t>(day)]]; }
  Share diet(DietNutrient nutrient, int day, int path) const;
  Share need(DietNutrient nutrient, int day) const;
  bool below(DietNutrient nutrient, int day, int path) const {
    return diet(nutrient, day, path) < need(nutrient, day);
  }
};

/// The days from as_of to until. Moves that lie ahead in the book are followed (see as_of for which
/// a book knows); pastures are drawn apart from each other, a pasture come back to is drawn once.
/// `here` is the series of the pasture the herd is on now.
/// Fails: no pasture; an unknown forage class; a need outside all tables.
/// Requires: `book` outlives the answer.
Result<Horizon> horizon_of(const Book& book, const Herd& herd, const DietSeries& here,
                           const OutlookSettings& settings);

/// How an intake is read along the horizon.
struct IntakeReading {
  IntakeRule rule = IntakeRule::guidance_lower;
  bool gut_ceiling = true;
};

/// Works out each path's balances, a day each, and hands them on one path at a time.
void for_each_path(const Horizon& horizon, IntakeReading reading,
                   const std::function<void(const std::vector<DayBalance>&)>& take);

Share share_of(const Need& need, DietNutrient nutrient);
const Balance& balance_in(const DayBalance& day, DietNutrient nutrient);

/// Protein degraded in the rumen against what its microbes can use of the TDN eaten.
/// Source: NRC 2000, 0.13 of TDN (reference/protein.yaml); the share is the laboratory's.
Balance degradable_balance(const DayBalance& day, Share degradable);

}  // namespace pluckbook
