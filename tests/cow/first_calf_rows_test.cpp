// National Research Council 2000, equations: two-year-olds in their first lactation.
#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

// These rows were computed with milk on day 30.4 m and all else on day 30.5 m.
EquationNeed first_calf_need(const TsvRow& row) {
  const AnimalAt heifer = cow_of(row, CowClass::first_calf_heifer, "mature_peak_milk_lb");
  AnimalState state = state_of(heifer, *heifer.mature_weight);
  if (heifer.milking)
    state.milk =
        milk_on(peak_at_age(heifer.peak_milk, 2), 30.4 * number(row, "month_since_calving"));
  return need_of_state(state);
}

TEST(FirstCalfRows, ComputedRowsFollowFromTheEquationsToTheirLastDigit) {
  PrintedTable table("first_calf_heifers", 108);
  for (const TsvRow& row : table.rows()) {
    const EquationNeed need = first_calf_need(row);
    same_diet(table, row, need);
    table.same(row, "weight_lb", in_lb(need.state.weight));
    table.same(row, "gain_lb", in_lb(need.state.gain));
    table.same(row, "milk_lb", in_lb(need.state.milk));
    table.same(row, "nem_maintenance_milk_pregnancy_mcal", need.energy.nem().value());
    table.same(row, "neg_mcal", need.energy.gain.value());
  }
  table.report();
}

}  // namespace
}  // namespace pluckbook::test
