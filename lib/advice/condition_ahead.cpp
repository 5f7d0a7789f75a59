#include "advice/condition_ahead.h"

#include <algorithm>

#include "cow/condition.h"
#include "cow/energetics.h"
#include "cow/energy_chain.h"
#include "numeric/newsvendor.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

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

/// What a cow off score 5 asks less (thin) or more (fat) of her energy than the rows, which hold a
/// cow at 5: her weight and the published factor of condition on maintenance.
McalPerDay maintenance_off_5(KgBody at_5, double score, bool milking) {
  MaintenanceSetting setting;
  setting.milking = milking;
  const McalPerDay by_rows = maintenance_of(at_5, setting).total();
  setting.condition = score;
  return maintenance_of(weight_at_score(at_5, score), setting).total() - by_rows;
}

/// The score after all windows, each with its own balance.
template <class BalanceOf>
double score_at_end(const Schedule& schedule, double score, BalanceOf balance_of) {
  const KgBody at_5 = schedule.herd->mature_weight.value_or(schedule.herd->weight);
  for (const FedWindow& fed : schedule.windows) {
    const bool milking = fed.day.grazing.milking;
    const McalPerDay balance = balance_of(fed) - maintenance_off_5(at_5, score, milking);
    score = score_after(at_5, score, balance, static_cast<double>(fed.window.days()));
  }
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
