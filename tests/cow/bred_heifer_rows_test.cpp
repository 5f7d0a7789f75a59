// National Research Council 2000, equations: replacement heifers from conception to calving.
#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

TEST(BredHeiferRows, ComputedRowsFollowFromTheEquationsToTheirLastDigit) {
  PrintedTable table("bred_heifers", 45);
  for (const TsvRow& row : table.rows()) {
    const EquationNeed need = by_equations(animal(CowClass::bred_heifer, number(row, "weight_lb"),
                                                  number(row, "mature_weight_lb"),
                                                  row_days * number(row, "month_of_pregnancy")));
    same_diet(table, row, need);
    table.same(row, "weight_lb", in_lb(need.state.weight));
    table.same(row, "gain_lb", in_lb(need.state.gain));
    table.same(row, "nem_maintenance_pregnancy_mcal", need.energy.nem().value());
    table.same(row, "neg_mcal", need.energy.gain.value());
  }
  table.report();
}

}  // namespace
}  // namespace pluckbook::test
