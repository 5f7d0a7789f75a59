#include "published/condition.h"

#include "published/equation_figures.h"

namespace pluckbook {

namespace {

ConditionRow weight_row(const BundledRow& cells) {
  return {static_cast<int>(cells.number("bcs")), cells.number("fat_pct"),
          cells.number("weight_pct_of_bcs5")};
}

ConditionEnergyRow energy_row(const BundledRow& cells) {
  return {static_cast<int>(cells.number("bcs")), cells.number("mature_weight_at_bcs5_lb"),
          cells.number("mcal")};
}

ReserveFigures read_reserves() {
  const EquationFigures f("condition", "reserves");
  return {f["fat_step"],        f["protein_at_0"],   f["protein_fall"], f["empty_body"],
          f["fat_energy"],      f["protein_energy"], f["weight_at_0"],  f["weight_fall"],
          f["diet_of_reserve"], f.citation()};
}

}  // namespace

const ReserveFigures& reserve_figures() {
  static const auto figures = read_reserves();
  return figures;
}

const RequirementTable<ConditionRow>& condition_weights() {
  static const auto table = table_of<ConditionRow>(
      Bundled::topic("condition").at("tables").with_id("condition_weight_read"), weight_row);
  return table;
}

const RequirementTable<ConditionEnergyRow>& condition_energy() {
  static const auto table = table_of<ConditionEnergyRow>(
      Bundled::topic("condition").at("tables").with_id("condition_energy_read"), energy_row);
  return table;
}

}  // namespace pluckbook
