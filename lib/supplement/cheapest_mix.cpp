#include <algorithm>
#include <cmath>

#include "published/energetics.h"
#include "supplement/deciding.h"
#include "supplement/least_amounts.h"
#include "supplement/least_cost.h"
#include "supplement/nearest_mix.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

constexpr double dust = 1e-5;  // kg DM/day: less is not fed
constexpr double touching = 1e-7;

std::vector<MixPart> parts_of(const std::vector<FeedOffer>& offers, const Eigen::VectorXd& x) {
  std::vector<MixPart> parts;
  for (std::size_t j = 0; j < offers.size(); ++j) {
    const KgDmPerDay amount(x[static_cast<int>(j)]);
    if (amount.value() <= dust) continue;
    parts.push_back({j, amount, amount / offers[j].dm, amount * offers[j].cost_per_kg_dm()});
  }
  return parts;
}

KgDmPerDay forage_left(const GrazingDay& day, const SupplementModel& model,
                       const Eigen::VectorXd& x) {
  const std::size_t feeds = model.displacement.size();
  const int pushed_out = static_cast<int>(feeds) + 1;  // a nearest mix has columns after it
  double left = day.forage_intake.value() - x[pushed_out];
  for (std::size_t j = 0; j < feeds; ++j) left -= model.displacement[j] * x[static_cast<int>(j)];
  return KgDmPerDay(std::max(left, 0.0));
}

std::string with_standing(const Limit& limit) {
  return limit.standing.empty() ? limit.words : limit.words + " (" + limit.standing + ")";
}

/// The limits that the answer touches, in words: rows first, then labels.
std::vector<std::string> binding_of(const SupplementModel& model, const LpAnswer& answer) {
  std::vector<std::string> binding;
  const LinearProgram& p = model.program;
  for (std::size_t i = 0; i < model.limits.size(); ++i) {
    if (model.limits[i].kind == LimitKind::definition) continue;
    const int row = static_cast<int>(i);
    const double level = answer.row_level[row];
    const double room = std::min(p.row_upper[row] - level, level - p.row_lower[row]);
    if (room <= touching) binding.push_back(with_standing(model.limits[i]));
  }
  for (std::size_t j = 0; j < model.displacement.size(); ++j) {
    const int column = static_cast<int>(j);
    if (answer.x[column] > dust && p.upper[column] - answer.x[column] <= touching)
      binding.push_back(model.upper_words[j]);
  }
  return binding;
}

std::vector<MarginalCost> marginal_costs_of(const SupplementModel& model, const LpAnswer& answer) {
  std::vector<MarginalCost> costs;
  for (std::size_t i = 0; i < model.limits.size(); ++i)
    if (const double money = answer.y[static_cast<int>(i)]; std::abs(money) > same_money)
      costs.push_back({model.limits[i].id, money, model.limits[i].unit});
  return costs;
}

/// What could not be checked about the feeds that are in the mix.
std::vector<std::string> unchecked_of(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                                      const Mix& mix) {
  std::vector<FeedOffer> fed;
  for (const MixPart& part : mix.parts) fed.push_back(offers[part.offer]);
  return build_model(day, fed, mix.feedings_per_week).unchecked;
}

/// The parts, money and trips of an answer. Feeds that feed themselves are filled once a week.
Mix mix_of(const GrazingDay& day, const std::vector<FeedOffer>& offers,
           const SupplementModel& model, const LpAnswer& answer, int feedings) {
  Mix mix;
  mix.parts = parts_of(offers, answer.x);
  const bool by_hand = std::any_of(mix.parts.begin(), mix.parts.end(), [&](const MixPart& part) {
    return !is_self_fed(offers[part.offer]);
  });
  mix.feedings_per_week = by_hand ? feedings : 0;
  for (const MixPart& part : mix.parts) mix.feed_cost += part.cost;
  const int trips = mix.parts.empty() ? 0 : by_hand ? feedings : 1;
  mix.trip_cost = MoneyPerDay(day.trip_cost_per_head * trips / 7);
  mix.forage_left = forage_left(day, model, answer.x);
  mix.binding = binding_of(model, answer);
  mix.certificate = answer.certificate;
  mix.unchecked = unchecked_of(day, offers, mix);
  return mix;
}

/// What the rumen wants is asked of whatever she eats, so both sides are told in protein.
double told_in_protein(const Limit& limit, const GrazingDay& day,
                       const std::vector<FeedOffer>& offers, const Mix& mix) {
  if (limit.id != "rumen_protein" && limit.id != "rdp") return 0;
  KgDmPerDay eaten = mix.forage_left;
  KgPerDay tdn = mix.forage_left * day.tdn;
  for (const MixPart& part : mix.parts) {
    eaten += part.dry_matter;
    tdn += part.dry_matter * Share(offers[part.offer].figure_or("tdn", 0));
  }
  return limit.id == "rdp" ? microbial_figures().share * tdn.value()
                           : (eaten * day.rumen_floor).value();
}

Mix nearest_of(const GrazingDay& day, const std::vector<FeedOffer>& offers,
               const SupplementModel& model, const NearestMix& nearest, int feedings) {
  Mix mix = mix_of(day, offers, model, nearest.answer, feedings);
  mix.status = MixStatus::out_of_reach;
  for (std::size_t i = 0; i < model.limits.size(); ++i) {
    if (nearest.missing[i] <= touching) continue;
    const Limit& limit = model.limits[i];
    const double asked = model.program.row_lower[static_cast<int>(i)] + model.forage_alone[i] +
                         told_in_protein(limit, day, offers, mix);
    mix.unmet.push_back({limit.id, limit.words, asked, asked - nearest.missing[i],
                         nearest.in_the_way, nearest.what_helps});
  }
  return mix;
}

bool met_without(const SupplementModel& model) {
  for (std::size_t i = 0; i < model.limits.size(); ++i)
    if (model.limits[i].kind == LimitKind::need &&
        model.program.row_lower[static_cast<int>(i)] > touching)
      return false;
  return true;
}

/// The nearest mix over all ways of feeding: least missing, then least cost, then fewest trips.
Mix out_of_reach(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                 const std::set<int>& ways) {
  Mix best;
  double least = 0;
  for (const int feedings : ways) {
    const SupplementModel model = build_model(day, offers, feedings);
    const NearestMix nearest = nearest_mix(model);
    if (nearest.status != LpStatus::optimal) return Mix{};
    Mix mix = nearest_of(day, offers, model, nearest, feedings);
    const bool first = best.status == MixStatus::not_trusted;
    const bool nearer = nearest.shortfall < least - touching;
    const bool cheaper = nearest.shortfall < least + touching &&
                         mix.cost().value() < best.cost().value() - same_money;
    if (!first && !nearer && !cheaper) continue;
    least = nearest.shortfall;
    best = std::move(mix);
  }
  return best;
}

Mix nothing_needed(const GrazingDay& day) {
  Mix mix;
  mix.status = MixStatus::none_needed;
  mix.feedings_per_week = 0;
  mix.forage_left = day.forage_intake;
  return mix;
}

}  // namespace

Mix cheapest_mix(const GrazingDay& day, const std::vector<FeedOffer>& offers) {
  if (met_without(build_model(day, {}, 7))) return nothing_needed(day);
  std::set<int> ways = feeding_frequencies(offers);
  if (ways.empty()) ways.insert(7);
  Mix best;
  for (const int feedings : ways) {
    const SupplementModel model = build_model(day, offers, feedings);
    const LeastAnswer least = solve_with_least(model.program, model.least_dm);
    if (least.status == LpStatus::not_trusted) return Mix{};
    if (least.status != LpStatus::optimal) continue;
    Mix mix = mix_of(day, offers, model, least.answer, feedings);
    const bool first = best.status != MixStatus::optimal;
    if (!first && mix.cost().value() >= best.cost().value() - same_money) continue;
    mix.status = MixStatus::optimal;
    mix.marginal_costs = marginal_costs_of(model, least.answer);
    mix.deciding = deciding_figures(offers, mix);
    best = std::move(mix);
  }
  return best.status == MixStatus::optimal ? best : out_of_reach(day, offers, ways);
}

}  // namespace pluckbook
