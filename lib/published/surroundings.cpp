#include "published/surroundings.h"

#include "published/equation_figures.h"

namespace pluckbook {

namespace {

ActivityFigures read_activity() {
  const EquationFigures f("surroundings", "activity");
  return {f["eating"],  f["eating_tdn"], f["terrain"], f["grass"], f["megajoules"],
          f["level"],   f["rolling"],    f["hilly"],   f["usual"], f["cap"],
          f["walking"], f["climbing"],   f.citation()};
}

ColdRuleFigures read_cold_rule() {
  const EquationFigures f("surroundings", "cold_rule");
  return {f["wet_or_summer"],    f["dry_fall"],      f["dry_winter"],
          f["dry_heavy_winter"], f["percent_per_f"], f.citation()};
}

HeatBalanceFigures read_heat_balance() {
  const EquationFigures f("surroundings", "heat_balance");
  return {f["area"],
          f["area_power"],
          f["body"],
          f["heat_share"],
          f["tissue_newborn"],
          f["tissue_one_month"],
          f["tissue_yearling"],
          f["tissue_yearling_score"],
          f["tissue_adult"],
          f["tissue_adult_score"],
          f["coat"],
          f["coat_wind"],
          f["coat_hair"],
          f["dry"],
          f["mud_below"],
          f["wet"],
          f["covered"],
          f["thin_hide"],
          f["average_hide"],
          f["thick_hide"],
          f.citation()};
}

}  // namespace

const ActivityFigures& activity_figures() {
  static const auto figures = read_activity();
  return figures;
}

const ColdRuleFigures& cold_rule_figures() {
  static const auto figures = read_cold_rule();
  return figures;
}

const HeatBalanceFigures& heat_balance_figures() {
  static const auto figures = read_heat_balance();
  return figures;
}

const PantingFigures& panting_figures() {
  static const PantingFigures figures = [] {
    const EquationFigures f("surroundings", "heat");
    return PantingFigures{f["shallow_panting"], f["open_mouth_panting"], f.citation()};
  }();
  return figures;
}

}  // namespace pluckbook
