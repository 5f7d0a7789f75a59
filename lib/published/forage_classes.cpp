#include "published/forage_classes.h"

#include <cmath>
#include <functional>
#include <map>

#include "published/bundled.h"

namespace pluckbook {

namespace {

// The anchors name their series; the file's sources say what each is. Both are kept in one text.
std::string source_of(const Bundled& entry) {
  std::string source;
  for (const Bundled& anchor : entry.at("anchors").items()) {
    if (!source.empty()) source += "; ";
    source += anchor.text();
  }
  return source;
}

std::string_view scale_of(DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? "logit_tdn" : "log_cp";
}

Scales read_scales(const Bundled& curves, const Bundled& spread, DietNutrient nutrient) {
  const Bundled own = spread.at(scale_of(nutrient));
  const double curve_sd = curves.at("curve_level_sd").number(scale_of(nutrient));
  return {.offset = std::hypot(own.number("pasture_sd"), curve_sd),
          .season = own.number("wiggle_sd") / 2,
          .year = own.number("year_sd"),
          .wiggle = own.number("wiggle_sd")};
}

BagError read_error(DietNutrient nutrient) {
  const Bundled figures = Bundled::topic("sampling_error").at("figures");
  const auto sd = [&](std::string_view id) {
    return figures.with_id(id).number(scale_of(nutrient));
  };
  const double same = sd("lab_sd_same"), other = sd("lab_sd_other");
  return {sd("stop_sd"), sd("trip_sd"), same, std::sqrt(other * other - same * same)};
}

DietVariance read_variance(const Bundled& curves, const Bundled& forage) {
  const Bundled spread = curves.at("spreads").with_id(forage.text("spread"));
  const auto length = [&](DietNutrient nutrient) {
    return spread.at(scale_of(nutrient)).number("wiggle_length_days");
  };
  DietVariance variance;
  for (const DietNutrient nutrient : diet_nutrients)
    variance.kernel.of[series_of(nutrient)] = read_scales(curves, spread, nutrient);
  variance.kernel.wiggle_length =
      std::sqrt(length(DietNutrient::crude_protein) * length(DietNutrient::tdn));
  variance.kernel.correlation =
      curves.at("correlation_log_cp_with_logit_digestibility").number("value");
  variance.kernel.onset = forage.number("greenup_sd_days");
  variance.source = curves.text("spreads_how");
  variance.status = spread.text("status");
  return variance;
}

std::vector<ForageClass> read_classes() {
  const Bundled file = Bundled::topic("seasonal_curves");
  const auto knots = file.at("knots_days_after_greenup").numbers();
  std::vector<ForageClass> classes;
  for (const Bundled& entry : file.at("classes").items()) {
    ForageClass forage;
    forage.id = entry.text("id");
    forage.name = entry.text("name");
    forage.green_up_day_of_year = static_cast<int>(entry.number("greenup_day_of_year"));
    forage.days_after_green_up = knots;
    forage.cp_percent = entry.at("cp_pct").numbers();
    forage.tdn_percent = entry.at("tdn_pct").numbers();
    if (forage.cp_percent.size() != knots.size() || forage.tdn_percent.size() != knots.size())
      entry.fail("a curve needs one value a knot");
    forage.variance = read_variance(file, entry);
    forage.status = entry.text("status");
    forage.source = source_of(entry);
    classes.push_back(std::move(forage));
  }
  return classes;
}

RefitRules read_refit_rules() {
  const Bundled curves = Bundled::topic("seasonal_curves");
  const Bundled refit = curves.at("refit");
  const auto whole = [&](std::string_view key) { return static_cast<int>(refit.number(key)); };
  RefitRules rules;
  rules.least_bags = whole("least_bags");
  rules.least_seasons = whole("least_seasons");
  rules.most_pastures = whole("most_pastures");
  rules.most_years = whole("most_years_of_a_pasture");
  rules.most_bags = whole("most_bags");
  rules.most_bags_of_a_pasture = whole("most_bags_of_a_pasture");
  rules.log_sd = refit.number("log_sd");
  rules.log_length = refit.number("log_length");
  rules.atanh_correlation = refit.number("atanh_correlation");
  rules.depth = refit.number("depth");
  for (const DietNutrient nutrient : diet_nutrients)
    rules.level[series_of(nutrient)] = curves.at("curve_level_sd").number(scale_of(nutrient));
  return rules;
}

}  // namespace

const std::vector<ForageClass>& forage_classes() {
  static const auto classes = read_classes();
  return classes;
}

const ForageClass* find_forage_class(std::string_view name) {
  const std::string wanted = folded_name(name);
  for (const ForageClass& forage : forage_classes())
    if (forage.id == wanted) return &forage;
  return nullptr;
}

std::vector<std::string> forage_class_names() {
  std::vector<std::string> names;
  for (const ForageClass& forage : forage_classes()) names.push_back(spaced_name(forage.id));
  return names;
}

const BagError& bag_error(DietNutrient nutrient) {
  static const std::array errors = {read_error(DietNutrient::crude_protein),
                                    read_error(DietNutrient::tdn)};
  return errors[series_of(nutrient)];
}

const RefitRules& refit_rules() {
  static const RefitRules rules = read_refit_rules();
  return rules;
}

double recorded_green_up_sd() {
  static const double sd =
      Bundled::topic("seasonal_curves").at("recorded_green_up_sd_days").number("value");
  return sd;
}

double event_sd(std::string_view event, DietNutrient nutrient) {
  using Sds = std::map<std::string, std::array<double, 2>, std::less<>>;
  static const auto sds = [] {
    Sds read;
    for (const Bundled& entry : Bundled::topic("seasonal_curves").at("events").items())
      read[entry.text("id")] = {entry.number("log_cp"), entry.number("logit_tdn")};
    return read;
  }();
  const auto found = sds.find(event);
  return found == sds.end() ? 0 : found->second[series_of(nutrient)];
}

}  // namespace pluckbook
