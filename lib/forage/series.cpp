#include "forage/series.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "base/text.h"
#include "forage/season.h"
#include "numeric/interpolation.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

// A bag whose stops were not written down is taken as one of few (assumed).
constexpr int stops_unwritten = 10;
// sd of a laboratory other than last time over the same one: 0.045 / 0.03 for log CP, 0.06 / 0.04
// for logit TDN. Computed: reference/sampling_error.yaml, lab_sd_other and lab_sd_same.
constexpr double other_lab = 1.5;
// Log CP with logit in vitro digestibility, 803 clips. Computed: reference/seasonal_curves.yaml.
constexpr double shared_fall = 0.57;
constexpr double band = 0.80;

const std::optional<FootedValue>& value_of(const FootedResult& result, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? result.tdn : result.crude_protein;
}

const DietVariance& variance_of(const ForageClass& forage, DietNutrient nutrient) {
  return diet_variance(nutrient, forage.semi_arid);
}

double square(double x) {
  return x * x;
}

// What all results of one bag share: the stops that were plucked and the day's picker.
double bag_variance(const DietVariance& v, int stops) {
  return square(v.stop_sd) / std::max(1, stops) + square(v.trip_sd);
}

double bag_noise(const DietVariance& v, int stops) {
  return bag_variance(v, stops) + square(v.lab_sd);
}

/// One value a laboratory gave for a bag, on the scale, with the variance it alone adds.
struct Reading {
  double value, variance;
};

// Results of one bag are separate observations, but they err together by what was plucked. Given
// noise N / w_i (w_i their weights, N the variance of their weighted mean with that common error),
// independent observations tell the regression exactly what the bag as a whole does.
std::vector<double> noises_of(const std::vector<Reading>& readings, double common) {
  double precision = 0;
  for (const Reading& one : readings) precision += 1 / one.variance;
  std::vector<double> noises;
  for (const Reading& one : readings)
    noises.push_back((common + 1 / precision) * precision * one.variance);
  return noises;
}

std::string lab_of(const Bag& bag, const LabResult& result) {
  return result.lab.empty() && bag.sent ? bag.sent->lab : result.lab;
}

BagReading read_bag(const Bag& bag) {
  BagReading reading{&bag, false, "", {}, {}, {}};
  for (const LabResult* result : standing_results(bag)) {
    Result<FootedResult> footed = on_dry_matter(*result);
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

std::vector<BagReading> read_bags(const Book& book, const Pasture& pasture) {
  std::vector<BagReading> readings;
  for (const Bag& bag : book.bags)
    if (bag.pasture == pasture.id) readings.push_back(read_bag(bag));
  std::stable_sort(readings.begin(), readings.end(), [](const BagReading& a, const BagReading& b) {
    return a.bag->plucked < b.bag->plucked;
  });
  return readings;
}

Problem unknown_forage(const Pasture& pasture) {
  std::optional<Place> place;
  if (!pasture.origin.file.empty())
    place = Place{pasture.origin.file, pasture.origin.line, 1, 1, ""};
  return input_problem(
      fmt::format("pasture '{}': no forage class '{}'", pasture.id, shown(pasture.forage)),
      suggestion(pasture.forage, forage_class_names()), place);
}

std::vector<Date> dates_between(Date first, Date last) {
  std::vector<Date> dates;
  for (Date day = first; day <= last; day += Days(1)) dates.push_back(day);
  return dates;
}

// Where a draw of a zero-mean posterior with another seed starts: far along the generator's cycle.
std::uint64_t second_stream(std::uint64_t seed) {
  return seed ^ 0xA5A5'5A5A'C3C3'3C3CU;
}

}  // namespace

double to_scale(DietNutrient nutrient, Share value) {
  const double x = value.value();
  return nutrient == DietNutrient::tdn ? std::log(x / (1 - x)) : std::log(x);
}

Share from_scale(DietNutrient nutrient, double scaled) {
  return Share(nutrient == DietNutrient::tdn ? 1 / (1 + std::exp(-scaled)) : std::exp(scaled));
}

/// Walks the bags in order of plucking, so that a change of laboratory is seen.
std::vector<Observation> DietSeries::observations(DietNutrient nutrient) const {
  const DietVariance& v = variance_of(*forage_, nutrient);
  std::vector<Observation> seen;
  std::string last_lab;
  for (const BagReading& bag : bags_) {
    if (!bag.used) continue;
    std::vector<Reading> readings;
    for (std::size_t i = 0; i < bag.results.size(); ++i) {
      const std::string& lab = bag.labs[i];
      const bool other = !lab.empty() && !last_lab.empty() && lab != last_lab;
      if (!lab.empty()) last_lab = lab;
      if (const auto& value = value_of(bag.results[i], nutrient))
        readings.push_back({to_scale(nutrient, value->value),
                            square(v.lab_sd * (other ? other_lab : 1)) + square(value->extra_sd)});
    }
    const int stops = bag.bag->stops.value_or(stops_unwritten);
    const std::vector<double> noises = noises_of(readings, bag_variance(v, stops));
    const TimePoint when = time_of(bag.bag->plucked);
    for (std::size_t i = 0; i < readings.size(); ++i)
      seen.push_back({when, readings[i].value, prior_mean(nutrient, bag.bag->plucked), noises[i]});
  }
  return seen;
}

Result<DietSeries> DietSeries::of(const Book& book, const Pasture& pasture) {
  DietSeries series;
  series.pasture_ = &pasture;
  series.forage_ = find_forage_class(pasture.forage);
  if (series.forage_ == nullptr) return unknown_forage(pasture);
  series.bags_ = read_bags(book, pasture);
  for (const DietNutrient nutrient : {DietNutrient::crude_protein, DietNutrient::tdn}) {
    Result<GaussianProcess> model = GaussianProcess::condition(
        variance_of(*series.forage_, nutrient).kernel, series.observations(nutrient));
    if (!model) return model.problems();
    series.models_.push_back(std::move(*model));
  }
  return series;
}

TimePoint DietSeries::time_of(Date day) const {
  const Date start = season_start(green_up_of(*pasture_, *forage_), day);
  return {static_cast<double>(day.julian_day()), start.year()};
}

double DietSeries::prior_mean(DietNutrient nutrient, Date day) const {
  const Date start = season_start(green_up_of(*pasture_, *forage_), day);
  return curve_on_scale(*forage_, nutrient, static_cast<double>(days_between(start, day)));
}

DietSeries::Asked DietSeries::ask(DietNutrient nutrient, const std::vector<Date>& dates) const {
  Asked asked{{}, VectorXd(static_cast<Index>(dates.size()))};
  for (const Date day : dates) {
    asked.prior(static_cast<Index>(asked.when.size())) = prior_mean(nutrient, day);
    asked.when.push_back(time_of(day));
  }
  return asked;
}

Share DietSeries::class_curve(DietNutrient nutrient, Date day) const {
  return from_scale(nutrient, prior_mean(nutrient, day));
}

std::vector<DietPoint> DietSeries::days(DietNutrient nutrient, Date first, Date last) const {
  const std::vector<Date> dates = dates_between(first, last);
  const Asked asked = ask(nutrient, dates);
  const auto marginals = model(nutrient).marginals_at(asked.when, asked.prior);
  const double reach = normal_quantile(0.5 + band / 2);
  std::vector<DietPoint> points;
  for (std::size_t i = 0; i < dates.size(); ++i) {
    const double mean = marginals.mean(static_cast<Index>(i));
    const double half = reach * std::sqrt(marginals.variance(static_cast<Index>(i)));
    points.push_back({dates[i], from_scale(nutrient, mean), from_scale(nutrient, mean - half),
                      from_scale(nutrient, mean + half)});
  }
  return points;
}

DietPoint DietSeries::on(DietNutrient nutrient, Date day) const {
  return days(nutrient, day, day).front();
}

/// This season's used bags as points of time and percent; bags of one day are averaged.
std::vector<Knot> DietSeries::season_knots(DietNutrient nutrient, Date day) const {
  std::map<double, std::vector<double>> by_day;
  for (const BagReading& bag : bags_) {
    const TimePoint when = time_of(bag.bag->plucked);
    if (!bag.used || when.year != time_of(day).year) continue;
    for (const FootedResult& result : bag.results)
      if (const auto& value = value_of(result, nutrient))
        by_day[when.day].push_back(value->value.value());
  }
  std::vector<Knot> knots;
  for (const auto& [x, values] : by_day) {
    double sum = 0;
    for (const double value : values) sum += value;
    knots.push_back({x, sum / static_cast<double>(values.size())});
  }
  return knots;
}

std::optional<Share> DietSeries::linear(DietNutrient nutrient, Date day) const {
  const std::vector<Knot> knots = season_knots(nutrient, day);
  if (knots.empty()) return std::nullopt;
  return Share(linear_at(knots, time_of(day).day));
}

std::optional<Share> DietSeries::cubic(DietNutrient nutrient, Date day) const {
  std::vector<Knot> knots = season_knots(nutrient, day);
  if (knots.empty()) return std::nullopt;
  return Share(MonotoneCubic(std::move(knots)).at(time_of(day).day));
}

DietSeries::Paths DietSeries::paths(Date first, Date last, int count, std::uint64_t seed) const {
  const std::vector<Date> dates = dates_between(first, last);
  const auto posterior_of = [&](DietNutrient nutrient) {
    const Asked asked = ask(nutrient, dates);
    return model(nutrient).at(asked.when, asked.prior);
  };
  const auto back = [](DietNutrient nutrient, const Eigen::MatrixXd& scaled) {
    return Eigen::MatrixXd(
        scaled.unaryExpr([nutrient](double x) { return from_scale(nutrient, x).value(); }));
  };
  const Posterior protein = posterior_of(DietNutrient::crude_protein);
  Posterior energy = posterior_of(DietNutrient::tdn);
  const VectorXd energy_mean = std::exchange(energy.mean, VectorXd::Zero(energy.mean.size()));
  // The same seed draws the same normals, so the first part moves with protein, the second alone.
  Eigen::MatrixXd tdn =
      shared_fall * sample_paths(energy, count, seed) +
      std::sqrt(1 - square(shared_fall)) * sample_paths(energy, count, second_stream(seed));
  tdn.colwise() += energy_mean;
  return {first, back(DietNutrient::crude_protein, sample_paths(protein, count, seed)),
          back(DietNutrient::tdn, tdn)};
}

double DietSeries::tail_probability(DietNutrient nutrient, Date day, Share value, int stops) const {
  const Asked asked = ask(nutrient, {day});
  const auto marginals = model(nutrient).marginals_at(asked.when, asked.prior);
  const double sd =
      std::sqrt(marginals.variance(0) + bag_noise(variance_of(*forage_, nutrient), stops));
  return 2 * normal_cdf(-std::abs(to_scale(nutrient, value) - marginals.mean(0)) / sd);
}

const FootedResult* DietSeries::newest_result(Date day) const {
  const BagReading* newest = nullptr;
  for (const BagReading& reading : bags_) {
    const long age = days_between(reading.bag->plucked, day);
    if (!reading.used || reading.results.empty() || age < 0 || age > figure_days) continue;
    if (newest == nullptr || newest->bag->plucked <= reading.bag->plucked) newest = &reading;
  }
  return newest == nullptr ? nullptr : &newest->results.back();
}

double DietSeries::sd_on(DietNutrient nutrient, Date day) const {
  const Asked asked = ask(nutrient, {day});
  return std::sqrt(model(nutrient).marginals_at(asked.when, asked.prior).variance(0));
}

double DietSeries::sd_after_bag(DietNutrient nutrient, Date target, Date bag_day, int stops) const {
  const Asked asked = ask(nutrient, {target, bag_day});
  const Eigen::MatrixXd c = model(nutrient).at(asked.when, asked.prior).covariance;
  const double seen = c(1, 1) + bag_noise(variance_of(*forage_, nutrient), stops);
  return std::sqrt(std::max(0.0, c(0, 0) - square(c(0, 1)) / seen));
}

}  // namespace pluckbook
