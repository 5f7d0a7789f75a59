// The published equations beside the table's row: a check that anyone can follow.
#include <fmt/format.h>

#include <cmath>

#include "advice/workings_line.h"
#include "base/text.h"
#include "published/energetics.h"

namespace pluckbook {
namespace {

Figure in_kilograms(std::string name, KgPerDay amount) {
  return {std::move(name), amount.value(), Measure::kilograms_per_day};
}

WorkingsLine maintenance_line(const Maintenance& m, const Figure& weight_in_kg) {
  return line(
      "maintenance", "{0} ^ 0.75 x ({1} x {2} x {3} x {4} x {5} + {6})",
      {weight_in_kg, bare("base", m.base), bare("breed", m.breed), bare("milking", m.milking),
       bare("condition", m.condition), bare("sex", m.sex), bare("cold", m.cold)},
      energy("maintenance", m.total()), cited(maintenance_figures().citation));
}

WorkingsLine milk_line(const EquationNeed& need) {
  const MilkFigures& f = milk_figures();
  return line("milk", "{0} x ({1} x {2} + {3} x {4} - {5})",
              {in_kilograms("milk in kg", need.state.milk), bare("energy of fat", f.fat_energy),
               bare("% fat", f.fat_percent), bare("energy of solids", f.solids_energy),
               bare("% solids", f.solids_percent), bare("less", f.energy_less)},
              energy("milk", need.energy.milk), cited(f.citation));
}

std::string pregnancy_name(const EquationNeed& need) {
  return fmt::format("pregnancy, day {}", shortest(std::round(need.state.days_pregnant)));
}

/// Net energy for maintenance and what counts with it, by use, and against the table's.
void add_energy_lines(const EquationNeed& need, const Need& table,
                      std::vector<WorkingsLine>& lines) {
  const Figure weight_in_kg{"weight in kg", need.state.weight.value(), Measure::kilograms};
  lines.push_back(line("weight in kg", "{0} / {1}",
                       {weight("weight", need.state.weight), one_kilogram}, weight_in_kg));
  lines.push_back(maintenance_line(need.energy.maintenance, weight_in_kg));
  if (need.state.milk > KgPerDay(0)) lines.push_back(milk_line(need));
  const Figure pregnant = energy(pregnancy_name(need), need.energy.pregnancy);
  lines.push_back(given(pregnant, cited(pregnancy_figures().citation)));
  lines.push_back(line("NEm by the equations", "{0} + {1} + {2}",
                       {energy("maintenance", need.energy.maintenance.total()),
                        energy("milk", need.energy.milk), pregnant},
                       energy("NEm by the equations", need.energy.nem())));
  lines.push_back(line(
      "less the table's", "{0} - {1}",
      {energy("NEm by the equations", need.energy.nem()), energy("NEm of the table", table.nem)},
      energy("less the table's", need.energy.nem() - table.nem)));
}

WorkingsLine milk_protein_line(const EquationNeed& need, const Figure& milk) {
  const ProteinFigures& f = protein_figures();
  return line(milk.name, "{0} x {1} / {2}",
              {in_kilograms("milk in kg", need.state.milk),
               percent_of("protein of milk", milk_figures().protein_percent),
               bare("efficiency", f.milk_efficiency)},
              milk, cited(f.citation));
}

/// Metabolizable protein by use, and the crude protein of it against the table's.
void add_protein_lines(const EquationNeed& need, const Need& table,
                       std::vector<WorkingsLine>& lines) {
  const ProteinFigures& f = protein_figures();
  const ProteinNeed& protein = need.protein;
  const Figure weight_in_kg{"weight in kg", need.state.weight.value(), Measure::kilograms};
  const Figure maintenance = in_kilograms("maintenance protein", protein.maintenance);
  const Figure milk = in_kilograms("milk protein", protein.milk);
  const Figure calf = in_kilograms("calf's protein", protein.pregnancy);
  const Figure gain = in_kilograms("gain's protein", protein.growth);
  const Figure crude = amount("CP by the equations", protein.crude());
  const std::string source = cited(f.citation);
  lines.push_back(line(maintenance.name, "{0} x {1} ^ 0.75 / 1000",
                       {bare(shortest(f.maintenance), f.maintenance), weight_in_kg}, maintenance,
                       source));
  if (protein.milk > KgPerDay(0)) lines.push_back(milk_protein_line(need, milk));
  lines.push_back(given(calf, cited(pregnancy_figures().citation)));
  if (protein.growth > KgPerDay(0)) lines.push_back(given(gain, cited(growth_figures().citation)));
  lines.push_back(line(crude.name, "({0} + {1} + {2} + {3}) / {4} x {5}",
                       {maintenance, milk, calf, gain, bare("MP of CP", f.mp_of_cp), one_kilogram},
                       crude, source));
  lines.push_back(line("less the table's", "{0} - {1}",
                       {crude, amount("her own CP of the table", table.crude_protein_amount())},
                       amount("less the table's", protein.crude() - table.crude_protein_amount())));
}

}  // namespace

WorkingsSection equation_workings(const EquationNeed& need, const Need& table,
                                  const std::string& who) {
  WorkingsSection section{
      fmt::format("{} by the published equations, beside the table", who), {}, need.notes};
  add_energy_lines(need, table, section.lines);
  add_protein_lines(need, table, section.lines);
  return section;
}

}  // namespace pluckbook
