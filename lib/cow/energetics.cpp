#include "cow/energetics.h"

#include <cmath>

namespace pluckbook {

namespace {

constexpr double days_in_week = 7;

double at_day(const GestationCurve& curve, double t) {
  return (curve.size - curve.fall * t) * std::exp((curve.rate - curve.rate_fall * t) * t);
}

KgBody equivalent_weight(KgBody weight, KgBody mature_weight) {
  return KgBody(growth_figures().reference_weight) * (weight / mature_weight);
}

KgPerDay protein_of_gain(KgPerDay gain, McalPerDay retained) {
  const GrowthFigures& f = growth_figures();
  return KgPerDay((f.protein * gain.value() - f.protein_of_energy * retained.value()) / 1000);
}

}  // namespace

double metabolic_size(KgBody weight) {
  return std::pow(weight.value(), 0.75);
}

Maintenance maintenance_of(KgBody weight, const MaintenanceSetting& setting) {
  const MaintenanceFigures& f = maintenance_figures();
  Maintenance m;
  m.size = metabolic_size(weight);
  m.base = f.base;
  if (setting.breed != nullptr) m.breed = setting.breed->maintenance;
  if (setting.milking) m.milking = f.milking;
  m.condition = f.condition_at_1 + f.condition_step * (setting.condition - 1);
  if (setting.intact_male) m.sex = f.intact_male;
  m.cold = f.cold_step * (f.neutral - setting.last_month.value());
  return m;
}

KgPerDay milk_on(KgPerDay peak, double days_since_calving) {
  const double peaks = days_since_calving / days_in_week / milk_figures().peak_week;
  return peak * (peaks * std::exp(1 - peaks));
}

McalPerDay milk_energy(KgPerDay milk) {
  const MilkFigures& f = milk_figures();
  const double mcal_per_kg =
      f.fat_energy * f.fat_percent + f.solids_energy * f.solids_percent - f.energy_less;
  return McalPerDay(milk.value() * mcal_per_kg);
}

KgPerDay peak_at_age(KgPerDay mature_peak, int years) {
  if (years <= 2) return mature_peak * milk_figures().two_year_old;
  if (years == 3) return mature_peak * milk_figures().three_year_old;
  return mature_peak;
}

Pregnancy pregnancy_on(KgBody birth_weight, double day_of_gestation) {
  const double t = day_of_gestation;
  if (t <= 0) return {};
  const PregnancyFigures& f = pregnancy_figures();
  Pregnancy p;
  p.nem = McalPerDay(birth_weight.value() * at_day(f.energy, t) * f.km / 1000);
  p.net_protein =
      KgPerDay(birth_weight.value() * f.nitrogen_to_protein * at_day(f.nitrogen, t) / 1000);
  p.conceptus = birth_weight * at_day(f.conceptus, t);
  const double growth_rate = f.conceptus.rate - 2 * f.conceptus.rate_fall * t;  // its derivative
  p.conceptus_gain = KgPerDay(p.conceptus.value() * growth_rate);
  return p;
}

KgBody usual_birth_weight(KgBody mature_weight) {
  return mature_weight * pregnancy_figures().birth_share;
}

Growth growth_of(KgBody weight, KgBody mature_weight, KgPerDay gain) {
  const KgBody equivalent = equivalent_weight(weight, mature_weight);
  if (gain <= KgPerDay(0)) return {equivalent, {}, {}, {}};
  const GrowthFigures& f = growth_figures();
  const McalPerDay retained(f.energy * metabolic_size(equivalent * f.empty_body) *
                            std::pow(gain.value() * f.empty_gain, f.energy_gain_power));
  return {equivalent, gain, retained, protein_of_gain(gain, retained)};
}

Growth growth_on(KgBody weight, KgBody mature_weight, McalPerDay retained) {
  const KgBody equivalent = equivalent_weight(weight, mature_weight);
  if (retained <= McalPerDay(0)) return {equivalent, {}, {}, {}};
  const GrowthFigures& f = growth_figures();
  const KgPerDay gain(f.gain * std::pow(retained.value(), f.gain_energy_power) *
                      std::pow(equivalent.value(), f.gain_weight_power));
  return {equivalent, gain, retained, protein_of_gain(gain, retained)};
}

}  // namespace pluckbook
