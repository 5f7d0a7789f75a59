#include "forage/bag_reading.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace pluckbook {
namespace {

// A bag whose stops were not written down is taken as one of few (assumed).
constexpr int stops_unwritten = 10;

double square(double x) {
  return x * x;
}

BagReading read_bag(const Bag& bag, const EnergyChoice& energy) {
  BagReading reading{&bag, false, "", {}, {}, {}};
  for (const LabResult* result : standing_results(bag)) {
    Result<FootedResult> footed = on_dry_matter(*result, energy);
    if (footed) {
      reading.results.push_back(std::move(*footed));
      reading.labs.push_back(lab_of(bag, *result));
    } else {
      reading.problems.insert(reading.problems.end(), footed.problems().begin(),
                              footed.problems().end());
    }
  }
  const bool any = std::any_of(reading.results.begin(), reading.results.end(), [](const auto& r) {
    return r.crude_protein.has_value() || r.tdn.has_value();
  });
  if (bag.method == Method::clipped) {
    reading.why_not = "clipped: stock select better than the sward";
  } else if (bag.spoiled) {
    reading.why_not = "spoiled";
  } else if (any) {
    reading.used = true;
  } else if (!reading.problems.empty()) {
    reading.why_not = reading.problems.front().what;
  } else if (!reading.results.empty()) {
    reading.why_not = "the result holds neither protein nor energy";
  } else {
    reading.why_not = bag.lost ? "lost" : "no result yet";
  }
  return reading;
}

/// The laboratory most results came from; the first by name among equals. Its results are the
/// yardstick the others stand off.
std::string usual_lab(const std::vector<BagReading>& bags) {
  std::map<std::string, int> results;
  for (const BagReading& bag : bags)
    if (bag.used)
      for (const std::string& lab : bag.labs)
        if (!lab.empty()) ++results[lab];
  const auto most =
      std::max_element(results.begin(), results.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == results.end() ? "" : most->first;
}

/// A number for each source of error, by its name.
class Sources {
 public:
  int operator[](const std::string& name) {
    return numbers_.try_emplace(name, static_cast<int>(numbers_.size())).first->second;
  }

 private:
  std::map<std::string, int> numbers_;
};

}  // namespace

std::vector<const Bag*> bags_of(const Book& book, const Pasture& pasture) {
  std::vector<const Bag*> bags;
  for (const Bag& bag : book.bags)
    if (bag.pasture == pasture.id) bags.push_back(&bag);
  std::stable_sort(bags.begin(), bags.end(),
                   [](const Bag* a, const Bag* b) { return a->plucked < b->plucked; });
  return bags;
}

std::vector<BagReading> read_bags(const std::vector<const Bag*>& bags, const Pasture& pasture) {
  std::vector<BagReading> readings;
  for (const Bag* bag : bags) readings.push_back(read_bag(*bag, energy_choice(pasture.forage)));
  return readings;
}

std::vector<BagReading> read_bags(const Book& book, const Pasture& pasture) {
  return read_bags(bags_of(book, pasture), pasture);
}

const std::optional<FootedValue>& value_of(const FootedResult& result, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? result.tdn : result.crude_protein;
}

double bag_variance(const BagError& error, int stops) {
  return square(error.stop_sd) / std::max(1, stops) + square(error.trip_sd) + square(error.lab_sd);
}

std::vector<Observation> observations_of(const std::vector<BagReading>& bags,
                                         const DietPrior& prior) {
  std::vector<Observation> seen;
  Sources sources;
  const std::string usual = usual_lab(bags);
  for (const DietNutrient nutrient : diet_nutrients) {
    const BagError& error = bag_error(nutrient);
    const std::string of = nutrient == DietNutrient::tdn ? "/tdn" : "/protein";
    for (const BagReading& bag : bags) {
      if (!bag.used) continue;
      const Expected expected = prior.on(nutrient, bag.bag->plucked);
      const int stops = std::max(1, bag.bag->stops.value_or(stops_unwritten));
      for (std::size_t i = 0; i < bag.results.size(); ++i) {
        const auto& value = value_of(bag.results[i], nutrient);
        if (!value) continue;
        Observation one{expected.when,
                        to_scale(nutrient, value->value),
                        expected.mean,
                        square(error.lab_sd) + square(value->extra_sd),
                        {}};
        one.shared = {{sources["bag " + bag.bag->id + of], error.stop_sd / std::sqrt(stops)},
                      {sources["trip " + to_iso(bag.bag->plucked) + of], error.trip_sd}};
        if (!bag.labs[i].empty() && bag.labs[i] != usual)
          one.shared.push_back({sources["lab " + bag.labs[i] + of], error.other_lab_sd});
        seen.push_back(std::move(one));
      }
    }
  }
  return seen;
}

}  // namespace pluckbook
