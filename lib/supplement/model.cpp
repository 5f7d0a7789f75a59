// model.cpp - the least-cost model: its columns, its room, and every row put together.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "published/rules.h"
#include "supplement/model_draft.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

// Most dry matter of forage and feed together, percent of body weight: the high class of forage of
// the intake guidance (published/rules.h, both printings): milking 2.7, dry 2.5.
constexpr double full_milking = 0.027, full_dry = 0.025;

// Up to so much protein feed a day, percent of body weight, protein-short forage is not displaced;
// beyond it, as usual. Source: this project's rule from the thresholds of Moore et al. 1999.
constexpr double free_protein_feed = 0.003;

/// The part of displacement that a first small amount of protein feed is spared.
void add_displacement_beyond(Draft& draft) {
  if (draft.forage() <= 0) return;
  Density d =
      density(draft, 1, [&](const auto& o) { return usual_displacement(o, draft.day.displaced); });
  double spared = 0;
  for (int j = 0; j < draft.feeds(); ++j)
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
  program.upper[draft.pushed_out_column()] = draft.forage();
  const bool urea = std::any_of(draft.offers.begin(), draft.offers.end(), carries_npn);
  if (!urea) program.upper[draft.counted_column()] = 0;
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
    draft.model.displacement.push_back(displacement_on(offer, draft.day));
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

void add_row(Draft& draft, Limit limit, const Density& d, Side side, double bound) {
  Eigen::VectorXd row(draft.columns());
  for (int j = 0; j < draft.feeds(); ++j)
    row[j] = d.feeds[j] - draft.model.displacement[static_cast<std::size_t>(j)] * d.forage;
  row[draft.counted_column()] = d.counted;
  const double pushed_out = -d.forage;
  const bool at_least = side == Side::at_least;
  row[draft.pushed_out_column()] = limit.kind == LimitKind::capacity ? pushed_out
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

std::string figure(double value) {
  return shortest(std::round(value * 1e4) / 1e4);
}

std::string in_both_units(double lb) {
  const double kg = lb * kg_per_lb;
  const double scale = kg < 1 ? 1000 : 100;
  return figure(lb) + " lb (" + shortest(std::floor(kg * scale) / scale) + " kg)";
}

SupplementModel build_model(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                            int feedings_per_week) {
  Draft draft{day, offers, feedings_per_week, {}, {}, {}, {}};
  set_columns(draft);
  add_needs(draft);
  if (!offers.empty()) {
    add_safe_use(draft);
    add_feed_ceilings(draft);
  }
  add_capacity(draft);
  set_rows(draft);
  return std::move(draft.model);
}

}  // namespace pluckbook
