#include "advice/condition_ahead.h"

#include <algorithm>
#include <cmath>

#include "numeric/newsvendor.h"
#include "published/condition.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

// Source: NRC 2000 (recalled): 1 Mcal of reserve replaces 0.8 Mcal of diet NEm; gaining, 1 Mcal of
// surplus stores 1 Mcal.
constexpr double diet_of_reserve = 0.8;

/// Mcal between the score and the one below it; the table's ends stand for all beyond.
double mcal_of_score(double score, KgBody weight_at_5) {
  const auto& rows = condition_energy().rows;
  const auto nearer = [&](const ConditionEnergyRow& a, const ConditionEnergyRow& b) {
    return std::abs(a.score - std::ceil(score)) < std::abs(b.score - std::ceil(score));
  };
  const auto row = std::min_element(rows.begin(), rows.end(), nearer);
  return row->mcal * in_lb(weight_at_5) / row->weight_at_5_lb;
}

double score_after(KgBody at_5, double score, McalPerDay balance, double days) {
  const double reserve = balance.value() < 0 ? balance.value() / diet_of_reserve : balance.value();
  for (double day = 0; day < days; ++day)
    score = std::clamp(score + reserve / mcal_of_score(score, at_5), 1.0, 9.0);
  return score;
}

/// NEm on the footing of the requirement rows, whose TDN stands a point under the plain chain: a
/// cow whose TDN need is just met then holds her condition.
McalPerKgDm on_the_rows_footing(Share tdn) {
  return nem_of(tdn * energy_chain().printed_tdn_divisor);
}

McalPerDay energy_of_feeds(const FedWindow& fed) {
  McalPerDay energy;
  for (const MixPart& part : fed.mix.parts)
    energy +=
        part.dry_matter * on_the_rows_footing(Share(fed.offers[part.offer].figure_or("tdn", 0)));
  return energy;
}

McalPerDay energy_of_forage(KgDmPerDay forage, Share tdn) {
  return std::max(forage, KgDmPerDay(0)) * on_the_rows_footing(tdn);
}

McalPerDay balance_unfed(const Herd& herd, const FeedingWindow& window, const Diet& diet) {
  const Intake intake = fed_intake(herd, window.need, diet, FedIntake::held);
  return energy_of_forage(intake.amount, diet.tdn) - window.need.average.nem;
}

/// The mix as planned on another diet than it was planned for: it leaves as much grass ungrazed.
McalPerDay balance_fed(const Schedule& schedule, const FedWindow& fed, const Diet& diet) {
  const HerdNeed& need = fed.window.need;
  const KgDmPerDay left_ungrazed = fed.day.grazing.forage_intake - fed.mix.forage_left;
  const FedIntake as_planned = fed.mix.parts.empty() ? FedIntake::held : schedule.settings.fed;
  const KgDmPerDay eaten = fed_intake(*schedule.herd, need, diet, as_planned).amount;
  return energy_of_forage(eaten - left_ungrazed, diet.tdn) + energy_of_feeds(fed) -
         need.average.nem;
}

/// The score after all windows, each with its own balance.
template <class BalanceOf>
double score_at_end(const Schedule& schedule, double score, BalanceOf balance_of) {
  const KgBody at_5 = schedule.herd->mature_weight.value_or(schedule.herd->weight);
  for (const FedWindow& fed : schedule.windows)
    score = score_after(at_5, score, balance_of(fed), static_cast<double>(fed.window.days()));
  return score;
}

void set_range(const Schedule& schedule, ConditionAhead& ahead) {
  std::vector<double> scores;
  for (std::size_t path = 0; path < schedule.windows.front().window.paths.size(); ++path)
    scores.push_back(score_at_end(schedule, ahead.now, [&](const FedWindow& fed) {
      return balance_unfed(*schedule.herd, fed.window, fed.window.paths[path]);
    }));
  ahead.unfed_low = ahead.unfed_high = ahead.unfed;
  if (scores.empty()) return;
  std::sort(scores.begin(), scores.end());
  ahead.unfed_low = covering(scores, 0.1);
  ahead.unfed_high = covering(scores, 0.9);
}

}  // namespace

std::optional<ConditionAhead> condition_ahead(const Book& book, const Schedule& schedule) {
  const Herd& herd = *schedule.herd;
  if (herd.cow_class == CowClass::growing || herd.cow_class == CowClass::bull) return std::nullopt;
  if (schedule.windows.empty()) return std::nullopt;
  ConditionAhead ahead;
  ahead.now = herd.condition;
  for (const ConditionScore& score : book.scores) {
    const bool newer = !ahead.scored || score.date >= *ahead.scored;
    if (score.herd != herd.id || !newer) continue;
    ahead.now = score.condition;
    ahead.scored = score.date;
  }
  ahead.fed = score_at_end(schedule, ahead.now, [&](const FedWindow& fed) {
    return balance_fed(schedule, fed, fed.window.median);
  });
  ahead.unfed = score_at_end(schedule, ahead.now, [&](const FedWindow& fed) {
    return balance_unfed(*schedule.herd, fed.window, fed.window.median);
  });
  set_range(schedule, ahead);
  return ahead;
}

}  // namespace pluckbook
