// Bulls: the block computed from NRC 2000, and the chart read in The Cattleman, February 2015.
#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

EquationNeed bull_need(const TsvRow& row, double mature_lb) {
  AnimalAt bull = animal(CowClass::bull, number(row, "weight_lb"), mature_lb, 0);
  bull.gain = from_lb<KgPerDay>(number(row, "gain_lb"));
  return by_equations(bull);
}

TEST(BullRows, ComputedRowsFollowFromTheEquationsToTheirLastDigit) {
  PrintedTable table("bulls", 13);
  for (const TsvRow& row : table.rows()) {
    const EquationNeed need = bull_need(row, number(row, "mature_weight_lb"));
    same_diet(table, row, need);
    table.same(row, "nem_maintenance_mcal", need.energy.maintenance.total().value());
    table.same(row, "neg_mcal", need.energy.gain.value());
  }
  table.report();
}

// The chart names no mature weight and comes from other equations: its young bulls eat less of a
// denser diet. This holds how far apart they are, not that they agree.
TEST(BullRows, TheReadChartLiesAsFarFromTheEquationsAsStated) {
  PrintedTable table("bulls_read", 14);
  for (const TsvRow& row : table.rows()) {
    const EquationNeed need = bull_need(row, 2000);
    table.near(row, "dmi_lb", in_lb(need.intake), 3.65);
    table.near(row, "tdn_pct", in_percent(need.tdn), 8.7);
    table.near(row, "cp_pct", in_percent(need.crude_protein()), 1.65);
  }
  table.report();
}

}  // namespace
}  // namespace pluckbook::test
