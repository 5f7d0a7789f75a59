#include "supplement/mix_protein.h"

#include <algorithm>

#include "published/energetics.h"
#include "supplement/model_draft.h"

namespace pluckbook {

MixProtein mix_protein(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                       const Mix& mix) {
  const ProteinSupplyFigures& figures = protein_supply_figures();
  KgPerDay protein = mix.forage_left * day.crude_protein;
  KgPerDay escaping = mix.forage_left * Share(undegraded_of_forage(day));
  KgPerDay tdn = mix.forage_left * day.tdn;
  MixProtein supply;
  for (const MixPart& part : mix.parts) {
    const FeedOffer& offer = offers[part.offer];
    const KgPerDay brought = part.dry_matter * Share(offer.figure_or("cp", 0));
    supply.feeds_known = supply.feeds_known && offer.has("rup");
    protein += brought;
    escaping += brought * offer.figure_or("rup", 0);
    tdn += part.dry_matter * Share(offer.figure_or("tdn", 0));
  }
  supply.forage_by_class = !day.undegraded;
  supply.degradable = protein - escaping;
  supply.degradable_wanted = tdn * microbial_figures().share;
  const KgPerDay microbial = std::min(supply.degradable, supply.degradable_wanted);
  supply.metabolizable = microbial * figures.microbial_mp + escaping * figures.rup_1996;
  supply.metabolizable_needed = day.need_crude_protein * protein_figures().mp_of_cp;
  return supply;
}

}  // namespace pluckbook
