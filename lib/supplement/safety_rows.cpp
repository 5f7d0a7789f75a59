// safety_rows.cpp - the published ceilings on the whole diet, as rows (reference/safe_use.yaml).
#include <algorithm>
#include <array>

#include "base/text.h"
#include "published/rules.h"
#include "published/rumen.h"
#include "supplement/model_draft.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

// Where the forage's own figure is missing. Source: ordinary grass forage, recalled from NRC 2000
// tables; assumed here on the cautious side.
constexpr double usual_forage_fat = 0.03;
constexpr double usual_forage_sulfur = 0.20 / 100;

// Where a feed does not say how much of its protein is degraded in the rumen: the usual share of
// mixed feeds (reference/feeds.yaml takes rup 30 for cubes by class: assumed).
constexpr double usual_degraded = 0.70;

// Forage under 52 % TDN is the low class of the intake guidance (Hibberd and Thrift 1992: read).
constexpr double poor_forage_tdn = 0.52;

double urea_in(const FeedOffer& offer) {
  return offer.figure_or("npn_cpe", 0) / rumen_figures().urea_cp;
}

bool is_poor(const GrazingDay& day) {
  return day.tdn.value() < poor_forage_tdn;
}

/// A nutrient at most so much of all she eats. A feed without the figure neither helps nor hurts.
struct ShareCeiling {
  std::string id, nutrient, words;
  double most = 0;           // fraction of dry matter
  std::optional<Share> own;  // of the forage
  double usual = 0;          // of forage without a figure
  std::string usual_words;   // "3 %"
  std::string source, standing;
  double besides = 0;  // kg a day from elsewhere
};

void add_share_ceiling(Draft& draft, const ShareCeiling& ceiling) {
  if (!ceiling.own)
    draft.model.unchecked.push_back(ceiling.words + ": the forage has no figure, " +
                                    ceiling.usual_words + " assumed");
  note_missing(draft, ceiling.nutrient, ceiling.words, "left out");
  const double most = ceiling.most;
  const double forage = ceiling.own ? ceiling.own->value() : ceiling.usual;
  add_row(
      draft,
      {ceiling.id, ceiling.words, "kg/day", LimitKind::safety, ceiling.source, ceiling.standing},
      density(draft, forage - most,
              [&](const auto& o) { return o.figure_or(ceiling.nutrient, most) - most; }),
      Side::at_most, -ceiling.besides);
}

std::string at_most(const std::string& name, double most, const std::string& unit) {
  return name + " at most " + figure(most) + " " + unit + " of all she eats";
}

void add_fat(Draft& draft) {
  const SafeUse& rule = safe_use("fat");
  add_share_ceiling(draft, {"fat", "fat", at_most("fat", rule.value, "%"), rule.value / 100,
                            draft.day.fat, usual_forage_fat, "3 %", rule.source, rule.status});
}

void add_sulfur(Draft& draft) {
  const SafeUse& rule = safe_use("sulfur");
  const KgPerDay water = water_sulfur(draft.day);
  std::string words = at_most("sulfur", rule.value, "%");
  if (water.value() > 0) words += ", the water's counted";
  add_share_ceiling(draft, {"sulfur", "s", words, rule.value / 100, draft.day.sulfur,
                            usual_forage_sulfur, "0.2 %", rule.source, rule.status, water.value()});
}

/// Minerals that only some tags print. Usual figures of grass: assumed, about its requirement
/// table.
struct TaggedMineral {
  const char *rule, *nutrient, *name, *unit;
  double per_unit;  // fraction of dry matter
  double usual;     // of grass, in the unit
};
constexpr std::array tagged_minerals{
    TaggedMineral{"potassium", "k", "potassium", "%", 0.01, 1.2},
    TaggedMineral{"magnesium", "mg", "magnesium", "%", 0.01, 0.15},
    TaggedMineral{"copper_ppm", "cu", "copper", "ppm", 1e-6, 8},
    TaggedMineral{"selenium_ppm", "se", "selenium", "ppm", 1e-6, 0.2},
};

void add_tagged_minerals(Draft& draft) {
  for (const TaggedMineral& mineral : tagged_minerals) {
    const bool said = std::any_of(draft.offers.begin(), draft.offers.end(),
                                  [&](const auto& o) { return o.has(mineral.nutrient); });
    if (!said) continue;
    const SafeUse& rule = safe_use(mineral.rule);
    add_share_ceiling(
        draft, {mineral.nutrient, mineral.nutrient, at_most(mineral.name, rule.value, mineral.unit),
                rule.value * mineral.per_unit, std::nullopt, mineral.usual * mineral.per_unit,
                figure(mineral.usual) + " " + mineral.unit, rule.source, rule.status});
  }
}

/// Calcium at least or at most so many times the phosphorus.
void add_ratio(Draft& draft, const std::string& id, const std::string& rule_id, Side side) {
  const SafeUse& rule = safe_use(rule_id);
  const std::string words = std::string("calcium at ") +
                            (side == Side::at_least ? "least " : "most ") + figure(rule.value) +
                            " times phosphorus";
  const auto& [ca, p] = std::pair(draft.day.calcium, draft.day.phosphorus);
  if (!ca || !p) {
    draft.model.unchecked.push_back(words + ": the forage has no figure");
    return;
  }
  note_missing(draft, "ca", words, "left out");
  add_row(draft, {id, words, "kg/day", LimitKind::safety, rule.source, rule.status},
          density(draft, ca->value() - rule.value * p->value(),
                  [&](const auto& o) {
                    if (!o.has("ca") || !o.has("p")) return 0.0;
                    return o.figure_or("ca", 0) - rule.value * o.figure_or("p", 0);
                  }),
          side, 0);
}

/// Non-protein nitrogen counted as urea: a share of all she eats, and an amount on poor forage.
void add_urea(Draft& draft) {
  const SafeUse& share = safe_use("urea_percent_dm");
  const double most = share.value / 100;
  add_row(draft,
          {"urea_share", at_most("urea", share.value, "%"), "kg/day", LimitKind::safety,
           share.source, share.status},
          density(draft, -most, [&](const auto& o) { return urea_in(o) - most; }), Side::at_most,
          0);
  if (!is_poor(draft.day)) return;
  const SafeUse& amount = safe_use("urea_lb_day");
  add_row(draft,
          {"urea_amount", "urea at most " + in_both_units(amount.value) + " a day on poor forage",
           "kg/day", LimitKind::safety, amount.source, amount.status},
          density(draft, 0, urea_in), Side::at_most, amount.value * kg_per_lb);
}

/// On poor forage, a share of the degradable protein that the supplement brings.
void add_npn_of_degradable(Draft& draft) {
  if (!is_poor(draft.day)) return;
  const SafeUse& rule = safe_use("npn_share_of_supplement_rdp");
  const std::string words = "protein from urea at most " + figure(100 * rule.value) +
                            " % of the supplement's degradable protein";
  note_missing(draft, "rup", words, figure(100 * usual_degraded) + " % degradable assumed");
  add_row(draft, {"npn_of_rdp", words, "kg/day", LimitKind::safety, rule.source, rule.status},
          density(draft, 0,
                  [&](const auto& o) {
                    const double degraded =
                        o.figure_or("cp", 0) * (1 - o.figure_or("rup", 1 - usual_degraded));
                    return o.figure_or("npn_cpe", 0) - rule.value * degraded;
                  }),
          Side::at_most, 0);
}

void add_npn(Draft& draft) {
  for (const FeedOffer& offer : draft.offers)
    if (!offer.has("npn_cpe") && offer.published_id.empty())
      draft.model.unchecked.push_back("urea: " + offer.name +
                                      " has no figure; taken as none: read its tag");
  if (std::none_of(draft.offers.begin(), draft.offers.end(), carries_npn)) return;
  add_urea(draft);
  add_npn_of_degradable(draft);
  const SafeUse& rule = safe_use("npn_share_of_cp");
  const double most = rule.value;
  add_row(draft,
          {"npn", "protein from urea at most a third of all crude protein", "kg/day",
           LimitKind::safety, rule.source, rule.status},
          density(draft, -most * draft.day.crude_protein.value(),
                  [&](const auto& o) {
                    return o.figure_or("npn_cpe", 0) - most * o.figure_or("cp", 0);
                  }),
          Side::at_most, 0);
}

}  // namespace

KgPerDay water_sulfur(const GrazingDay& day) {
  const RumenFigures& figures = rumen_figures();
  const double litres = figures.water_of_weight * day.weight.value();
  return KgPerDay(litres * day.water_sulfate_ppm.value_or(0) * figures.sulfur_of_sulfate / 1e6);
}

void add_safe_use(Draft& draft) {
  add_ratio(draft, "calcium_to_phosphorus", "ca_p_low", Side::at_least);
  add_ratio(draft, "calcium_over_phosphorus", "ca_p_high", Side::at_most);
  add_npn(draft);
  add_fat(draft);
  add_sulfur(draft);
  add_tagged_minerals(draft);
}

}  // namespace pluckbook
