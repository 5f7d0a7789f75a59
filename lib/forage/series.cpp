#include "forage/series.h"

#include <fmt/format.h>

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "base/text.h"
#include "forage/diet_refit.h"
#include "numeric/interpolation.h"

namespace pluckbook {
namespace {

using Eigen::Index;

constexpr double band = 0.80;

Problem unknown_forage(const Pasture& pasture) {
  return input_problem(
      fmt::format("pasture '{}': no forage class '{}'", pasture.id, shown(pasture.forage)),
      suggestion(pasture.forage, forage_class_names()), place_of(pasture.origin));
}

std::vector<Date> dates_between(Date first, Date last) {
  std::vector<Date> dates;
  for (Date day = first; day <= last; day += Days(1)) dates.push_back(day);
  return dates;
}

std::set<int> onset_years(const std::vector<BagReading>& bags, const DietPrior& prior) {
  std::set<int> years;
  for (const BagReading& bag : bags)
    if (bag.used) years.insert(prior.onset_year(bag.bag->plucked));
  return years;
}

/// Days late that the bags and the prior together say a year is.
double days_late(const MarkovProcess& process, const DietPrior& prior, int year) {
  const OnsetPrior onset = prior.onset(year);
  return onset.expected + onset.share * process.onset(year).days;
}

/// Gauss and Newton's steps: the curve's answer to each year's green-up is taken as straight about
/// the estimate until that settles, to half a day.
Result<MarkovProcess> settle(DietPrior& prior, const std::vector<BagReading>& bags) {
  constexpr int most_rounds = 5;
  constexpr double settled = 0.5;
  const std::set<int> years = onset_years(bags, prior);
  for (int round = 1;; ++round) {
    auto process = MarkovProcess::condition(prior.model().kernel, observations_of(bags, prior));
    if (!process) return process.problems();
    double moved = 0;
    for (const int year : years)
      moved = std::max(moved,
                       std::abs(days_late(*process, prior, year) - prior.onset(year).turned_about));
    if (moved < settled || round == most_rounds) return process;
    for (const int year : years) prior.turn_about(year, days_late(*process, prior, year));
  }
}

}  // namespace

Result<DietSeries> DietSeries::of(const Book& book, const Pasture& pasture) {
  const ForageClass* forage = find_forage_class(pasture.forage);
  if (forage == nullptr) return unknown_forage(pasture);
  return of(book, pasture, model_of(book, *forage));
}

Result<DietSeries> DietSeries::of(const Book& book, const Pasture& pasture,
                                  const DietModel& model) {
  const ForageClass* forage = find_forage_class(pasture.forage);
  if (forage == nullptr) return unknown_forage(pasture);
  DietPrior prior(book, pasture, *forage, model);
  std::vector<BagReading> bags = read_bags(book, pasture);
  Result<MarkovProcess> process = settle(prior, bags);
  if (!process) return process.problems();
  return DietSeries(pasture, std::move(prior), std::move(bags), *std::move(process));
}

DietSeries::DietSeries(const Pasture& pasture, DietPrior prior, std::vector<BagReading> bags,
                       MarkovProcess process)
    : pasture_(&pasture),
      prior_(std::move(prior)),
      bags_(std::move(bags)),
      process_(std::move(process)) {}

void DietSeries::ask(Asked& asked, DietNutrient nutrient, const std::vector<Date>& dates) const {
  const Index before = asked.prior.size();
  asked.prior.conservativeResize(before + static_cast<Index>(dates.size()));
  for (std::size_t i = 0; i < dates.size(); ++i) {
    const Expected expected = prior_.on(nutrient, dates[i]);
    asked.when.push_back(expected.when);
    asked.prior(before + static_cast<Index>(i)) = expected.mean;
  }
}

MarkovProcess::Marginals DietSeries::marginals(DietNutrient nutrient,
                                               const std::vector<Date>& dates) const {
  Asked asked;
  ask(asked, nutrient, dates);
  return process_.marginals_at(asked.when, asked.prior);
}

Share DietSeries::class_curve(DietNutrient nutrient, Date day) const {
  return from_scale(nutrient, prior_.class_curve(nutrient, day));
}

GreenUpEstimate DietSeries::green_up(Date day) const {
  const int year = prior_.onset_year(day);
  const OnsetPrior onset = prior_.onset(year);
  const Date usual = prior_.usual_green_up(year);
  return {usual + Days(std::lround(days_late(process_, prior_, year))), usual,
          onset.share * process_.onset(year).sd, onset.recorded};
}

std::vector<DietPoint> DietSeries::days(DietNutrient nutrient, Date first, Date last) const {
  const std::vector<Date> dates = dates_between(first, last);
  const auto found = marginals(nutrient, dates);
  const double reach = normal_quantile(0.5 + band / 2);
  std::vector<DietPoint> points;
  for (std::size_t i = 0; i < dates.size(); ++i) {
    const double mean = found.mean(static_cast<Index>(i));
    const double half = reach * std::sqrt(found.variance(static_cast<Index>(i)));
    points.push_back({dates[i], from_scale(nutrient, mean), from_scale(nutrient, mean - half),
                      from_scale(nutrient, mean + half)});
  }
  return points;
}

DietPoint DietSeries::on(DietNutrient nutrient, Date day) const {
  return days(nutrient, day, day).front();
}

DietSeries::Both DietSeries::quantiles(Date day, double share) const {
  Asked asked;
  for (const DietNutrient nutrient : diet_nutrients) ask(asked, nutrient, {day});
  const auto found = process_.marginals_at(asked.when, asked.prior);
  const double reach = normal_quantile(share);
  const auto quantile = [&](DietNutrient nutrient) {
    const auto at = static_cast<Index>(series_of(nutrient));
    return from_scale(nutrient, found.mean(at) + reach * std::sqrt(found.variance(at)));
  };
  return {quantile(DietNutrient::crude_protein), quantile(DietNutrient::tdn)};
}

/// This season's used bags as points of time and percent; bags of one day are averaged.
std::vector<Knot> DietSeries::season_knots(DietNutrient nutrient, Date day) const {
  const auto season = [&](Date date) { return prior_.on(nutrient, date).when.year; };
  std::map<double, std::vector<double>> by_day;
  for (const BagReading& bag : bags_) {
    if (!bag.used || season(bag.bag->plucked) != season(day)) continue;
    for (const FootedResult& result : bag.results)
      if (const auto& value = value_of(result, nutrient))
        by_day[static_cast<double>(bag.bag->plucked.julian_day())].push_back(value->value.value());
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
  return Share(linear_at(knots, static_cast<double>(day.julian_day())));
}

std::optional<Share> DietSeries::cubic(DietNutrient nutrient, Date day) const {
  std::vector<Knot> knots = season_knots(nutrient, day);
  if (knots.empty()) return std::nullopt;
  return Share(MonotoneCubic(std::move(knots)).at(static_cast<double>(day.julian_day())));
}

DietSeries::Paths DietSeries::paths(Date first, Date last, int count, std::uint64_t seed) const {
  const std::vector<Date> dates = dates_between(first, last);
  Asked asked;
  for (const DietNutrient nutrient : diet_nutrients) ask(asked, nutrient, dates);
  const Eigen::MatrixXd drawn = process_.paths_at(asked.when, asked.prior, count, seed);
  const auto back = [&](DietNutrient nutrient) {
    const auto days = static_cast<Index>(dates.size());
    return Eigen::MatrixXd(
        drawn.middleRows(static_cast<Index>(series_of(nutrient)) * days, days)
            .unaryExpr([nutrient](double x) { return from_scale(nutrient, x).value(); }));
  };
  return {first, back(DietNutrient::crude_protein), back(DietNutrient::tdn)};
}

double DietSeries::tail_probability(DietNutrient nutrient, Date day, Share value, int stops) const {
  const auto found = marginals(nutrient, {day});
  const double sd = std::sqrt(found.variance(0) + bag_variance(bag_error(nutrient), stops));
  return 2 * normal_cdf(-std::abs(to_scale(nutrient, value) - found.mean(0)) / sd);
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
  return std::sqrt(marginals(nutrient, {day}).variance(0));
}

double DietSeries::sd_after_bag(DietNutrient nutrient, Date target, Date bag_day, int stops) const {
  // The bag tells of both nutrients: what it says of the other one helps too.
  Asked asked;
  ask(asked, nutrient, {target});
  for (const DietNutrient told : diet_nutrients) ask(asked, told, {bag_day});
  const Eigen::Matrix3d c = process_.at(asked.when, asked.prior).covariance;
  Eigen::Matrix2d seen = c.bottomRightCorner<2, 2>();
  for (const DietNutrient told : diet_nutrients) {
    const auto at = static_cast<Index>(series_of(told));
    seen(at, at) += bag_variance(bag_error(told), stops);
  }
  const Eigen::Vector2d with = c.block<2, 1>(1, 0);
  return std::sqrt(std::max(0.0, c(0, 0) - with.dot(seen.inverse() * with)));
}

}  // namespace pluckbook
