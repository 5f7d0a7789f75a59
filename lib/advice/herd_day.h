// herd_day.h - one day of a herd where it grazes: its diet, its need, and the balance of the two by
// the published intake rules. The outlook starts from it, the workings show it as arithmetic.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "book/records.h"
#include "cow/equations.h"
#include "cow/intake.h"
#include "forage/series.h"

namespace pluckbook {

/// Where a herd stands on a day.
struct Whereabouts {
  const Move* move = nullptr;
  const Pasture* pasture = nullptr;
};
/// Fails: no move on or before the day; a pasture the book does not have.
Result<Whereabouts> grazing_of(const Book& book, const Herd& herd, Date day);

/// All pastures the herd has stood on or is to stand on.
std::vector<const Pasture*> pastures_of(const Book& book, const Herd& herd);

struct HerdDay {
  const Herd* herd = nullptr;
  Whereabouts grazing;
  Diet diet;  // the middle of the pasture's series, with the fibre of its newest bag
  HerdNeed need;
  std::vector<EquationNeed> by_equations;  // a slice each, in the settings of the tables
  DayBalance lead;                         // by the herd's leading intake rule
  DayBalance low;                          // by the NRC equation
  // By the higher guidance, without the gut's ceiling: milking cows have been seen to eat more.
  DayBalance high;
  std::string
      first_short;  // which is short first and the published rule that says so; may be empty
};

/// Fails: a need outside all tables.
Result<HerdDay> herd_day(const Herd& herd, const Whereabouts& grazing, const DietSeries& series,
                         Date day);

/// The same from the book as it is known that day (see as_of).
/// Fails: the herd is on no pasture; an unknown forage class; a need outside all tables.
Result<HerdDay> herd_day(const Book& book, const Herd& herd, Date day);

/// By TDN and by NEm a diet can stand on different sides of need: the table's TDN stands about a
/// point below the plain TDN -> NEm chain (printed = chain / 1.0187, found by computing).
struct EnergyBothWays {
  McalPerKgDm needed;  // the row's own NEm in the dry matter it assumes
  McalPerKgDm held;    // the diet's, by the chain
  bool short_by_tdn = false, short_by_nem = false;
  bool agree() const { return short_by_tdn == short_by_nem; }
};
/// Nothing where the need holds NEg as well: growing animals are not judged by NEm alone.
std::optional<EnergyBothWays> energy_both_ways(const Need& need, Share diet_tdn);

}  // namespace pluckbook
