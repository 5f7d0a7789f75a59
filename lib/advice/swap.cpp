#include <algorithm>
#include <cmath>
#include <set>

#include "advice/alternative.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

// A quote is followed down to a fifth and up to three times what it is: beyond lies no market.
constexpr double lowest_price = 0.2, highest_price = 3;
constexpr int halvings = 12;  // to a thousandth of the quote

Book with_dearer(const Book& book, const std::string& feed, MoneyPerKgAsFed dearer) {
  Book changed = book;
  for (Feed& one : changed.feeds)
    for (Quote& quote : one.quotes)
      if (one.id == feed) quote.price = std::max(quote.price + dearer, MoneyPerKgAsFed(0));
  return changed;
}

std::vector<FeedingWindow> windows_of(const Schedule& schedule) {
  std::vector<FeedingWindow> windows;
  for (const FedWindow& fed : schedule.windows) windows.push_back(fed.window);
  return windows;
}

/// The cost of an alternative with all quotes of a feed moved by so much a kilogram; nothing where
/// it no longer covers every need.
std::optional<double> cost_with(const Alternative& alternative, const std::string& feed,
                                MoneyPerKgAsFed dearer) {
  const Book book = with_dearer(*alternative.book, feed, dearer);
  double money = 0;
  for (const FedGroup& group : alternative.groups) {
    const Schedule& now = group.schedule;
    const auto then = schedule_on(book, *now.herd, windows_of(now), now.settings);
    if (!then || !then->within_reach()) return std::nullopt;
    money += then->cost();
  }
  return money;
}

struct Pair {
  const Alternative& first;
  const Alternative& second;

  /// How much dearer the second is; nothing where one of them no longer covers every need.
  std::optional<double> lead(const std::string& feed, MoneyPerKgAsFed dearer) const {
    const auto a = cost_with(first, feed, dearer);
    const auto b = cost_with(second, feed, dearer);
    if (!a || !b) return std::nullopt;
    return *b - *a;
  }
};

/// The change of price, towards `end`, at which the lead is gone; none where it lasts to the end.
std::optional<MoneyPerKgAsFed> change_that_swaps(const Pair& pair, const std::string& feed,
                                                 MoneyPerKgAsFed end) {
  const auto at_end = pair.lead(feed, end);
  if (!at_end || *at_end >= 0) return std::nullopt;
  MoneyPerKgAsFed leads(0), swapped = end;
  for (int i = 0; i < halvings; ++i) {
    const MoneyPerKgAsFed middle = (leads + swapped) / 2;
    const auto lead = pair.lead(feed, middle);
    if (!lead) return std::nullopt;
    (*lead >= 0 ? leads : swapped) = middle;
  }
  return swapped;
}

std::optional<Swap> swap_of(const Pair& pair, const Feed& feed, Date today) {
  const Quote* quote = newest_quote(feed, today);
  if (quote == nullptr) return std::nullopt;
  for (const double factor : {highest_price, lowest_price})
    if (const auto change = change_that_swaps(pair, feed.id, quote->price * (factor - 1)))
      return Swap{feed.id, quote, quote->amount + change->value() * quote->kg_per_unit};
  return std::nullopt;
}

}  // namespace

std::vector<Swap> swaps_of(const Alternative& first, const Alternative& second) {
  const Date today = first.groups.front().schedule.settings.windows.as_of;
  std::set<std::string> bought;
  for (const Alternative* one : {&first, &second})
    for (const FedGroup& group : one->groups) bought.merge(group.schedule.feeds());
  std::vector<Swap> swaps;
  for (const std::string& id : bought)
    for (const Alternative* one : {&first, &second}) {
      const auto feed = std::find_if(one->book->feeds.begin(), one->book->feeds.end(),
                                     [&](const Feed& f) { return f.id == id; });
      if (feed == one->book->feeds.end()) continue;
      if (const auto swap = swap_of({first, second}, *feed, today)) swaps.push_back(*swap);
      break;
    }
  const auto change = [](const Swap& swap) {
    return std::abs(swap.amount / swap.quote->amount - 1);
  };
  std::sort(swaps.begin(), swaps.end(),
            [&](const Swap& a, const Swap& b) { return change(a) < change(b); });
  return swaps;
}

}  // namespace pluckbook
