// bag_reading.h - the bags of a pasture and what the series makes of each: used or not and why, and
// what they tell the regression, with the errors they share.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "book/records.h"
#include "forage/diet_prior.h"
#include "forage/footing.h"
#include "numeric/kernel.h"

namespace pluckbook {

/// A bag and what the series made of it.
struct BagReading {
  const Bag* bag = nullptr;  // into the book the series was built from
  bool used = false;
  std::string why_not;  // "clipped: stock select better than the sward", "no result yet", ...
  std::vector<FootedResult> results;  // those that could be put on dry matter
  std::vector<std::string> labs;      // of each of them, may be empty
  Problems problems;                  // of those that could not
};

/// The bags of a pasture in the order they were plucked.
std::vector<const Bag*> bags_of(const Book& book, const Pasture& pasture);
std::vector<BagReading> read_bags(const Book& book, const Pasture& pasture);
/// Some of them.
std::vector<BagReading> read_bags(const std::vector<const Bag*>& bags, const Pasture& pasture);

const std::optional<FootedValue>& value_of(const FootedResult& result, DietNutrient nutrient);

/// Variance of one more bag's result about the pasture's diet, by the usual laboratory.
double bag_variance(const BagError& error, int stops);

/// What the used bags tell the regression. A result errs by its stops, alike for all results of the
/// bag; by its trip, alike for all bags of the day; by its laboratory where that is not the one
/// most results of the pasture came from, alike for all its results; and by itself. CP and TDN of
/// one bag err apart (their errors correlate by 0.16 only, 291 degrees of freedom; computed from
/// the florida_samples of reference/seasonal_curves.yaml).
std::vector<Observation> observations_of(const std::vector<BagReading>& bags,
                                         const DietPrior& prior);

}  // namespace pluckbook
