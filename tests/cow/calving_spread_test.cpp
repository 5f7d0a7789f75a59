// A herd that calves over weeks needs more evenly than one that calves on a day.
#include <gtest/gtest.h>

#include <cmath>

#include "cow/herd.h"

namespace pluckbook::test {
namespace {

/// The largest change of what the herd needs from one day to another so many days on, over a year
/// from before calving; a pair of days with `apart` between them is left out.
struct LargestChange {
  double crude_protein = 0, tdn = 0;  // kg a day
};
LargestChange largest_change(const Herd& herd, long days, std::optional<Date> apart = {}) {
  LargestChange largest;
  for (Date on = day("2026-02-01"); on < day("2027-02-01"); on += Days(1)) {
    const Date then = on + Days(days);
    if (apart && on < *apart && *apart <= then) continue;
    const auto now = need_on(herd, on), later = need_on(herd, then);
    if (!now || !later) {
      ADD_FAILURE() << "no need on " << to_iso(on);
      return largest;
    }
    const KgPerDay protein =
        later->average.crude_protein_amount() - now->average.crude_protein_amount();
    const KgPerDay tdn = later->average.tdn_amount() - now->average.tdn_amount();
    largest.crude_protein = std::max(largest.crude_protein, std::abs(protein.value()));
    largest.tdn = std::max(largest.tdn, std::abs(tdn.value()));
  }
  return largest;
}

Herd calving_over(std::vector<double> shares) {
  Herd herd = spring_cows();
  herd.calving->share_by_21_days = std::move(shares);
  return herd;
}

TEST(CalvingSpread, ThreeTimes21DaysHalveTheLargestChangeOfADayAndOfAWeek) {
  const Herd on_a_day = calving_over({1}), over_63_days = calving_over({1, 1, 1});
  for (const long days : {1L, 7L}) {
    SCOPED_TRACE(days);
    const LargestChange at_once = largest_change(on_a_day, days);
    const LargestChange spread = largest_change(over_63_days, days);
    EXPECT_GT(at_once.crude_protein, 0.15);  // weaning alone takes 0.2 kg
    EXPECT_LT(spread.crude_protein, 0.5 * at_once.crude_protein);
    EXPECT_LT(spread.tdn, 0.5 * at_once.tdn);
  }
}

// All calves come off on one day, so that step is the same; the rest of the year is smoother.
TEST(CalvingSpread, OneWeaningDayKeepsItsStepAndTheRestIsSmoother) {
  const Date weaning = day("2026-10-15");
  Herd on_a_day = calving_over({1}), over_63_days = calving_over({1, 1, 1});
  on_a_day.weaning = over_63_days.weaning = weaning;
  for (const long days : {1L, 7L}) {
    SCOPED_TRACE(days);
    const LargestChange at_once = largest_change(on_a_day, days, weaning);
    const LargestChange spread = largest_change(over_63_days, days, weaning);
    EXPECT_LT(spread.crude_protein, 0.6 * at_once.crude_protein);
    EXPECT_LT(spread.tdn, 0.6 * at_once.tdn);
  }
}

}  // namespace
}  // namespace pluckbook::test
