#include "cow/surroundings.h"

#include <algorithm>
#include <cmath>

#include "published/surroundings.h"

namespace pluckbook {

namespace {

constexpr double joules_per_megajoule = 1e6, metres_per_kilometre = 1000;

double terrain_factor(Terrain terrain) {
  const ActivityFigures& f = activity_figures();
  switch (terrain) {
    case Terrain::level:
      return f.level;
    case Terrain::rolling:
      return f.rolling;
    case Terrain::hilly:
      break;
  }
  return f.hilly;
}

double critical_fahrenheit(Coat coat) {
  const ColdRuleFigures& f = cold_rule_figures();
  switch (coat) {
    case Coat::wet_or_summer:
      return f.wet_or_summer;
    case Coat::dry_fall:
      return f.dry_fall;
    case Coat::dry_winter:
      return f.dry_winter;
    case Coat::dry_heavy_winter:
      break;
  }
  return f.dry_heavy_winter;
}

double tissue_insulation(Age age, double condition) {
  const HeatBalanceFigures& f = heat_balance_figures();
  switch (age) {
    case Age::newborn:
      return f.tissue_newborn;
    case Age::one_month:
      return f.tissue_one_month;
    case Age::yearling:
      return f.tissue_yearling + f.tissue_yearling_score * condition;
    case Age::adult:
      break;
  }
  return f.tissue_adult + f.tissue_adult_score * condition;
}

double coat_factor(CoatState coat) {
  const HeatBalanceFigures& f = heat_balance_figures();
  switch (coat) {
    case CoatState::dry:
      return f.dry;
    case CoatState::mud_below:
      return f.mud_below;
    case CoatState::wet:
      return f.wet;
    case CoatState::covered:
      break;
  }
  return f.covered;
}

double hide_factor(Hide hide) {
  const HeatBalanceFigures& f = heat_balance_figures();
  switch (hide) {
    case Hide::thin:
      return f.thin_hide;
    case Hide::average:
      return f.average_hide;
    case Hide::thick:
      break;
  }
  return f.thick_hide;
}

double coat_insulation(const Exposure& exposure) {
  const HeatBalanceFigures& f = heat_balance_figures();
  const double still = f.coat - f.coat_wind * exposure.wind_km_h + f.coat_hair * exposure.hair_cm;
  return std::max(0.0, still) * coat_factor(exposure.coat) * hide_factor(exposure.hide);
}

}  // namespace

Activity activity_of(KgBody weight, const Grazing& grazing, McalPerDay maintenance) {
  const ActivityFigures& f = activity_figures();
  const double eating = f.eating * grazing.eaten.value() * (f.eating_tdn - grazing.tdn.value());
  const double walking =
      f.terrain * terrain_factor(grazing.terrain) / (grazing.standing_t_ha + f.grass);
  Activity activity;
  activity.by_equation = McalPerDay((eating + walking) * weight.value() / f.megajoules);
  activity.cap = maintenance * (f.cap - 1);
  return activity;
}

McalPerDay usual_activity(McalPerDay maintenance) {
  return maintenance * (activity_figures().usual - 1);
}

McalPerDay walking_heat(KgBody weight, double kilometres, double metres_climbed) {
  const ActivityFigures& f = activity_figures();
  const double joules_per_kg =
      f.walking * kilometres * metres_per_kilometre + f.climbing * metres_climbed;
  return McalPerDay(joules_per_kg * weight.value() / joules_per_megajoule / f.megajoules);
}

ColdByRule cold_by_rule(Coat coat, Celsius effective) {
  const double critical = critical_fahrenheit(coat);
  const double below = std::max(0.0, critical - in_fahrenheit(effective));
  return {from_fahrenheit(critical), effective, below * cold_rule_figures().percent_per_f / 100};
}

ColdByHeatBalance cold_by_heat_balance(KgBody weight, const Exposure& exposure, McalPerDay eaten,
                                       McalPerDay retained, double km) {
  const HeatBalanceFigures& f = heat_balance_figures();
  ColdByHeatBalance cold;
  cold.area_m2 = f.area * std::pow(weight.value(), f.area_power);
  cold.heat = (eaten - retained).value() / cold.area_m2;
  cold.tissue = tissue_insulation(exposure.age, exposure.condition);
  cold.coat = coat_insulation(exposure);
  const double insulation = cold.tissue + cold.coat;
  cold.critical = Celsius(f.body - f.heat_share * insulation * cold.heat);
  const Celsius below = std::max(Celsius(0), cold.critical - exposure.air);
  cold.me = McalPerDay(cold.area_m2 * below.value() / insulation);
  cold.nem = cold.me * km;
  return cold;
}

McalPerDay heat_stress(McalPerDay maintenance, Panting panting) {
  switch (panting) {
    case Panting::none:
      return McalPerDay(0);
    case Panting::shallow:
      return maintenance * (panting_figures().shallow - 1);
    case Panting::open_mouth:
      break;
  }
  return maintenance * (panting_figures().open_mouth - 1);
}

}  // namespace pluckbook
