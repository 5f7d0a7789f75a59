#include "advice/alternative.h"

#include <algorithm>

namespace pluckbook {
namespace {

Herd& herd_in(Book& book, const std::string& id) {
  return *std::find_if(book.herds.begin(), book.herds.end(),
                       [&](const Herd& herd) { return herd.id == id; });
}

void split_off(Book& book, const std::string& herd, const WhatIf& what_if, Date as_of) {
  const std::string& group = what_if.split->id;
  herd_in(book, herd).head -= what_if.split->head;
  std::vector<Move> moves;
  for (Move move : book.moves) {
    if (move.herd != herd) continue;
    move.herd = group;
    moves.push_back(std::move(move));
  }
  if (what_if.split_pasture) moves = {{as_of, group, *what_if.split_pasture, false, {}}};
  book.moves.insert(book.moves.end(), moves.begin(), moves.end());
  book.herds.push_back(*what_if.split);
}

void quote_anew(Book& book, const QuoteAhead& buy) {
  for (Feed& feed : book.feeds)
    if (feed.id == buy.feed)
      feed.quotes.insert(feed.quotes.end(), buy.quotes.begin(), buy.quotes.end());
}

/// The score of a group at the end, had it stayed where the others graze and been fed as they are.
Result<std::optional<double>> fed_alike(const Book& book, const Herd& group,
                                        const Schedule& ration) {
  Herd among_the_others = group;
  among_the_others.id = ration.herd->id;
  Result<std::vector<FeedingWindow>> windows =
      windows_ahead(book, among_the_others, ration.settings.windows);
  if (!windows) return windows.problems();
  Schedule alike = ration;
  alike.herd = &group;
  for (std::size_t i = 0; i < alike.windows.size(); ++i)
    alike.windows[i].window = std::move((*windows)[i]);
  const std::optional<ConditionAhead> condition = condition_ahead(book, alike);
  return condition ? std::optional(condition->fed) : std::nullopt;
}

}  // namespace

Book book_of(const Book& book, const std::string& herd, const WhatIf& what_if, Date as_of) {
  Book changed = book;
  if (what_if.wean) herd_in(changed, herd).weaning = what_if.wean;
  if (what_if.move) {
    std::erase_if(changed.moves, [&](const Move& move) {
      return move.herd == herd && move.date >= what_if.move->date;
    });
    changed.moves.push_back({what_if.move->date, herd, what_if.move->pasture, false, {}});
  }
  if (what_if.buy) quote_anew(changed, *what_if.buy);
  if (!what_if.only.empty())
    std::erase_if(changed.feeds, [&](const Feed& feed) {
      return std::find(what_if.only.begin(), what_if.only.end(), feed.id) == what_if.only.end();
    });
  if (what_if.feed_nothing) changed.feeds.clear();
  if (what_if.split) split_off(changed, herd, what_if, as_of);
  return changed;
}

Result<Alternative> alternative_of(std::shared_ptr<const Book> book, const std::string& herd,
                                   const WhatIf& what_if, const ScheduleSettings& settings) {
  Alternative alternative;
  alternative.what_if = &what_if;
  alternative.book = std::move(book);
  std::vector<std::string> ids{herd};
  if (what_if.split) ids.push_back(what_if.split->id);
  for (const std::string& id : ids) {
    const Herd& group = *find_herd(*alternative.book, id);
    Result<Schedule> schedule = schedule_for(*alternative.book, group, settings);
    if (!schedule) return schedule.problems();
    FedGroup fed{std::move(*schedule), std::nullopt};
    fed.condition = condition_ahead(*alternative.book, fed.schedule);
    alternative.groups.push_back(std::move(fed));
  }
  if (what_if.split) {
    const Herd& group = *alternative.groups.back().schedule.herd;
    auto alike = fed_alike(*alternative.book, group, alternative.groups.front().schedule);
    if (!alike) return alike.problems();
    alternative.split_fed_alike = *alike;
  }
  return alternative;
}

bool Alternative::covers() const {
  return std::all_of(groups.begin(), groups.end(),
                     [](const FedGroup& group) { return group.schedule.within_reach(); });
}

double Alternative::cost() const {
  double money = 0;
  for (const FedGroup& group : groups) money += group.schedule.cost();
  return money;
}

std::optional<double> Alternative::score_at_end() const {
  std::optional<double> thinnest;
  for (const FedGroup& group : groups)
    if (group.condition) thinnest = std::min(thinnest.value_or(9), group.condition->fed);
  return thinnest;
}

}  // namespace pluckbook
