#include "book/records.h"

#include <algorithm>
#include <utility>

namespace pluckbook {
namespace {

template <class Record>
const Record* find_id(const std::vector<Record>& records, const std::string& id) {
  const auto found = std::find_if(records.begin(), records.end(),
                                  [&](const Record& record) { return record.id == id; });
  return found == records.end() ? nullptr : &*found;
}

void forget_after(Bag& bag, Date day) {
  const auto forget = [day](std::optional<Date>& mark) {
    if (mark && *mark > day) mark.reset();
  };
  forget(bag.dried);
  forget(bag.received);
  forget(bag.spoiled);
  forget(bag.lost);
  if (bag.sent && bag.sent->date > day) bag.sent.reset();
  std::erase_if(bag.results, [day](const LabResult& result) { return result.received > day; });
}

}  // namespace

const Pasture* find_pasture(const Book& book, const std::string& id) {
  return find_id(book.pastures, id);
}
const Herd* find_herd(const Book& book, const std::string& id) {
  return find_id(book.herds, id);
}
const Bag* find_bag(const Book& book, const std::string& id) {
  return find_id(book.bags, id);
}
const Laboratory* find_laboratory(const Book& book, const std::string& id) {
  return find_id(book.labs, id);
}

const Move* move_of(const Book& book, const std::string& herd, Date on) {
  const Move* last = nullptr;
  for (const Move& move : book.moves) {
    if (move.herd != herd || move.date > on) continue;
    if (last == nullptr || move.date >= last->date) last = &move;
  }
  return last;
}

Book as_of(Book book, Date day) {
  std::erase_if(book.bags, [day](const Bag& bag) { return bag.plucked > day; });
  for (Bag& bag : book.bags) forget_after(bag, day);
  for (Pasture& pasture : book.pastures)
    std::erase_if(pasture.sampled_years, [day](int year) { return year > day.year(); });
  std::erase_if(book.moves, [day](const Move& move) {
    return move.date > day && (!move.planned || *move.planned > day);
  });
  std::erase_if(book.events, [day](const Event& event) { return event.date > day; });
  std::erase_if(book.scores, [day](const ConditionScore& score) { return score.date > day; });
  for (Feed& feed : book.feeds) {
    std::erase_if(feed.quotes,
                  [day](const Quote& quote) { return quote.date && *quote.date > day; });
  }
  return book;
}

Book as_of_today(Book book, Date today) {
  std::vector<Move> moves = book.moves;
  book = as_of(std::move(book), today);
  book.moves = std::move(moves);
  return book;
}

namespace {

/// Does that correction have a result of its own laboratory to correct?
bool corrects_its_own_lab(const Bag& bag, const LabResult& correction) {
  for (const LabResult& above : bag.results) {
    if (&above == &correction) return false;
    if (to_iso(above.received) == correction.supersedes &&
        lab_of(bag, above) == lab_of(bag, correction))
      return true;
  }
  return false;
}

}  // namespace

const LabResult* correction_of(const Bag& bag, const LabResult& result) {
  bool below = false;
  for (const LabResult& other : bag.results) {
    if (below && other.supersedes == to_iso(result.received) &&
        (lab_of(bag, other) == lab_of(bag, result) || !corrects_its_own_lab(bag, other)))
      return &other;
    below = below || &other == &result;
  }
  return nullptr;
}

std::vector<const LabResult*> corrected_by(const Bag& bag, const LabResult& correction) {
  std::vector<const LabResult*> corrected;
  for (const LabResult& result : bag.results)
    if (correction_of(bag, result) == &correction) corrected.push_back(&result);
  return corrected;
}

std::string lab_of(const Bag& bag, const LabResult& result) {
  return result.lab.empty() && bag.sent ? bag.sent->lab : result.lab;
}

std::vector<const LabResult*> standing_results(const Bag& bag) {
  std::vector<const LabResult*> standing;
  for (const LabResult& result : bag.results) {
    if (correction_of(bag, result) == nullptr) standing.push_back(&result);
  }
  return standing;
}

}  // namespace pluckbook
