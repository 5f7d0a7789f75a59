#include "advice/outlook.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "advice/crossing.h"

namespace pluckbook {
namespace {

constexpr std::array nutrients = {DietNutrient::crude_protein, DietNutrient::tdn};
// A change of pasture or of reading this large is worth a sentence (DESIGN: a week).
constexpr long telling_days = 7;

/// Everything the readings below share.
struct Horizon {
  const Herd& herd;
  OutlookSettings settings;
  std::vector<HerdNeed> needs;  // one a day from as_of to until
  DietSeries::Paths paths;
  std::optional<Share> ndf;  // of the newest bag, taken to stay: it limits what the gut holds

  int days() const { return static_cast<int>(needs.size()); }
  int count() const { return static_cast<int>(paths.crude_protein.cols()); }
  Diet diet(int day, int path) const {
    return {Share(paths.crude_protein(day, path)), Share(paths.tdn(day, path)), std::nullopt};
  }
};

Share need_share(const HerdNeed& need, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? need.average.tdn : need.average.crude_protein;
}

const Balance& balance_in(const DayBalance& day, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? day.tdn : day.crude_protein;
}

Share share_in(const Diet& diet, DietNutrient nutrient) {
  return nutrient == DietNutrient::tdn ? diet.tdn : diet.crude_protein;
}

Crossing crossing_in_share(const Horizon& horizon, DietNutrient nutrient) {
  std::vector<std::optional<int>> runs;
  for (int path = 0; path < horizon.count(); ++path) {
    runs.push_back(first_run(horizon.days(), [&](int day) {
      return share_in(horizon.diet(day, path), nutrient) <
             need_share(horizon.needs[static_cast<std::size_t>(day)], nutrient);
    }));
  }
  return crossing_of(horizon.settings.as_of, runs);
}

/// Both nutrients in one pass, since a day's balance holds both. `ndf` is what the gut's ceiling is
/// drawn from; none leaves the ceiling out.
std::array<Crossing, 2> crossings_in_amount(const Horizon& horizon, IntakeRule rule,
                                            std::optional<Share> ndf) {
  std::array<std::vector<std::optional<int>>, 2> runs;
  std::vector<DayBalance> days(static_cast<std::size_t>(horizon.days()));
  for (int path = 0; path < horizon.count(); ++path) {
    for (int day = 0; day < horizon.days(); ++day) {
      const auto at = static_cast<std::size_t>(day);
      Diet diet = horizon.diet(day, path);
      diet.ndf = ndf;
      days[at] = balance_of(horizon.herd, horizon.needs[at], diet, rule);
    }
    for (std::size_t i = 0; i < nutrients.size(); ++i) {
      runs[i].push_back(first_run(horizon.days(), [&](int day) {
        const Balance& balance = balance_in(days[static_cast<std::size_t>(day)], nutrients[i]);
        return balance.supply < balance.need;
      }));
    }
  }
  return {crossing_of(horizon.settings.as_of, runs[0]),
          crossing_of(horizon.settings.as_of, runs[1])};
}

/// Walks back from today while the median diet stands below need, no further than the day the
/// herd came to this pasture.
std::optional<Date> below_since(const DietSeries& series, const Herd& herd, DietNutrient nutrient,
                                Date came, Date today) {
  std::optional<Date> since;
  const std::vector<DietPoint> days = series.days(nutrient, came, today);
  for (auto point = days.rbegin(); point != days.rend(); ++point) {
    const Result<HerdNeed> need = need_on(herd, point->date);
    if (!need || point->median >= need_share(*need, nutrient)) break;
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

double share_below(const Horizon& horizon, DietNutrient nutrient) {
  int below = 0;
  for (int path = 0; path < horizon.count(); ++path) {
    if (share_in(horizon.diet(0, path), nutrient) < need_share(horizon.needs[0], nutrient)) ++below;
  }
  return static_cast<double>(below) / static_cast<double>(horizon.count());
}

Result<Horizon> horizon_of(const HerdDay& today, const DietSeries& series,
                           const OutlookSettings& settings) {
  Horizon horizon{*today.herd, settings, {today.need}, {}, today.diet.ndf};
  for (Date day = settings.as_of + Days(1); day <= settings.until; day += Days(1)) {
    Result<HerdNeed> need = need_on(*today.herd, day);
    if (!need) return need.problems();
    horizon.needs.push_back(std::move(*need));
  }
  horizon.paths = series.paths(settings.as_of, settings.until, settings.paths, settings.seed);
  return horizon;
}

NutrientOutlook state_today(const Horizon& horizon, const DietSeries& series, DietNutrient nutrient,
                            const HerdDay& today) {
  NutrientOutlook out;
  out.nutrient = nutrient;
  out.diet_now = series.on(nutrient, horizon.settings.as_of);
  out.need_now = need_share(horizon.needs[0], nutrient);
  out.rumen_floor_governs =
      nutrient == DietNutrient::crude_protein && horizon.needs[0].average.rumen_floor_governs;
  out.below_now = out.diet_now.median < out.need_now;
  out.probability_below_now = share_below(horizon, nutrient);
  if (out.below_now) {
    out.below_since = below_since(series, horizon.herd, nutrient, today.grazing.move->date,
                                  horizon.settings.as_of);
  }
  out.balance = balance_in(today.lead, nutrient);
  out.below_now_amount = out.balance.supply < out.balance.need;
  return out;
}

/// The season in amounts, by the leading rule and at both ends of the published ones. The high end
/// leaves the gut's ceiling out, as the day's does.
struct AmountCrossings {
  std::array<Crossing, 2> lead, low, high;
};

AmountCrossings amount_crossings(const Horizon& horizon) {
  return {crossings_in_amount(horizon, leading_rule(horizon.herd), horizon.ndf),
          crossings_in_amount(horizon, IntakeRule::nrc_equation, horizon.ndf),
          crossings_in_amount(horizon, IntakeRule::guidance_higher, std::nullopt)};
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
  Result<Horizon> horizon = horizon_of(*today, *series, settings);
  if (!horizon) return horizon.problems();

  HerdOutlook out;
  out.herd = &herd;
  out.pasture = grazing->pasture;
  out.bags_used = std::count_if(series->bags().begin(), series->bags().end(),
                                [](const BagReading& bag) { return bag.used; });
  out.need = today->need;
  out.intake = today->lead.intake;
  out.first_short = today->first_short;
  if (out.intake.gut_limits) out.notes.push_back(gut_note(out.intake, *today->diet.ndf));
  if (auto floor = floor_in_amounts(*today)) out.notes.push_back(std::move(*floor));
  const AmountCrossings amounts = amount_crossings(*horizon);
  for (std::size_t i = 0; i < nutrients.size(); ++i) {
    NutrientOutlook one = state_today(*horizon, *series, nutrients[i], *today);
    one.falls_below = crossing_in_share(*horizon, nutrients[i]);
    one.falls_below_amount = amounts.lead[i];
    one.amount_low_intake = amounts.low[i];
    one.amount_high_intake = amounts.high[i];
    const auto supplies =
        std::minmax({balance_in(today->low, nutrients[i]).supply, one.balance.supply,
                     balance_in(today->high, nutrients[i]).supply});
    one.supply_low = supplies.first;
    one.supply_high = supplies.second;
    one.notes = disagreements(one);
    if (nutrients[i] == DietNutrient::tdn) {
      if (auto flip = energy_flip(*today)) one.notes.push_back(std::move(*flip));
    }
    out.nutrients.push_back(std::move(one));
  }
  return out;
}

}  // namespace pluckbook
