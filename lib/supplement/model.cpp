// model.cpp - needs and safe-use limits as rows. Every row has one shape: something in a kg of
// forage, something in a kg of each feed, and a side. With F = F0 - sum s_j x_j - pushed out:
//   level = f F + sum g_j x_j = f F0 + sum (g_j - s_j f) x_j - f (pushed out)
#include <algorithm>
#include <cmath>
#include <limits>

#include "base/text.h"
#include "published/rules.h"
#include "supplement/least_cost.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

constexpr double no_limit = std::numeric_limits<double>::infinity();

// Where the forage's own figure is missing. Source: ordinary grass forage, recalled from NRC 2000
// tables; assumed here on the cautious side.
constexpr double usual_forage_fat = 0.03;
constexpr double usual_forage_sulfur = 0.20 / 100;

// Most dry matter of forage and feed together, percent of body weight: the high class of forage of
// the intake guidance (published/rules.h, both printings): milking 2.7, dry 2.5.
constexpr double full_milking = 0.027, full_dry = 0.025;

// Whole cottonseed. Source: weaned calves 0.33 % of body weight, trade page on gossypol 2022
// (read); bulls at most 10 % of diet, young bulls none (extension consensus, recalled).
constexpr double cottonseed_young = 0.0033, cottonseed_bull_dm = 0.10;

// Urea of 45 % N is 281 % crude protein (Nebraska, producer question 8 Oct 2010: read). Forage
// under 52 % TDN is the low class of the intake guidance (Hibberd and Thrift 1992: read).
constexpr double urea_cp = 2.81, poor_forage_tdn = 0.52;

// Up to so much protein feed a day, percent of body weight, protein-short forage is not displaced;
// beyond it, as usual. Source: this project's rule from the thresholds of Moore et al. 1999.
constexpr double free_protein_feed = 0.003;

/// A percent or a ratio in words, without what doubles add to it: 7, not 7.000000000000001.
std::string figure(double value) {
  return shortest(std::round(value * 1e4) / 1e4);
}

enum class Side { at_least, at_most };

struct Draft {
  const GrazingDay& day;
  const std::vector<FeedOffer>& offers;
  int feedings = 7;
  SupplementModel model;
  std::vector<Eigen::VectorXd> rows;
  std::vector<double> lower, upper;

  int columns() const { return static_cast<int>(offers.size()) + 1; }
  double forage() const { return day.forage_intake.value(); }
};

/// What one kilogram holds of the thing a row counts.
struct Density {
  double forage = 0;
  Eigen::VectorXd feeds;
};

template <class Of>
Density density(const Draft& draft, double forage, Of of) {
  Density d{forage, Eigen::VectorXd(draft.columns() - 1)};
  for (std::size_t j = 0; j < draft.offers.size(); ++j)
    d.feeds[static_cast<int>(j)] = of(draft.offers[j]);
  return d;
}

void add_row(Draft& draft, Limit limit, const Density& d, Side side, double bound) {
  Eigen::VectorXd row(draft.columns());
  for (int j = 0; j + 1 < draft.columns(); ++j)
    row[j] = d.feeds[j] - draft.model.displacement[static_cast<std::size_t>(j)] * d.forage;
  const double pushed_out = -d.forage;
  const bool at_least = side == Side::at_least;
  row[draft.columns() - 1] = limit.kind == LimitKind::capacity ? pushed_out
                             : at_least                        ? std::min(pushed_out, 0.0)
                                                               : std::max(pushed_out, 0.0);
  const double alone = d.forage * draft.forage();
  double rest = bound - alone;
  const bool broken = at_least ? rest > 0 : rest < 0;
  if (limit.kind != LimitKind::need && broken) {
    rest = 0;
    if (limit.kind == LimitKind::safety)
      draft.model.unchecked.push_back(limit.words +
                                      ": the forage alone is past it; feed may not make it worse");
  }
  draft.rows.push_back(std::move(row));
  draft.lower.push_back(at_least ? rest : -no_limit);
  draft.upper.push_back(at_least ? no_limit : rest);
  draft.model.forage_alone.push_back(alone);
  draft.model.limits.push_back(std::move(limit));
}

void note_missing(Draft& draft, const std::string& nutrient, const std::string& limit,
                  const std::string& taken_as) {
  for (const FeedOffer& offer : draft.offers)
    if (!offer.has(nutrient))
      draft.model.unchecked.push_back(limit + ": " + offer.name + " has no figure; " + taken_as);
}

/// A need for a nutrient in kg a day. A feed without the figure is counted as having none.
void add_need(Draft& draft, const std::string& id, const std::string& nutrient,
              const std::string& name, Share forage, KgPerDay need) {
  note_missing(draft, nutrient, name, "counted as none");
  add_row(draft, {id, name + " the cow needs", "kg/day", LimitKind::need, "lib/cow need"},
          density(draft, forage.value(), [&](const auto& o) { return o.figure_or(nutrient, 0); }),
          Side::at_least, need.value());
}

void add_mineral_need(Draft& draft, const std::string& id, const std::string& nutrient,
                      const std::optional<Share>& forage, const std::optional<KgPerDay>& need) {
  if (!need) return;
  if (forage)
    add_need(draft, id, nutrient, id, *forage, *need);
  else
    draft.model.unchecked.push_back(id + ": the forage has no figure");
}

void add_needs(Draft& draft) {
  const GrazingDay& day = draft.day;
  add_need(draft, "crude_protein", "cp", "crude protein", day.crude_protein,
           day.need_crude_protein);
  add_need(draft, "tdn", "tdn", "TDN", day.tdn, day.need_tdn);
  if (const double floor = day.rumen_floor.value(); floor > 0)
    add_row(draft,
            {"rumen_protein",
             "crude protein the rumen needs (" + figure(in_percent(day.rumen_floor)) +
                 " % of all she eats)",
             "kg/day", LimitKind::need, intake_rules().source},
            density(draft, day.crude_protein.value() - floor,
                    [&](const auto& o) { return o.figure_or("cp", 0) - floor; }),
            Side::at_least, 0);
  add_mineral_need(draft, "calcium", "ca", day.calcium, day.need_calcium);
  add_mineral_need(draft, "phosphorus", "p", day.phosphorus, day.need_phosphorus);
}

void add_calcium_to_phosphorus(Draft& draft) {
  const SafeUse& rule = safe_use("ca_p_low");
  const std::string words = "calcium at least " + figure(rule.value) + " times phosphorus";
  const auto& [ca, p] = std::pair(draft.day.calcium, draft.day.phosphorus);
  if (!ca || !p) {
    draft.model.unchecked.push_back(words + ": the forage has no figure");
    return;
  }
  note_missing(draft, "ca", words, "left out");
  add_row(draft, {"calcium_to_phosphorus", words, "kg/day", LimitKind::safety, rule.source},
          density(draft, ca->value() - rule.value * p->value(),
                  [&](const auto& o) {
                    if (!o.has("ca") || !o.has("p")) return 0.0;
                    return o.figure_or("ca", 0) - rule.value * o.figure_or("p", 0);
                  }),
          Side::at_least, 0);
}

/// A nutrient at most so much of all she eats. A feed without the figure neither helps nor hurts.
void add_share_ceiling(Draft& draft, const std::string& id, const std::string& nutrient,
                       const std::optional<Share>& forage, double usual) {
  const SafeUse& rule = safe_use(id);
  const double most = rule.value / 100;
  const std::string words = id + " at most " + figure(rule.value) + " % of all she eats";
  if (!forage)
    draft.model.unchecked.push_back(words + ": the forage has no figure; " + figure(100 * usual) +
                                    " % assumed");
  note_missing(draft, nutrient, words, "left out");
  add_row(draft, {id, words, "kg/day", LimitKind::safety, rule.source},
          density(draft, (forage ? forage->value() : usual) - most,
                  [&](const auto& o) { return o.figure_or(nutrient, most) - most; }),
          Side::at_most, 0);
}

/// Non-protein nitrogen counted as urea: a share of all she eats, and an amount on poor forage.
void add_urea(Draft& draft) {
  const auto urea = [](const FeedOffer& o) { return o.figure_or("npn_cpe", 0) / urea_cp; };
  const SafeUse& share = safe_use("urea_percent_dm");
  const double most = share.value / 100;
  add_row(draft,
          {"urea_share", "urea at most " + figure(share.value) + " % of all she eats", "kg/day",
           LimitKind::safety, share.source},
          density(draft, -most, [&](const auto& o) { return urea(o) - most; }), Side::at_most, 0);
  if (draft.day.tdn.value() >= poor_forage_tdn) return;
  const SafeUse& amount = safe_use("urea_lb_day");
  add_row(draft,
          {"urea_amount", "the most urea a day on poor forage", "kg/day", LimitKind::safety,
           amount.source},
          density(draft, 0, urea), Side::at_most, amount.value * kg_per_lb);
}

void add_npn(Draft& draft) {
  for (const FeedOffer& offer : draft.offers)
    if (!offer.has("npn_cpe") && published_id(offer).empty())
      draft.model.unchecked.push_back("urea: " + offer.name +
                                      " has no figure; taken as none: read its tag");
  if (std::none_of(draft.offers.begin(), draft.offers.end(), carries_npn)) return;
  add_urea(draft);
  const SafeUse& rule = safe_use("npn_share_of_cp");
  const double most = rule.value;
  add_row(draft,
          {"npn", "protein from urea at most a third of all crude protein", "kg/day",
           LimitKind::safety, rule.source},
          density(draft, -most * draft.day.crude_protein.value(),
                  [&](const auto& o) {
                    return o.figure_or("npn_cpe", 0) - most * o.figure_or("cp", 0);
                  }),
          Side::at_most, 0);
}

/// What a group of feeds may weigh; held at each feeding, for the rumen of that day.
template <class In>
void add_group_ceiling(Draft& draft, Limit limit, In in, double most) {
  if (std::none_of(draft.offers.begin(), draft.offers.end(), in)) return;
  add_row(
      draft, std::move(limit),
      density(draft, 0,
              [&](const auto& o) { return in(o) ? days_in_one_feeding(o, draft.feedings) : 0.0; }),
      Side::at_most, most);
}

void add_supplement_rows(Draft& draft) {
  const double weight = draft.day.weight.value();
  const SafeUse& grain = safe_use("grain_percent_bw");
  add_group_ceiling(draft,
                    {"grain", "grain at most " + figure(grain.value) + " % of body weight",
                     "kg/day", LimitKind::safety, grain.source},
                    is_grain, grain.value / 100 * weight);
  const SafeUse& energy = safe_use("supplement_tdn_percent_bw");
  add_row(draft,
          {"supplement_tdn",
           "TDN of the supplement at most " + figure(energy.value) + " % of body weight", "kg/day",
           LimitKind::safety, energy.source},
          density(draft, 0, [](const auto& o) { return o.figure_or("tdn", 0); }), Side::at_most,
          energy.value / 100 * weight);
}

std::string name_of(const Draft& draft, const std::string& feed_or_class) {
  std::string name;
  for (const FeedOffer& offer : draft.offers)
    if (belongs_to(offer, feed_or_class)) name += (name.empty() ? "" : " and ") + offer.name;
  return name;
}

/// Ceilings that go by published feed or by class cannot be put on a feed that is like none.
void note_unlike(Draft& draft) {
  for (const FeedOffer& offer : draft.offers) {
    if (!published_id(offer).empty()) continue;
    draft.model.unchecked.push_back("ceiling by feed: " + offer.name +
                                    " is like no published feed; its label rules");
    if (!offer.has("starch"))
      draft.model.unchecked.push_back("grain: " + offer.name + " has no starch figure");
  }
}

void add_feed_ceiling(Draft& draft, const FeedCeiling& ceiling) {
  const auto in = [&](const FeedOffer& o) { return belongs_to(o, ceiling.feed); };
  if (std::none_of(draft.offers.begin(), draft.offers.end(), in)) return;
  const bool cottonseed = ceiling.feed == "whole_cottonseed";
  const GrazingDay& day = draft.day;
  const std::string id = "most_" + ceiling.feed, name = name_of(draft, ceiling.feed);
  if (ceiling.percent_bw) {
    double most = *ceiling.percent_bw / 100;
    if (cottonseed && day.young) most = day.bull ? 0 : cottonseed_young;
    add_group_ceiling(draft,
                      {id, name + " at most " + figure(100 * most) + " % of body weight", "kg/day",
                       LimitKind::safety, ceiling.source},
                      in, most * day.weight.value());
  }
  if (ceiling.percent_dm) {
    double most = *ceiling.percent_dm / 100;
    if (cottonseed && day.bull) most = std::min(most, cottonseed_bull_dm);
    add_row(draft,
            {id + "_share", name + " at most " + figure(100 * most) + " % of all she eats",
             "kg/day", LimitKind::safety, ceiling.source},
            density(draft, -most, [&](const auto& o) { return (in(o) ? 1.0 : 0.0) - most; }),
            Side::at_most, 0);
  }
}

/// The part of displacement that a first small amount of protein feed is spared.
void add_displacement_beyond(Draft& draft) {
  Density d = density(draft, 1, [](const auto& o) { return usual_displacement(o); });
  double spared = 0;
  for (int j = 0; j + 1 < draft.columns(); ++j)
    spared = std::max(spared, d.feeds[j] - draft.model.displacement[static_cast<std::size_t>(j)]);
  if (spared <= 0) return;
  add_row(draft,
          {"displacement",
           "protein feed over " + figure(100 * free_protein_feed) +
               " % of body weight: forage is left ungrazed",
           "kg/day", LimitKind::capacity, "thresholds of Moore et al. 1999, assumed"},
          d, Side::at_most, draft.forage() + spared * free_protein_feed * draft.day.weight.value());
}

void add_capacity(Draft& draft) {
  const GrazingDay& day = draft.day;
  add_displacement_beyond(draft);
  const double full = (day.milking ? full_milking : full_dry) * day.weight.value();
  add_row(draft,
          {"intake", "all the dry matter she can eat", "kg/day", LimitKind::capacity,
           intake_guidance_lower().citation.source},
          density(draft, 1, [](const auto&) { return 1.0; }), Side::at_most, full);
  add_row(draft, {"forage", "no less forage than none", "kg/day", LimitKind::capacity, ""},
          density(draft, 1, [](const auto&) { return 0.0; }), Side::at_least, 0);
  const double gut = intake_rules().gut_ndf_percent_bw;
  const std::string words = "room in the gut: NDF at most " + figure(gut) + " % of body weight";
  if (!day.ndf) {
    draft.model.unchecked.push_back(words + ": the forage has no figure");
    return;
  }
  // Without a figure a feed is taken to fill as the forage does.
  note_missing(draft, "ndf", words, "taken as the forage's");
  add_row(draft, {"gut", words, "kg/day", LimitKind::capacity, intake_rules().source},
          density(draft, day.ndf->value(),
                  [&](const auto& o) { return o.figure_or("ndf", day.ndf->value()); }),
          Side::at_most, gut / 100 * day.weight.value());
}

void set_columns(Draft& draft) {
  LinearProgram& program = draft.model.program;
  program.cost = program.lower = Eigen::VectorXd::Zero(draft.columns());
  program.upper = Eigen::VectorXd::Constant(draft.columns(), no_limit);
  program.upper[draft.columns() - 1] = draft.forage();
  for (std::size_t j = 0; j < draft.offers.size(); ++j) {
    const FeedOffer& offer = draft.offers[j];
    const int column = static_cast<int>(j);
    std::string words = why_left_out(offer, draft.feedings);
    if (offer.cost) program.cost[column] = offer.cost_per_kg_dm().value();
    if (!words.empty()) {
      program.upper[column] = 0;
    } else if (offer.feed != nullptr && offer.feed->most) {
      program.upper[column] =
          (*offer.feed->most * offer.dm).value() / days_in_one_feeding(offer, draft.feedings);
      words = "the most that the label of " + offer.name + " allows";
    }
    const bool least = offer.feed != nullptr && offer.feed->least;
    draft.model.least_dm.push_back(least ? (*offer.feed->least * offer.dm).value() : 0);
    draft.model.upper_words.push_back(std::move(words));
    draft.model.displacement.push_back(
        displacement_of(offer, draft.day.crude_protein, draft.day.tdn));
  }
}

void set_rows(Draft& draft) {
  LinearProgram& program = draft.model.program;
  const int m = static_cast<int>(draft.rows.size());
  program.a.resize(m, draft.columns());
  for (int i = 0; i < m; ++i)
    program.a.row(i) = draft.rows[static_cast<std::size_t>(i)].transpose();
  program.row_lower = Eigen::Map<Eigen::VectorXd>(draft.lower.data(), m);
  program.row_upper = Eigen::Map<Eigen::VectorXd>(draft.upper.data(), m);
}

}  // namespace

SupplementModel build_model(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                            int feedings_per_week) {
  Draft draft{day, offers, feedings_per_week, {}, {}, {}, {}};
  set_columns(draft);
  add_needs(draft);
  if (!offers.empty()) {
    add_calcium_to_phosphorus(draft);
    add_npn(draft);
    add_share_ceiling(draft, "fat", "fat", day.fat, usual_forage_fat);
    add_share_ceiling(draft, "sulfur", "s", day.sulfur, usual_forage_sulfur);
    add_supplement_rows(draft);
    note_unlike(draft);
    for (const FeedCeiling& ceiling : feed_ceilings()) add_feed_ceiling(draft, ceiling);
  }
  add_capacity(draft);
  set_rows(draft);
  return std::move(draft.model);
}

}  // namespace pluckbook
