#include <numeric>

#include "cow/need.h"

namespace pluckbook {

namespace {

constexpr long days_in_cycle = 365;
constexpr double table_weaning_day = 183;  // the rows wean just after month 6
constexpr long days_of_share = 21, middle_of_share = 10;

long floor_divide(long a, long b) {
  return a >= 0 ? a / b : -((-a + b - 1) / b);
}

Problem calving_problem(const Herd& herd, const std::string& what) {
  return input_problem(
      "herd '" + herd.id + "' " + what,
      "write when they calve: calving: 2026-03-10, or calving: {first: 2026-03-10, "
      "share_by_21_days: [62, 24, 10, 4]}",
      place_of(herd.origin));
}

/// What she is after that many calvings counted from the herd's own date; -1 is the year before.
CowClass class_after(CowClass at_start, long cycles) {
  if (at_start == CowClass::mature_cow || cycles > 0) return CowClass::mature_cow;
  return cycles < 0 ? CowClass::bred_heifer : CowClass::first_calf_heifer;
}

/// Day after calving on which a slice's calves are weaned: the herd weans all on one date.
bool still_milking(const Herd& herd, long days_since, long days_behind_first) {
  if (!herd.weaning) return static_cast<double>(days_since) <= table_weaning_day;
  const long age_of_first = days_between(herd.calving->first, *herd.weaning);
  const long in_cycle = age_of_first - days_in_cycle * floor_divide(age_of_first, days_in_cycle);
  return days_since < in_cycle - days_behind_first;
}

Slice slice_on(const Herd& herd, Date day, long days_behind_first) {
  const long since_first = days_between(herd.calving->first, day) - days_behind_first;
  const long cycles = floor_divide(since_first, days_in_cycle);
  const long since = since_first - cycles * days_in_cycle;
  Slice slice;
  slice.cow_class = class_after(herd.cow_class, cycles);
  if (slice.cow_class == CowClass::bred_heifer) {
    slice.stage = Stage::bred_heifer;
    slice.days_to_calving = static_cast<double>(-since_first);
    return slice;
  }
  slice.stage = still_milking(herd, since, days_behind_first) ? Stage::milking : Stage::dry;
  slice.days_since_calving = static_cast<double>(since);
  slice.days_to_calving = static_cast<double>(days_in_cycle - since);
  return slice;
}

}  // namespace

std::string_view to_string(Stage stage) {
  switch (stage) {
    case Stage::milking:
      return "milking";
    case Stage::dry:
      return "dry";
    case Stage::bred_heifer:
      return "bred heifer";
    case Stage::growing:
      return "growing";
    case Stage::bull:
      return "bull";
  }
  return "";
}

Result<std::vector<Slice>> slices_on(const Herd& herd, Date day) {
  if (herd.cow_class == CowClass::growing)
    return std::vector<Slice>{{1, Stage::growing, 0, 0, herd.cow_class}};
  if (herd.cow_class == CowClass::bull)
    return std::vector<Slice>{{1, Stage::bull, 0, 0, herd.cow_class}};
  if (!herd.calving) return calving_problem(herd, "has no calving date");
  const std::vector<double>& shares = herd.calving->share_by_21_days;
  const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
  if (!(sum > 0)) return calving_problem(herd, "has calving shares that add to nothing");
  std::vector<Slice> slices;
  const long middle = shares.size() > 1 ? middle_of_share : 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    if (shares[i] <= 0) continue;
    Slice slice = slice_on(herd, day, days_of_share * static_cast<long>(i) + middle);
    slice.share = shares[i] / sum;
    slices.push_back(slice);
  }
  return slices;
}

}  // namespace pluckbook
