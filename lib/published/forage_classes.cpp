#include "published/forage_classes.h"

#include <cmath>

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
    forage.semi_arid = entry.text("spread") == "semi_arid_range";
    forage.status = entry.text("status");
    forage.source = source_of(entry);
    classes.push_back(std::move(forage));
  }
  return classes;
}

DietVariance read_variance(DietNutrient nutrient, bool semi_arid) {
  const std::string_view scale = nutrient == DietNutrient::crude_protein ? "log_cp" : "logit_tdn";
  const Bundled curves = Bundled::topic("seasonal_curves");
  const Bundled entry =
      curves.at("spreads").with_id(semi_arid ? "semi_arid_range" : "subhumid_and_tame_pasture");
  const Bundled spread = entry.at(scale);
  const Bundled errors = Bundled::topic("sampling_error").at("figures");
  DietVariance variance;
  variance.kernel.offset =
      std::hypot(spread.number("pasture_sd"), curves.at("curve_level_sd").number(scale));
  variance.kernel.season = spread.number("wiggle_sd") / 2;
  variance.kernel.season_length = 1;
  variance.kernel.year = spread.number("year_sd");
  variance.kernel.wiggle = spread.number("wiggle_sd");
  variance.kernel.wiggle_length = spread.number("wiggle_length_days");
  variance.stop_sd = errors.with_id("stop_sd").number(scale);
  variance.trip_sd = errors.with_id("trip_sd").number(scale);
  variance.lab_sd = errors.with_id("lab_sd_same").number(scale);
  variance.source = curves.text("spreads_how");
  variance.status = entry.text("status");
  return variance;
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

const DietVariance& diet_variance(DietNutrient nutrient, bool semi_arid) {
  static const DietVariance protein_range = read_variance(DietNutrient::crude_protein, true);
  static const DietVariance protein_tame = read_variance(DietNutrient::crude_protein, false);
  static const DietVariance tdn_range = read_variance(DietNutrient::tdn, true);
  static const DietVariance tdn_tame = read_variance(DietNutrient::tdn, false);
  if (nutrient == DietNutrient::crude_protein) return semi_arid ? protein_range : protein_tame;
  return semi_arid ? tdn_range : tdn_tame;
}

}  // namespace pluckbook
