#include "cow/minerals.h"

#include <algorithm>

namespace pluckbook {

namespace {

constexpr double days_of_onset = 21;

double onset_of_late_pregnancy(double days_pregnant, double late_days) {
  const double begins = pregnancy_figures().gestation_days - late_days;
  return std::clamp((days_pregnant - begins) / days_of_onset, 0.0, 1.0);
}

KgPerDay from_grams(double grams) {
  return KgPerDay(grams / 1000);
}

MineralNeed need_by(const MineralFigures& f, const MineralUse& use) {
  MineralNeed need;
  need.body = from_grams(f.body * use.weight.value());
  need.milk = from_grams(f.milk * use.milk.value());
  need.gain = use.net_protein_gain * f.gain;
  need.conceptus = from_grams(f.conceptus * use.birth_weight.value() / f.late_days *
                              onset_of_late_pregnancy(use.days_pregnant, f.late_days));
  need.absorbed = f.absorbed;
  return need;
}

}  // namespace

MineralNeed calcium_need(const MineralUse& use) {
  return need_by(calcium_figures(), use);
}

MineralNeed phosphorus_need(const MineralUse& use) {
  return need_by(phosphorus_figures(), use);
}

}  // namespace pluckbook
