#include "advice/outlook.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "advice/crossing.h"
#include "advice/horizon.h"

namespace pluckbook {
namespace {

constexpr std::array nutrients = {DietNutrient::crude_protein, DietNutrient::tdn};
// A change of pasture or of reading this large is worth a sentence (DESIGN: a week).
constexpr long telling_days = 7;

/// What the paths do in share of dry matter: the fall, of those that fall the recovery, and how
/// many have fallen by the end of the week.
struct ShareReading {
  Crossing falls, recovers;
  double within_week = 0;
};

ShareReading share_reading(const Horizon& horizon, DietNutrient nutrient) {
  std::vector<std::optional<int>> falls, recoveries;
  int within_week = 0;
  for (int path = 0; path < horizon.count(); ++path) {
    const Turns turns =
        turns_of(horizon.days(), [&](int day) { return horizon.below(nutrient, day, path); });
    falls.push_back(turns.falls);
    if (!turns.falls) continue;
    recoveries.push_back(turns.recovers);
    if (*turns.falls < run_of_days) ++within_week;
  }
  return {crossing_of(horizon.first, falls), crossing_of(horizon.first, recoveries),
          static_cast<double>(within_week) / horizon.count()};
}

/// The first run short in amounts, of each path.
using Runs = std::vector<std::optional<int>>;

std::optional<int> first_short(const std::vector<DayBalance>& days, DietNutrient nutrient) {
  return first_run(static_cast<int>(days.size()), [&](int day) {
    const Balance& balance = balance_in(days[static_cast<std::size_t>(day)], nutrient);
    return balance.supply < balance.need;
  });
}

/// Both nutrients in one pass, since a day's balance holds both.
std::array<Crossing, 2> crossings_in_amount(const Horizon& horizon, IntakeReading reading) {
  std::array<Runs, 2> runs;
  for_each_path(horizon, reading, [&](const std::vector<DayBalance>& days) {
    for (std::size_t i = 0; i < nutrients.size(); ++i)
      runs[i].push_back(first_short(days, nutrients[i]));
  });
  return {crossing_of(horizon.first, runs[0]), crossing_of(horizon.first, runs[1])};
}

Kg lacking_in_week(const std::vector<DayBalance>& days, DietNutrient nutrient) {
  Kg lacking;
  for (std::size_t day = 0; day < std::min<std::size_t>(days.size(), run_of_days); ++day)
    lacking += Kg(balance_in(days[day], nutrient).gap().value());
  return lacking;
}

/// What `share` of the outcomes lack no more than.
Kg at_share(std::vector<Kg> outcomes, double share) {
  if (outcomes.empty()) return {};
  std::sort(outcomes.begin(), outcomes.end());
  const auto rank = std::ceil(share * static_cast<double>(outcomes.size()));
  return outcomes[static_cast<std::size_t>(std::max(rank, 1.0)) - 1];
}

/// What is read along the leading rule: when amounts fall short, what a week of waiting lacks, and
/// degradable protein.
struct LeadReading {
  std::array<Crossing, 2> falls;
  std::array<std::vector<Kg>, 2> lacking;  // over the week, of each path
  Crossing degradable_falls;
};

/// Days from the first on whose pasture tells its degradable share.
int days_with_degradable(const Horizon& horizon) {
  int days = 0;
  while (days < horizon.days() && horizon.stay(days).degradable) ++days;
  return days;
}

LeadReading lead_reading(const Horizon& horizon) {
  LeadReading lead;
  std::array<Runs, 2> runs;
  Runs degradable;
  const int known = days_with_degradable(horizon);
  for_each_path(horizon, {leading_rule(*horizon.herd)}, [&](const std::vector<DayBalance>& days) {
    for (std::size_t i = 0; i < nutrients.size(); ++i) {
      runs[i].push_back(first_short(days, nutrients[i]));
      lead.lacking[i].push_back(lacking_in_week(days, nutrients[i]));
    }
    degradable.push_back(first_run(known, [&](int day) {
      const Balance balance =
          degradable_balance(days[static_cast<std::size_t>(day)], *horizon.stay(day).degradable);
      return balance.supply < balance.need;
    }));
  });
  lead.falls = {crossing_of(horizon.first, runs[0]), crossing_of(horizon.first, runs[1])};
  lead.degradable_falls = crossing_of(horizon.first, degradable);
  return lead;
}

/// Walks back from today while the median diet stands below need, no further than the day the
/// herd came to this pasture.
std::optional<Date> below_since(const DietSeries& series, const Herd& herd, DietNutrient nutrient,
                                Date came, Date today) {
  std::optional<Date> since;
  const std::vector<DietPoint> days = series.days(nutrient, came, today);
  for (auto point = days.rbegin(); point != days.rend(); ++point) {
    const Result<HerdNeed> need = need_on(herd, point->date);
    if (!need || point->median >= share_of(need->average, nutrient)) break;
    since = point->date;
  }
  return since;
}

std::vector<std::string> disagreements(const NutrientOutlook& outlook) {
  std::vector<std::string> notes;
  if (outlook.below_now != outlook.below_now_amount) {
    notes.push_back(fmt::format(
        "read in share of dry matter the diet is {} need, read in amounts per day it "
        "is {}: the intake decides, treat it as a close call",
        outlook.below_now ? "below" : "above", outlook.below_now_amount ? "below" : "above"));
    return notes;
  }
  const auto& share = outlook.falls_below.median;
  const auto& amount = outlook.falls_below_amount.median;
  if (!outlook.below_now && share && amount &&
      std::abs(days_between(*share, *amount)) > telling_days) {
    notes.push_back(fmt::format(
        "read in amounts per day the middle date is {}: the table assumes another intake than "
        "the rule for this forage gives",
        in_words(*amount)));
  }
  const bool low = outlook.amount_low_intake.median.has_value();
  const bool high = outlook.amount_high_intake.median.has_value();
  if (!outlook.below_now_amount && low != high) {
    notes.push_back(
        "in amounts per day the answer flips between the low and the high published intake rule");
  }
  return notes;
}

/// A verdict that flips between TDN and NEm is a close call.
std::optional<std::string> energy_flip(const HerdDay& today) {
  const auto energy = energy_both_ways(today.need.average, today.diet.tdn);
  if (!energy || energy->agree()) return std::nullopt;
  return fmt::format(
      "a close call: by TDN the diet is {} need, by NEm {} ({:.2f} against {:.2f} "
      "Mcal/kg); the table's TDN stands about a point under its own NEm",
      energy->short_by_tdn ? "below" : "above", energy->short_by_nem ? "below" : "above",
      energy->held.value(), energy->needed.value());
}

double share_below_now(const Horizon& horizon, DietNutrient nutrient) {
  int below = 0;
  for (int path = 0; path < horizon.count(); ++path) below += horizon.below(nutrient, 0, path);
  return static_cast<double>(below) / horizon.count();
}

NutrientOutlook state_today(const Horizon& horizon, const DietSeries& series, DietNutrient nutrient,
                            const HerdDay& today) {
  NutrientOutlook out;
  out.nutrient = nutrient;
  out.diet_now = series.on(nutrient, horizon.first);
  out.need_now = horizon.need(nutrient, 0);
  out.rumen_floor_governs =
      nutrient == DietNutrient::crude_protein && horizon.needs[0].average.rumen_floor_governs;
  out.below_now = out.diet_now.median < out.need_now;
  out.probability_below_now = share_below_now(horizon, nutrient);
  if (out.below_now) {
    out.below_since =
        below_since(series, *horizon.herd, nutrient, today.grazing.move->date, horizon.first);
  }
  out.balance = balance_in(today.lead, nutrient);
  out.below_now_amount = out.balance.supply < out.balance.need;
  const auto supplies = std::minmax({balance_in(today.low, nutrient).supply, out.balance.supply,
                                     balance_in(today.high, nutrient).supply});
  out.supply_low = supplies.first;
  out.supply_high = supplies.second;
  return out;
}

/// The season in amounts, by the leading rule and at both ends of the published ones. The high end
/// leaves the gut's ceiling out, as the day's does.
struct AmountReadings {
  LeadReading lead;
  std::array<Crossing, 2> low, high;
};

AmountReadings amount_readings(const Horizon& horizon) {
  return {lead_reading(horizon), crossings_in_amount(horizon, {IntakeRule::nrc_equation, true}),
          crossings_in_amount(horizon, {IntakeRule::guidance_higher, false})};
}

/// The whole of one nutrient: today, the turns ahead in both readings, and a week's waiting.
NutrientOutlook nutrient_outlook(const Horizon& horizon, const DietSeries& series,
                                 const AmountReadings& amounts, std::size_t i,
                                 const HerdDay& today) {
  NutrientOutlook one = state_today(horizon, series, nutrients[i], today);
  const ShareReading shares = share_reading(horizon, nutrients[i]);
  one.falls_below = shares.falls;
  one.recovers = shares.recovers;
  one.waiting = {shares.within_week, at_share(amounts.lead.lacking[i], 0.5),
                 at_share(amounts.lead.lacking[i], 0.9)};
  one.falls_below_amount = amounts.lead.falls[i];
  one.amount_low_intake = amounts.low[i];
  one.amount_high_intake = amounts.high[i];
  one.notes = disagreements(one);
  if (nutrients[i] == DietNutrient::tdn) {
    if (auto flip = energy_flip(today)) one.notes.push_back(std::move(*flip));
  }
  return one;
}

std::optional<DegradableOutlook> degradable_outlook(const Horizon& horizon, const HerdDay& today,
                                                    const LeadReading& lead) {
  const std::optional<Share> share = horizon.stays.front().degradable;
  if (!share) return std::nullopt;
  return DegradableOutlook{*share, degradable_balance(today.lead, *share), lead.degradable_falls};
}

/// The rumen's floor grows with what is eaten: it can govern the amount where the cow's own need
/// governs the share.
std::optional<std::string> floor_in_amounts(const HerdDay& today) {
  const bool in_share = today.need.average.rumen_floor_governs;
  if (in_share || today.lead.rumen_crude_protein <= today.lead.own_crude_protein)
    return std::nullopt;
  return "in amounts the rumen's least, 7 % of what she eats, is above the cow's own protein need";
}

std::string gut_note(const Intake& intake, Share ndf) {
  return fmt::format(
      "NDF of {:.0f} % lets the gut hold {:.0f} % of what the intake rule alone says (1.2 % of "
      "body weight as NDF, Missouri extension); the high end of the range leaves this out",
      in_percent(ndf), intake.amount / intake.before_limits * 100);
}

}  // namespace

Result<HerdOutlook> outlook_of(const Book& book, const Herd& herd,
                               const OutlookSettings& settings) {
  const Result<Whereabouts> grazing = grazing_of(book, herd, settings.as_of);
  if (!grazing) return grazing.problems();
  Result<DietSeries> series = DietSeries::of(book, *grazing->pasture);
  if (!series) return series.problems();
  Result<HerdDay> today = herd_day(herd, *grazing, *series, settings.as_of);
  if (!today) return today.problems();
  const Result<Horizon> horizon = horizon_of(book, herd, *series, settings);
  if (!horizon) return horizon.problems();

  HerdOutlook out;
  out.herd = &herd;
  out.pasture = grazing->pasture;
  for (std::size_t i = 1; i < horizon->stays.size(); ++i)
    out.moves_ahead.push_back(horizon->stays[i].where);
  out.bags_used = std::count_if(series->bags().begin(), series->bags().end(),
                                [](const BagReading& bag) { return bag.used; });
  out.need = today->need;
  out.intake = today->lead.intake;
  out.first_short = today->first_short;
  if (out.intake.gut_limits) out.notes.push_back(gut_note(out.intake, *today->diet.ndf));
  if (auto floor = floor_in_amounts(*today)) out.notes.push_back(std::move(*floor));
  const AmountReadings amounts = amount_readings(*horizon);
  for (std::size_t i = 0; i < nutrients.size(); ++i)
    out.nutrients.push_back(nutrient_outlook(*horizon, *series, amounts, i, *today));
  out.degradable = degradable_outlook(*horizon, *today, amounts.lead);
  return out;
}

}  // namespace pluckbook
