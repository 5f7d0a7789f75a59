// outlook.h - when the diet falls below need, and how surely. Sample paths of diet CP and TDN
// against the need, day by day: the first day of the first run of seven days below. Read twice: in
// share of dry matter (leads; no intake assumption) and in amounts per day (what is priced).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/herd_day.h"
#include "base/date.h"
#include "base/problem.h"
#include "book/records.h"
#include "cow/intake.h"
#include "forage/series.h"

namespace pluckbook {

struct OutlookSettings {
  Date as_of;
  Date until;
  int paths = 1000;
  std::uint64_t seed = 20260401;
};

/// When a run of seven days below begins. A date is missing when fewer than that share of the
/// paths fall below before the horizon.
struct Crossing {
  std::optional<Date> low, median, high;  // 10, 50 and 90 in 100 of all paths have fallen by then
  double probability_by_horizon = 0;
};

/// What one more week without feed risks, a head, by the leading intake rule.
struct WaitingRisk {
  double probability = 0;  // that the diet falls short in that week, or has already
  Kg lacking;              // of the nutrient over the week, the middle outcome
  Kg lacking_at_worst;     // 10 in 100 outcomes lack more
};

struct NutrientOutlook {
  DietNutrient nutrient = DietNutrient::crude_protein;
  DietPoint diet_now;
  Share need_now;
  bool rumen_floor_governs = false;
  bool below_now = false;           // the median diet stands below need
  std::optional<Date> below_since;  // first day of the run of median days below that holds today
  double probability_below_now = 0;
  Crossing falls_below;  // share of dry matter; meaningful when above now
  /// Back above need for seven days, of those outcomes that fall short; its probability is theirs.
  Crossing recovers;
  WaitingRisk waiting;
  Crossing falls_below_amount;  // amounts per day with the leading intake rule
  bool below_now_amount = false;
  Crossing amount_low_intake, amount_high_intake;  // at the ends of the intake rules
  Balance balance;                                 // amounts now, leading rule
  KgPerDay supply_low, supply_high;                // over the intake rules
  std::vector<std::string> notes;                  // where the readings disagree, and why
};

/// Degradable protein (RDP) in amounts, where the newest bag's page tells its share.
struct DegradableOutlook {
  Share of_protein;
  Balance balance;
  Crossing falls_below;  // until the herd moves to a pasture whose share is not known
  bool below_now() const { return balance.supply < balance.need; }
};

struct HerdOutlook {
  const Herd* herd = nullptr;
  const Pasture* pasture = nullptr;      // where it stands on as_of
  std::vector<Whereabouts> moves_ahead;  // planned, and followed from their dates on
  long bags_used = 0;  // of that pasture, in all seasons; 0: the class's published season alone
  HerdNeed need;
  Intake intake;
  std::vector<NutrientOutlook> nutrients;  // crude protein, TDN
  std::optional<DegradableOutlook> degradable;
  std::string first_short;  // which is short first and the published rule that says so
  std::vector<std::string> notes;
};

/// Moves ahead of as_of are followed where the book knows them: planned by then, or, asked of
/// today, written down at all (see as_of and as_of_today). A herd with none stays where it is.
/// Fails: the herd is on no pasture on that day; a need outside all tables.
/// `book` is taken as known on settings.as_of (see as_of) and must outlive the answer.
Result<HerdOutlook> outlook_of(const Book& book, const Herd& herd, const OutlookSettings& settings);

/// The next bag: the grazed pasture whose shortfall date one more bag would narrow most.
struct NextSample {
  const Pasture* pasture = nullptr;
  Date date;
  std::string why;
};
std::optional<NextSample> next_sample(const Book& book, const std::vector<HerdOutlook>& outlooks,
                                      const OutlookSettings& settings);

}  // namespace pluckbook
