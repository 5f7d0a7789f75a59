#include "cow/equations.h"

#include <algorithm>

#include "base/text.h"
#include "cow/condition.h"
#include "cow/energy_chain.h"
#include "cow/intake.h"
#include "numeric/bisection.h"
#include "published/rules.h"

namespace pluckbook {

namespace {

constexpr McalPerKgDm poorest{0.9}, richest{3.9};  // ME of any diet
constexpr Share best_forage = from_percent(85);    // TDN; the rows stop there too
constexpr Celsius coldest{-50}, hottest{50};       // mean of a month

/// ME of the diet whose predicted intake just meets the need: first maintenance and what counts
/// with it, then, upwards from there, the gain on what is left over.
McalPerKgDm diet_that_meets(const EnergyNeed& need, const AnimalState& state) {
  const auto left_over = [&](McalPerKgDm me) {
    const McalPerKgDm nem = nem_of_me(me);
    return predicted_intake(state, nem) - KgDmPerDay(need.nem().value() / nem.value());
  };
  const McalPerKgDm holds =
      zero_of([&](McalPerKgDm me) { return left_over(me).value(); }, poorest, richest);
  if (need.gain == McalPerDay(0)) return holds;
  const auto gain_left = [&](McalPerKgDm me) {
    return (left_over(me) * neg_of_me(me) - need.gain).value();
  };
  return zero_of(gain_left, holds, richest);
}

McalPerDay cold_of(const Circumstances& circumstances, McalPerDay warm) {
  if (const auto* rule = std::get_if<ColdByRule>(&circumstances.cold))
    return warm * rule->extra_share;
  if (const auto* balance = std::get_if<ColdByHeatBalance>(&circumstances.cold))
    return balance->nem;
  return McalPerDay(0);
}

EnergyNeed energy_need(const AnimalState& state, const Pregnancy& pregnancy, const Growth& growth,
                       const Circumstances& c) {
  EnergyNeed need;
  need.maintenance = maintenance_of(
      state.weight, {c.breed, state.milking, state.intact_male, c.condition, c.last_month});
  need.milk = milk_energy(state.milk);
  need.pregnancy = pregnancy.nem;
  need.activity = c.activity;
  need.heat = heat_stress(need.maintenance.total(), c.panting);
  need.gain = growth.retained;
  need.cold = cold_of(c, need.nem());
  return need;
}

std::optional<Problem> impossible(const Circumstances& c) {
  if (auto p = outside("condition", c.condition, 1, 9, "score")) return p;
  auto p = outside("mean temperature of the month", c.last_month.value(), coldest.value(),
                   hottest.value(), "C");
  if (p)
    p->remedy = "was it in F? " + fixed(c.last_month.value(), 0) + " F is " +
                fixed(from_fahrenheit(c.last_month.value()).value(), 1) + " C";
  return p;
}

}  // namespace

KgDmPerDay predicted_intake(const AnimalState& state, McalPerKgDm nem) {
  if (state.intake_form == IntakeForm::cow)
    return nrc_equation(nrc_cow(state.weight, state.bred, state.milk), nem, McalPerKgDm(0)).amount;
  const double n = nem.value(), size = metabolic_size(state.weight);
  const GrowingIntakeFigures& f = growing_intake_figures();
  const double less = state.intake_form == IntakeForm::calf ? f.less_calf : f.less_yearling;
  return KgDmPerDay(size * (f.linear * n - f.square * n * n - less) / std::max(n, f.least_divisor));
}

EquationNeed need_of_state(const AnimalState& state, const Circumstances& circumstances) {
  EquationNeed need;
  need.state = state;
  need.pregnancy = pregnancy_on(state.birth_weight, state.days_pregnant);
  need.growth = growth_of(state.weight, state.mature_weight, state.gain);
  need.energy = energy_need(state, need.pregnancy, need.growth, circumstances);
  need.protein = protein_need(state.weight, state.milk, need.pregnancy, need.growth);
  const MineralUse use{state.weight, state.milk, need.growth.net_protein, state.birth_weight,
                       state.days_pregnant};
  need.calcium = calcium_need(use);
  need.phosphorus = phosphorus_need(use);
  const McalPerKgDm me = diet_that_meets(need.energy, state);
  need.nem_density = nem_of_me(me);
  need.intake = predicted_intake(state, need.nem_density);
  need.tdn_chain = tdn_of(me);
  need.tdn = printed_tdn(need.tdn_chain);
  if (need.tdn > best_forage)
    need.notes.push_back("the need is over 85 % TDN at the intake predicted: no forage meets it");
  return need;
}

Result<EquationNeed> need_by_equations(const AnimalAt& animal, const Circumstances& circumstances) {
  if (auto problem = impossible(animal)) return *std::move(problem);
  if (auto problem = impossible(circumstances)) return *std::move(problem);
  std::vector<std::string> notes;
  const KgBody mature = mature_weight_of(animal, notes);
  AnimalState state = state_of(animal, mature);
  // A cow's weight is said at condition 5: at another she stands heavier or lighter.
  if (animal.cow_class == CowClass::mature_cow)
    state.weight =
        weight_at_score(mature, circumstances.condition) / weight_at_score(mature, 5) * mature;
  EquationNeed need = need_of_state(state, circumstances);
  need.notes.insert(need.notes.begin(), notes.begin(), notes.end());
  return need;
}

}  // namespace pluckbook
