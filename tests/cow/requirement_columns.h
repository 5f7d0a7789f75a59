// requirement_columns.h - the columns a requirement table prints, as the equations give them.
#pragma once

#include "cow/equations.h"
#include "cow/printed_table.h"

namespace pluckbook::test {

inline constexpr double row_days = 30.5;  // the row of month m stands on day 30.5 m

/// The day's diet and amounts, in the units of print; every requirement table has these columns.
inline void same_diet(PrintedTable& table, const TsvRow& row, const EquationNeed& need) {
  table.same(row, "dmi_lb", in_lb(need.intake));
  table.same(row, "tdn_pct", in_percent(need.tdn));
  table.same(row, "nem_mcal_lb", need.nem_density.value() * kg_per_lb);
  table.same(row, "cp_pct", in_percent(need.crude_protein()));
  table.same(row, "ca_pct", in_percent(need.calcium_share()));
  table.same(row, "p_pct", in_percent(need.phosphorus_share()));
  table.same(row, "tdn_lb", in_lb(need.intake * need.tdn));
  table.same(row, "cp_lb", in_lb(need.protein.crude()));
}

inline EquationNeed by_equations(const AnimalAt& animal) {
  const auto need = need_by_equations(animal);
  EXPECT_TRUE(need.ok()) << (need.ok() ? "" : to_text(need.problems().front()));
  return need.ok() ? *need : EquationNeed{};
}

inline AnimalAt animal(CowClass cow_class, double weight_lb, double mature_lb, double day) {
  AnimalAt one;
  one.cow_class = cow_class;
  one.weight = from_lb<KgBody>(weight_lb);
  one.mature_weight = from_lb<KgBody>(mature_lb);
  one.days_since_calving = day;
  one.milking = false;
  return one;
}

/// A cow of the rows: the calf is weaned after month 6.
inline AnimalAt cow_of(const TsvRow& row, CowClass cow_class, const std::string& milk_column) {
  const double month = number(row, "month_since_calving");
  const double mature = number(row, "mature_weight_lb");
  AnimalAt cow = animal(cow_class, mature, mature, row_days * month);
  cow.peak_milk = from_lb<KgPerDay>(number(row, milk_column));
  cow.milking = month <= 6;
  return cow;
}

}  // namespace pluckbook::test
