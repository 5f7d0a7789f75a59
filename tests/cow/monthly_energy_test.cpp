// Read: University of Nebraska 2011, Table 2, after NRC 1996: net energy by month of a 1170-lb cow
// with 17.6 lb of milk at peak and a calf of 38.5 kg.
#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

TEST(MonthlyEnergy, TheNebraskaMonthsComeBackWithinAFifthOfAMegacalorie) {
  PrintedTable table("cow_energy_by_month_read", 12);
  for (const TsvRow& row : table.rows()) {
    AnimalAt cow =
        animal(CowClass::mature_cow, 1170, 1170, row_days * number(row, "month_since_calving"));
    cow.peak_milk = from_lb<KgPerDay>(17.6);
    cow.milking = number(row, "month_since_calving") <= 6;
    AnimalState state = state_of(cow, cow.weight);
    state.birth_weight = KgBody(38.5);
    const EnergyNeed energy = need_of_state(state).energy;
    table.near(row, "nem_maintenance", energy.maintenance.total().value(), 0.085);
    table.near(row, "nem_milk", energy.milk.value(), 0.055);
    table.near(row, "nem_pregnancy", energy.pregnancy.value(), 0.055);
    table.near(row, "nem_total", energy.nem().value(), 0.145);
  }
  table.report();
}

}  // namespace
}  // namespace pluckbook::test
