#include <algorithm>
#include <cstdlib>

#include "advice/alternative.h"

namespace pluckbook {
namespace {

Date date_of(const WhatIf& what_if, DateSwap::Of of) {
  return of == DateSwap::Of::weaning ? *what_if.wean : what_if.move->date;
}

WhatIf put_to(WhatIf what_if, DateSwap::Of of, Date day) {
  (of == DateSwap::Of::weaning ? *what_if.wean : what_if.move->date) = day;
  return what_if;
}

/// A what-if whose date is put elsewhere, against the other of the pair, which stays as it is.
class MovedDate {
 public:
  MovedDate(const Book& book, const std::string& herd, const Alternative& moved,
            const Alternative& rival, DateSwap::Of of)
      : book_(book),
        herd_(herd),
        what_if_(*moved.what_if),
        of_(of),
        settings_(moved.groups.front().schedule.settings),
        rival_(rival.cost()),
        leads_(moved.cost() <= rival_) {}

  Date now() const { return date_of(what_if_, of_); }

  /// The nearest day, earlier or later, at which the two change places.
  std::optional<Date> nearest_swap() const {
    const auto earlier = swap_towards(-1), later = swap_towards(1);
    if (!earlier || !later) return earlier ? earlier : later;
    return now() - *earlier < *later - now() ? earlier : later;
  }

 private:
  static constexpr long week = 7;
  enum class Place { kept, changed, unfit };

  Place place_on(Date day) const {
    const WhatIf changed = put_to(what_if_, of_, day);
    auto book =
        std::make_shared<const Book>(book_of(book_, herd_, changed, settings_.windows.as_of));
    const Result<Alternative> then = alternative_of(std::move(book), herd_, changed, settings_);
    if (!then || !then->covers()) return Place::unfit;
    const bool passes = leads_ ? then->cost() > rival_ : then->cost() < rival_;
    return passes ? Place::changed : Place::kept;
  }

  /// Week by week, and in the week in which the places change day by day: a plan's cost goes in
  /// steps from window to window, so nothing can be halved. Ends where a need is no longer met.
  std::optional<Date> swap_towards(int way) const {
    const WindowSettings& days = settings_.windows;
    for (Date from = now(); from >= days.as_of && from <= days.until; from += Days(week * way)) {
      const Place place = place_on(from + Days(week * way));
      if (place == Place::unfit) return std::nullopt;
      if (place == Place::kept) continue;
      Date day = from + Days(way);
      while (place_on(day) == Place::kept) day += Days(way);
      return day;
    }
    return std::nullopt;
  }

  const Book& book_;
  const std::string& herd_;
  const WhatIf& what_if_;
  DateSwap::Of of_;
  const ScheduleSettings& settings_;
  double rival_;
  bool leads_;
};

}  // namespace

std::vector<DateSwap> date_swaps_of(const Book& book, const std::string& herd,
                                    const Alternative& first, const Alternative& second) {
  std::vector<DateSwap> swaps;
  const auto look = [&](const Alternative& moved, const Alternative& rival, DateSwap::Of of) {
    const MovedDate date(book, herd, moved, rival, of);
    if (const auto day = date.nearest_swap())
      swaps.push_back({moved.what_if, of, date.now(), *day});
  };
  for (const auto& [moved, rival] : {std::pair{&first, &second}, std::pair{&second, &first}}) {
    if (moved->what_if->wean) look(*moved, *rival, DateSwap::Of::weaning);
    if (moved->what_if->move) look(*moved, *rival, DateSwap::Of::move);
  }
  std::stable_sort(swaps.begin(), swaps.end(), [](const DateSwap& a, const DateSwap& b) {
    return std::abs(days_between(a.now, a.then)) < std::abs(days_between(b.now, b.then));
  });
  return swaps;
}

}  // namespace pluckbook
