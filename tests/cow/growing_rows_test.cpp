// National Research Council 2000: growing heifers and stockers, computed and recalled.
#include "cow/energy_chain.h"
#include "cow/requirement_columns.h"
#include "published/rules.h"

namespace pluckbook::test {
namespace {

TEST(GrowingRows, ComputedRowsFollowFromTheEquationsToTheirLastDigit) {
  PrintedTable table("growing_heifers_and_stockers", 90);
  for (const TsvRow& row : table.rows()) {
    AnimalAt stocker =
        animal(CowClass::growing, number(row, "weight_lb"), number(row, "finished_weight_lb"), 0);
    stocker.gain = from_lb<KgPerDay>(number(row, "gain_lb"));
    const EquationNeed need = by_equations(stocker);
    same_diet(table, row, need);
    table.same(row, "nem_maintenance_mcal", need.energy.maintenance.total().value());
    table.same(row, "neg_mcal", need.energy.gain.value());
  }
  table.report();
}

// Recalled, NRC 2000 appendix, 550 lb and 1000 lb at finishing. Their gain follows from TDN by the
// second published form (read in a conference abstract, after NASEM 2016).
TEST(GrowingRows, RecalledRowsLieWithinTheStatedDeviations) {
  PrintedTable table("growing_recalled", 5);
  for (const TsvRow& row : table.rows()) {
    const KgBody weight = from_lb<KgBody>(550), finished = from_lb<KgBody>(1000);
    const McalPerKgDm me =
        me_of(from_percent(number(row, "tdn_pct")) * energy_chain().printed_tdn_divisor);
    const AnimalState steer = state_of(animal(CowClass::growing, 550, 1000, 0), finished);
    const KgDmPerDay eaten = predicted_intake(steer, nem_of_me(me));
    const McalPerDay maintenance = maintenance_of(weight, {}).total();
    const KgDmPerDay held(maintenance.value() / nem_of_me(me).value());
    const Growth growth = growth_on(weight, finished, (eaten - held) * neg_of_me(me));
    const KgPerDay protein = protein_need(weight, {}, {}, growth).crude();
    table.near(row, "dmi_lb", in_lb(eaten), 0.035);
    table.near(row, "gain_lb", in_lb(growth.gain), 0.0045);
    table.near(row, "cp_pct", in_percent(protein / eaten), 0.085);
    table.near(row, "nem_mcal_lb", nem_of_me(me).value() * kg_per_lb, 0.0051);
    table.near(row, "neg_mcal_lb", neg_of_me(me).value() * kg_per_lb, 0.0051);
  }
  table.report();
}

}  // namespace
}  // namespace pluckbook::test
