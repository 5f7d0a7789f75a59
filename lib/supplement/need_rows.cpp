// need_rows.cpp - what the cow and her rumen need, as rows.
#include <algorithm>

#include "cow/intake.h"
#include "published/energetics.h"
#include "published/rules.h"
#include "published/rumen.h"
#include "supplement/model_draft.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

/// A need in kg a day. A feed without the figure is counted as having none.
void add_need(Draft& draft, const std::string& id, const std::string& nutrient,
              const std::string& name, Share forage, KgPerDay need) {
  note_missing(draft, nutrient, name, "counted as none");
  add_row(draft, {id, name + " the cow needs", "kg/day", LimitKind::need, "lib/cow need"},
          density(draft, forage.value(), [&](const auto& o) { return o.figure_or(nutrient, 0); }),
          Side::at_least, need.value());
}

/// Protein from urea counts as far as it is usable (npn_usable), the rest of the protein in full.
double natural_protein(const FeedOffer& offer) {
  return offer.figure_or("cp", 0) - offer.figure_or("npn_cpe", 0);
}

void add_crude_protein(Draft& draft) {
  const GrazingDay& day = draft.day;
  add_row(
      draft,
      {"crude_protein", "crude protein the cow needs", "kg/day", LimitKind::need, "lib/cow need"},
      density(draft, day.crude_protein.value(), natural_protein, 1), Side::at_least,
      day.need_crude_protein.value());
  const double floor = day.rumen_floor.value();
  if (floor <= 0) return;
  add_row(draft,
          {"rumen_protein",
           "crude protein the rumen needs (" + figure(in_percent(day.rumen_floor)) +
               " % of all she eats)",
           "kg/day", LimitKind::need, intake_rules().source},
          density(
              draft, day.crude_protein.value() - floor,
              [&](const auto& o) { return natural_protein(o) - floor; }, 1),
          Side::at_least, 0);
}

/// Forage on which the rumen has energy to spare beyond its degradable protein can use urea for the
/// difference. Source: microbial protein 0.13 of TDN, NRC 2000 (published/energetics.h).
void add_counted_urea(Draft& draft) {
  const GrazingDay& day = draft.day;
  add_row(draft, {"npn_counted", "", "kg/day", LimitKind::definition, ""},
          density(
              draft, 0, [](const auto& o) { return -o.figure_or("npn_cpe", 0); }, 1),
          Side::at_most, 0);
  const double degradable = day.crude_protein.value() - undegraded_of_forage(day);
  const double room = std::max(0.0, microbial_figures().share * day.tdn.value() - degradable);
  add_row(draft,
          {"npn_usable", "protein from urea that the rumen can use on this forage", "kg/day",
           LimitKind::capacity, "microbial protein 0.13 of TDN, NRC 2000 p. 17"},
          density(
              draft, -room, [](const auto&) { return 0.0; }, 1),
          Side::at_most, 0);
}

/// RDP wanted = microbial protein made of the TDN; MP = 0.64 of that + 0.80 of what escapes.
void add_metabolizable(Draft& draft) {
  const GrazingDay& day = draft.day;
  const ProteinSupplyFigures& supply = protein_supply_figures();
  if (!day.undegraded)
    draft.model.unchecked.push_back(
        "metabolizable protein: the forage's undegraded protein is a "
        "class value (" +
        figure(100 * undegraded_of_forage(day)) + " % of dry matter)");
  note_missing(draft, "rup", "metabolizable protein", "counted as bringing none");
  const auto degraded = [](const FeedOffer& o) {
    return o.has("rup") ? o.figure_or("cp", 0) * (1 - o.figure_or("rup", 0)) : 0.0;
  };
  const auto escaped = [](const FeedOffer& o) {
    return o.figure_or("cp", 0) * o.figure_or("rup", 0);
  };
  const double microbial = microbial_figures().share;
  const double undegraded = undegraded_of_forage(day);
  add_row(draft,
          {"rdp", "degradable protein the rumen wants (13 % of the TDN eaten)", "kg/day",
           LimitKind::need, "NRC 2000 p. 17; recycled nitrogen left out"},
          density(draft, day.crude_protein.value() - undegraded - microbial * day.tdn.value(),
                  [&](const auto& o) { return degraded(o) - microbial * o.figure_or("tdn", 0); }),
          Side::at_least, 0);
  const double of_tdn = supply.microbial_mp * microbial;
  add_row(draft,
          {"mp", "metabolizable protein the cow needs", "kg/day", LimitKind::need,
           "table CP x 0.67, University of Arkansas MP391; supply by NRC 2000 chapter 2"},
          density(draft, of_tdn * day.tdn.value() + supply.rup_1996 * undegraded,
                  [&](const auto& o) {
                    return of_tdn * o.figure_or("tdn", 0) + supply.rup_1996 * escaped(o);
                  }),
          Side::at_least, protein_figures().mp_of_cp * day.need_crude_protein.value());
}

void add_protein(Draft& draft) {
  note_missing(draft, "cp", "crude protein", "counted as none");
  if (draft.day.protein == ProteinMeasure::metabolizable) return add_metabolizable(draft);
  add_crude_protein(draft);
  if (std::any_of(draft.offers.begin(), draft.offers.end(), carries_npn)) add_counted_urea(draft);
}

/// A feed's own NEm where it is published, else by the published chain from its TDN.
double nem_in(const FeedOffer& offer) {
  if (offer.has("nem")) return offer.figure_or("nem", 0);
  return offer.has("tdn") ? nem_of(Share(offer.figure_or("tdn", 0))).value() : 0;
}

void add_energy(Draft& draft) {
  const GrazingDay& day = draft.day;
  if (day.energy == EnergyMeasure::tdn)
    return add_need(draft, "tdn", "tdn", "TDN", day.tdn, day.need_tdn);
  note_missing(draft, "tdn", "NEm", "counted as none");
  add_row(draft, {"nem", "NEm the cow needs", "Mcal/day", LimitKind::need, "lib/cow need"},
          density(draft, nem_of(day.tdn).value(), nem_in), Side::at_least, day.need_nem.value());
}

void add_mineral_need(Draft& draft, const std::string& id, const std::string& nutrient,
                      const std::optional<Share>& forage, const std::optional<KgPerDay>& need) {
  if (!need) return;
  if (forage)
    add_need(draft, id, nutrient, id, *forage, *need);
  else
    draft.model.unchecked.push_back(id + ": the forage has no figure");
}

}  // namespace

double undegraded_of_forage(const GrazingDay& day) {
  const double own = day.undegraded ? day.undegraded->value() : rumen_figures().forage_undegraded;
  return std::min(own, day.crude_protein.value());
}

void add_needs(Draft& draft) {
  const GrazingDay& day = draft.day;
  add_protein(draft);
  add_energy(draft);
  add_mineral_need(draft, "calcium", "ca", day.calcium, day.need_calcium);
  add_mineral_need(draft, "phosphorus", "p", day.phosphorus, day.need_phosphorus);
}

}  // namespace pluckbook
