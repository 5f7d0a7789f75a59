// protein.h - metabolizable protein: what the animal needs, what the rumen makes of a diet, and
// the crude protein of the tables. Coefficients, sources and standing: reference/protein.yaml.
#pragma once

#include <optional>

#include "cow/energetics.h"

namespace pluckbook {

/// Metabolizable protein a day, by use.
struct ProteinNeed {
  KgPerDay maintenance, milk, pregnancy, growth;
  KgPerDay metabolizable() const { return maintenance + milk + pregnancy + growth; }
  /// Crude protein as the requirement tables reckon it: metabolizable / 0.67.
  /// Source: University of Arkansas MP391, read.
  KgPerDay crude() const;
};
/// Source: NRC 2000, recalled; together they reproduce the tables' crude protein to 0.02 points.
ProteinNeed protein_need(KgBody weight, KgPerDay milk, const Pregnancy& pregnancy,
                         const Growth& growth);

/// Protein the rumen's microbes make of the TDN eaten, by both published equations. Degradable
/// protein wanted is as much: efficiency 1, recycling left out (NRC 2000, recalled).
struct MicrobialProtein {
  KgPerDay by_share;  // NRC 2000: 0.13 x TDN x the fibre correction; the default
  double fibre_correction = 1;
  KgPerDay by_line_2016;  // NASEM 2016, shown beside: it makes low forage diets look short
  KgPerDay degradable_wanted() const { return by_share; }
};
/// The diet as the rumen meets it. Unknown effective fibre leaves the share whole: a forage diet
/// has more than 20 %.
struct RumenDiet {
  KgDmPerDay intake;
  Share tdn;
  std::optional<Share> effective_fibre;  // eNDF
  Share fat;
};
/// Source: NRC 2000 p. 17, read; NASEM 2016, recalled.
MicrobialProtein microbial_protein(const RumenDiet& diet);

/// Metabolizable protein that a diet gives: from microbes and from protein that escapes the rumen.
struct ProteinSupply {
  KgPerDay degradable, undegradable;  // crude protein eaten, parted
  MicrobialProtein microbial;
  KgPerDay made;  // microbial protein that the degradable protein suffices for
  KgPerDay from_microbes, from_escape;
  KgPerDay metabolizable() const { return from_microbes + from_escape; }
};
enum class EscapeDigestion { nrc_2000, forage_2016, concentrate_2016 };
/// Requires: undegradable is a share of the crude protein, 0 to 1.
/// Source: NRC 2000 chapter 2 and NASEM 2016, recalled.
ProteinSupply protein_supply(const RumenDiet& diet, Share crude_protein, double undegradable,
                             EscapeDigestion digestion = EscapeDigestion::nrc_2000);

}  // namespace pluckbook
