// mix_protein.h - degradable and metabolizable protein of a day, with what is fed. Told beside
// the mix even where crude protein is what is bought by.
#pragma once

#include "supplement/least_cost.h"

namespace pluckbook {

/// Source: NRC 2000: microbes make 0.13 of the TDN eaten where they find as much degradable
/// protein; MP is 0.64 of that and 0.80 of what escapes; the cow needs 0.67 of her table CP as MP.
struct MixProtein {
  KgPerDay degradable, degradable_wanted;        // RDP
  KgPerDay metabolizable, metabolizable_needed;  // MP
  bool forage_by_class = false;                  // no laboratory figure for the forage
  bool feeds_known = true;                       // every feed fed has its share of RUP
};

MixProtein mix_protein(const GrazingDay& day, const std::vector<FeedOffer>& offers, const Mix& mix);

}  // namespace pluckbook
