// surroundings.h - what land and weather add to an animal's need. The requirement rows hold none
// of it, and nothing here is added unless asked for. Coefficients, sources and standing:
// reference/surroundings.yaml.
#pragma once

#include "base/units.h"
#include "book/records.h"
#include "cow/energetics.h"

namespace pluckbook {

// ---- walking and grazing
// -------------------------------------------------------------------------

/// The pasture as legs and mouth meet it.
struct Grazing {
  KgDmPerDay eaten;  // from the pasture
  Share tdn;
  Terrain terrain = Terrain::level;
  double standing_t_ha = 2;  // tonnes of dry matter a hectare
};

/// Net energy of activity: what the equation says, and no more than the cap of maintenance.
struct Activity {
  McalPerDay by_equation, cap;
  bool capped() const { return by_equation > cap; }
  McalPerDay counted() const { return capped() ? cap : by_equation; }
};
/// Source: NRC 2000 chapter 10 after CSIRO 1990, recalled, not tested against print; it stands at
/// 40 to 60 % of maintenance, so it is held to 20 % (assumed; read factors are 1.08 to 1.30).
Activity activity_of(KgBody weight, const Grazing& grazing, McalPerDay maintenance);
/// The plain setting: a share of maintenance, 1.10 where nothing better is known (assumed).
McalPerDay usual_activity(McalPerDay maintenance);
/// Heat of walking so far and climbing so high. Source: Ribeiro et al. 1977, read.
McalPerDay walking_heat(KgBody weight, double kilometres, double metres_climbed);

// ---- cold: the rule of thumb and the heat balance are two methods and never meet ---------------

enum class Coat { wet_or_summer, dry_fall, dry_winter, dry_heavy_winter };

/// Cold by the printed rule: 1 % more energy for each F under the coat's critical temperature.
/// Protein need is unchanged. Source: Kansas State 2024 and North Dakota State, read.
struct ColdByRule {
  Celsius critical, effective;  // effective: with the wind's chill
  double extra_share = 0;       // 0.14 = 14 % more energy
};
ColdByRule cold_by_rule(Coat coat, Celsius effective);

enum class CoatState { dry, mud_below, wet, covered };
enum class Hide { thin, average, thick };
enum class Age { newborn, one_month, yearling, adult };

/// An animal's coat and the air about it.
struct Exposure {
  Age age = Age::adult;
  double condition = 5;
  double hair_cm = 2.5, wind_km_h = 10;
  CoatState coat = CoatState::dry;
  Hide hide = Hide::average;
  Celsius air;
};

/// Cold by the balance of heat: insulation, the critical temperature, and the energy to stay warm.
struct ColdByHeatBalance {
  double area_m2 = 0;
  double heat = 0;              // Mcal per m^2 and day the body gives off
  double tissue = 0, coat = 0;  // insulation, C m^2 day/Mcal
  Celsius critical;
  McalPerDay me;   // metabolizable energy burnt to stay warm
  McalPerDay nem;  // the same as net energy for maintenance
};
/// `eaten` is metabolizable energy, `retained` what leaves as gain, milk and conceptus; `km` is NEm
/// over ME of the diet. Source: NRC 2000 chapter 10, recalled, not tested against print.
ColdByHeatBalance cold_by_heat_balance(KgBody weight, const Exposure& exposure, McalPerDay eaten,
                                       McalPerDay retained, double km);

// ---- heat
// ----------------------------------------------------------------------------------------

enum class Panting { none, shallow, open_mouth };
/// What panting adds to maintenance: 7 or 18 %. Source: NRC 2000 chapter 10, recalled.
McalPerDay heat_stress(McalPerDay maintenance, Panting panting);

}  // namespace pluckbook
