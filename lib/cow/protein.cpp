#include "cow/protein.h"

#include <algorithm>

namespace pluckbook {

namespace {

/// Share of metabolizable protein that becomes gain: it falls with weight, then stays.
double growth_efficiency(KgBody weight) {
  const GrowthFigures& f = growth_figures();
  if (weight.value() > f.efficiency_until) return f.efficiency_above;
  return f.efficiency_at_0 - f.efficiency_fall * weight.value();
}

KgPerDay by_line_2016(const RumenDiet& diet) {
  const Microbial2016Figures& f = microbial_2016_figures();
  const double tdn = (diet.intake * diet.tdn).value() * 1000;
  if (in_percent(diet.fat) < f.fat_from)
    return KgPerDay((f.lean_slope * tdn + f.lean_constant) / 1000);
  const double fat = (diet.intake * diet.fat).value() * 1000;
  return KgPerDay((f.fat_slope * (tdn - f.fat_tdn * fat) + f.fat_constant) / 1000);
}

double escape_digested(EscapeDigestion digestion) {
  const ProteinSupplyFigures& f = protein_supply_figures();
  switch (digestion) {
    case EscapeDigestion::nrc_2000:
      return f.rup_1996;
    case EscapeDigestion::forage_2016:
      return f.rup_forage_2016;
    case EscapeDigestion::concentrate_2016:
      break;
  }
  return f.rup_concentrate_2016;
}

}  // namespace

KgPerDay ProteinNeed::crude() const {
  return metabolizable() / protein_figures().mp_of_cp;
}

ProteinNeed protein_need(KgBody weight, KgPerDay milk, const Pregnancy& pregnancy,
                         const Growth& growth) {
  const ProteinFigures& f = protein_figures();
  ProteinNeed need;
  need.maintenance = KgPerDay(f.maintenance * metabolic_size(weight) / 1000);
  need.milk = milk * (milk_figures().protein_percent / 100 / f.milk_efficiency);
  need.pregnancy = pregnancy.net_protein / f.pregnancy_efficiency;
  need.growth = growth.net_protein / growth_efficiency(weight);
  return need;
}

MicrobialProtein microbial_protein(const RumenDiet& diet) {
  const MicrobialFigures& f = microbial_figures();
  MicrobialProtein protein;
  if (diet.effective_fibre) {
    const double missing = std::max(0.0, f.fibre_least - in_percent(*diet.effective_fibre));
    protein.fibre_correction = 1 - f.fibre_step / 100 * missing;
  }
  protein.by_share = diet.intake * diet.tdn * (f.share * protein.fibre_correction);
  protein.by_line_2016 = by_line_2016(diet);
  return protein;
}

ProteinSupply protein_supply(const RumenDiet& diet, Share crude_protein, double undegradable,
                             EscapeDigestion digestion) {
  ProteinSupply supply;
  const KgPerDay eaten = diet.intake * crude_protein;
  supply.undegradable = eaten * undegradable;
  supply.degradable = eaten - supply.undegradable;
  supply.microbial = microbial_protein(diet);
  supply.made = std::min(supply.microbial.by_share, supply.degradable);
  supply.from_microbes = supply.made * protein_supply_figures().microbial_mp;
  supply.from_escape = supply.undegradable * escape_digested(digestion);
  return supply;
}

}  // namespace pluckbook
