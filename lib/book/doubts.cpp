#include "book/doubts.h"

#include <fmt/format.h>

#include <algorithm>

namespace pluckbook {
namespace {

constexpr long longest_gap_days = 60;  // common practice: every two to six weeks
constexpr long year_days = 365;

Problem doubt(const Origin& origin, std::string what, std::string remedy) {
  Problem problem = input_problem(std::move(what), std::move(remedy), place_of(origin));
  problem.severity = Severity::warning;
  return problem;
}

// The last day something was known of the diet in a stay: its first, or a bag plucked since.
Date last_known(const Book& book, const Move& stay, Date day) {
  Date last = stay.date;
  for (const Bag& bag : book.bags) {
    const bool counts = bag.pasture == stay.pasture && bag.method == Method::hand_plucked;
    if (counts && bag.plucked <= day) last = std::max(last, bag.plucked);
  }
  return last;
}

// Only where the herd stands now: what was missed before cannot be mended.
void note_gap(const Book& book, const Herd& herd, Date day, Problems& doubts) {
  const Move* stay = move_of(book, herd.id, day);
  if (stay == nullptr) return;
  const Date last = last_known(book, *stay, day);
  const long gap = days_between(last, day);
  if (gap <= longest_gap_days) return;
  doubts.push_back(doubt(
      stay->origin,
      fmt::format("{} has been grazed for {} days without a bag, since {}", stay->pasture, gap,
                  to_iso(last)),
      fmt::format("pluck one: pluckbook bag {} --plan; every four to six weeks when dormant, every "
                  "two to four while grass changes",
                  stay->pasture)));
}

void note_old_quote(const Feed& feed, Date day, Problems& doubts) {
  std::optional<Date> newest;
  for (const Quote& quote : feed.quotes) {
    if (quote.date && (!newest || *quote.date > *newest)) newest = quote.date;
  }
  if (!newest || days_between(*newest, day) <= year_days) return;
  doubts.push_back(doubt(feed.origin,
                         fmt::format("the newest quote of {} is of {}, {} days old", feed.id,
                                     to_iso(*newest), days_between(*newest, day)),
                         fmt::format("ask again, then  pluckbook quote {} PRICE/UNIT", feed.id)));
}

}  // namespace

Date last_recorded_day(const Book& book) {
  Date last(boost::gregorian::neg_infin);
  const auto see = [&](std::optional<Date> day) {
    if (day && !day->is_special()) last = std::max(last, *day);
  };
  for (const Bag& bag : book.bags) {
    for (const auto& day : {std::optional(bag.plucked), bag.dried, bag.received, bag.spoiled}) {
      see(day);
    }
    if (bag.sent) see(bag.sent->date);
    for (const LabResult& result : bag.results) see(result.received);
  }
  for (const Move& move : book.moves) see(move.planned.value_or(move.date));
  for (const ConditionScore& score : book.scores) see(score.date);
  for (const Event& event : book.events) see(event.date);
  for (const Feed& feed : book.feeds) {
    for (const Quote& quote : feed.quotes) see(quote.date);
  }
  return last;
}

Problems doubts_on(const Book& book, Date day) {
  Problems doubts;
  for (const Herd& herd : book.herds) note_gap(book, herd, day, doubts);
  for (const Feed& feed : book.feeds) note_old_quote(feed, day, doubts);
  return doubts;
}

}  // namespace pluckbook
