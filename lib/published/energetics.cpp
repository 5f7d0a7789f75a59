#include "published/energetics.h"

#include "published/equation_figures.h"

namespace pluckbook {

namespace {

MaintenanceFigures read_maintenance() {
  const EquationFigures f("energetics", "maintenance");
  return {f["base"],           f["milking"],   f["intact_male"], f["condition_at_1"],
          f["condition_step"], f["cold_step"], f["neutral"],     f.citation()};
}

std::vector<Breed> read_breeds() {
  const Bundled block = Bundled::topic("energetics").at("breeds");
  const Citation shared = citation_of(block);
  return table_of<Breed>(block,
                         [&](const BundledRow& row) {
                           return Breed{row.text("id"),
                                        row.number("maintenance"),
                                        {shared.source, shared.table, row.text("status")}};
                         })
      .rows;
}

MilkFigures read_milk() {
  const EquationFigures f("energetics", "milk");
  return {f["peak_week"],      f["fat_energy"],     f["solids_energy"],   f["energy_less"],
          f["fat_percent"],    f["solids_percent"], f["protein_percent"], f["two_year_old"],
          f["three_year_old"], f.citation()};
}

PregnancyFigures read_pregnancy() {
  const EquationFigures f("energetics", "pregnancy");
  return {{f["energy"], f["energy_fall"], f["energy_rate"], f["energy_rate_fall"]},
          f["km"],
          {f["nitrogen"], f["nitrogen_fall"], f["nitrogen_rate"], f["nitrogen_rate_fall"]},
          f["nitrogen_to_protein"],
          {f["conceptus"], 0, f["conceptus_rate"], f["conceptus_rate_fall"]},
          f["gestation_days"],
          f["birth_share"],
          f.citation()};
}

GrowthFigures read_growth() {
  const EquationFigures f("energetics", "growth");
  return {f["reference_weight"],  f["empty_body"],
          f["empty_gain"],        f["energy"],
          f["energy_gain_power"], f["gain"],
          f["gain_energy_power"], f["gain_weight_power"],
          f["protein"],           f["protein_of_energy"],
          f["efficiency_at_0"],   f["efficiency_fall"],
          f["efficiency_until"],  f["efficiency_above"],
          f["at_first_mating"],   f["at_first_calving"],
          f["at_second_calving"], f.citation()};
}

GrowingIntakeFigures read_growing_intake() {
  const EquationFigures f("energetics", "growing_intake");
  return {f["linear"],        f["square"],        f["less_calf"],
          f["less_yearling"], f["least_divisor"], f.citation()};
}

ProteinFigures read_protein() {
  const EquationFigures f("protein", "metabolizable");
  return {f["maintenance"], f["milk_efficiency"], f["pregnancy_efficiency"], f["mp_of_cp"],
          f.citation()};
}

MicrobialFigures read_microbial() {
  const EquationFigures f("protein", "microbial");
  return {f["share"], f["fibre_least"], f["fibre_step"], f.citation()};
}

Microbial2016Figures read_microbial_2016() {
  const EquationFigures f("protein", "microbial_2016");
  return {f["lean_slope"], f["lean_constant"], f["fat_slope"], f["fat_constant"],
          f["fat_from"],   f["fat_tdn"],       f.citation()};
}

ProteinSupplyFigures read_protein_supply() {
  const EquationFigures f("protein", "supply");
  return {f["microbial_mp"], f["rup_1996"], f["rup_forage_2016"], f["rup_concentrate_2016"],
          f.citation()};
}

MineralFigures read_mineral(std::string_view id) {
  const EquationFigures f("protein", id);
  return {f["body"],      f["milk"],     f["gain"],   f["conceptus"],
          f["late_days"], f["absorbed"], f.citation()};
}

}  // namespace

const MaintenanceFigures& maintenance_figures() {
  static const auto figures = read_maintenance();
  return figures;
}

const std::vector<Breed>& breeds() {
  static const auto all = read_breeds();
  return all;
}

const Breed* find_breed(std::string_view name) {
  for (const Breed& breed : breeds())
    if (folded_name(breed.name) == folded_name(name)) return &breed;
  return nullptr;
}

const MilkFigures& milk_figures() {
  static const auto figures = read_milk();
  return figures;
}

const PregnancyFigures& pregnancy_figures() {
  static const auto figures = read_pregnancy();
  return figures;
}

const GrowthFigures& growth_figures() {
  static const auto figures = read_growth();
  return figures;
}

const GrowingIntakeFigures& growing_intake_figures() {
  static const auto figures = read_growing_intake();
  return figures;
}

const ProteinFigures& protein_figures() {
  static const auto figures = read_protein();
  return figures;
}

const MicrobialFigures& microbial_figures() {
  static const auto figures = read_microbial();
  return figures;
}

const Microbial2016Figures& microbial_2016_figures() {
  static const auto figures = read_microbial_2016();
  return figures;
}

const ProteinSupplyFigures& protein_supply_figures() {
  static const auto figures = read_protein_supply();
  return figures;
}

const MineralFigures& calcium_figures() {
  static const auto figures = read_mineral("calcium");
  return figures;
}

const MineralFigures& phosphorus_figures() {
  static const auto figures = read_mineral("phosphorus");
  return figures;
}

}  // namespace pluckbook
