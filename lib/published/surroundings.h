// surroundings.h - what land and weather add to a need, as reference/surroundings.yaml holds it.
#pragma once

#include "published/requirements.h"

namespace pluckbook {

/// NEm = [eating I (eating_tdn - TDN) + terrain t / (grass_t_ha + grass)] W / megajoules.
struct ActivityFigures {
  double eating, eating_tdn, terrain, grass, megajoules;
  double level, rolling, hilly;  // terrain factors
  double usual, cap;             // of maintenance, ours
  double walking, climbing;      // J per kg and metre
  Citation citation;
};
const ActivityFigures& activity_figures();

/// Critical temperatures by coat, F as printed, and percent of energy for each F below.
struct ColdRuleFigures {
  double wet_or_summer, dry_fall, dry_winter, dry_heavy_winter;
  double percent_per_f;
  Citation citation;
};
const ColdRuleFigures& cold_rule_figures();

/// Insulation and heat of a body: LCT = body - heat_share (TI + EI) HE.
struct HeatBalanceFigures {
  double area, area_power;
  double body, heat_share;
  double tissue_newborn, tissue_one_month;
  double tissue_yearling, tissue_yearling_score;
  double tissue_adult, tissue_adult_score;
  double coat, coat_wind, coat_hair;
  double dry, mud_below, wet, covered;         // factors of the coat
  double thin_hide, average_hide, thick_hide;  // and of the hide
  Citation citation;
};
const HeatBalanceFigures& heat_balance_figures();

/// Maintenance of panting cattle, factors.
struct PantingFigures {
  double shallow, open_mouth;
  Citation citation;
};
const PantingFigures& panting_figures();

}  // namespace pluckbook
