#include "cli/whereabouts.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace pluckbook::cli {
namespace {

// Common practice: air-dry within a day or two, before it moulds; mail it early in the week.
constexpr long drying_days = 2;
constexpr long mailing_days = 7;
constexpr int usual_laboratory_days = 10;

std::string since(Date day) {
  return "since " + in_words_without_year(day);
}

void at_the_laboratory(Whereabouts& w, const Bag& bag, const Book& book, Date today) {
  const Laboratory* lab = find_laboratory(book, bag.sent->lab);
  const std::string name = lab != nullptr          ? lab->name
                           : bag.sent->lab.empty() ? "the laboratory"
                                                   : bag.sent->lab;
  const std::string id = bag.sent->lab.empty() ? "laboratory" : bag.sent->lab;
  w.step = bag.received ? Step::at_laboratory : Step::sent;
  w.where = bag.received ? fmt::format("{} has it {}", id, since(*bag.received))
                         : fmt::format("mailed to {} {}", id, since(bag.sent->date));
  const Date expected = bag.sent->date + Days(lab == nullptr ? usual_laboratory_days : lab->days);
  w.late = std::max(0L, days_between(expected, today));
  if (w.late == 0) return;
  w.due = fmt::format("{} day{} late: call {}", w.late, w.late == 1 ? "" : "s", name);
}

}  // namespace

bool dried_slowly(const Bag& bag, Date day) {
  return days_between(bag.plucked, day) > drying_days;
}

bool has_too_little(const Bag& bag) {
  constexpr double half_full = 50;
  return bag.fill && *bag.fill < half_full;
}

Whereabouts where_is(const Bag& bag, const Book& book, Date today) {
  Whereabouts w;
  w.bag = &bag;
  if (!bag.results.empty()) {
    w.step = Step::answered;
    w.where = "answered " + in_words_without_year(bag.results.back().received);
  } else if (bag.lost) {
    w.step = Step::lost;
    w.where = "lost " + in_words_without_year(*bag.lost);
  } else if (bag.spoiled) {
    w.step = Step::spoiled;
    w.where = "spoiled " + in_words_without_year(*bag.spoiled);
  } else if (bag.sent) {
    at_the_laboratory(w, bag, book, today);
  } else if (bag.dried) {
    w.step = Step::dry;
    w.where = "dry " + since(*bag.dried);
    w.due = days_between(*bag.dried, today) > mailing_days ? "dry for over a week: mail it"
                                                           : "mail it early in the week";
  } else {
    w.where = "drying " + since(bag.plucked);
    if (dried_slowly(bag, today)) {
      w.due = fmt::format("drying for {} days: look for mould, mark it dried or spoiled",
                          days_between(bag.plucked, today));
    }
  }
  const bool at_home = w.step == Step::drying || w.step == Step::dry;
  if (at_home && has_too_little(bag)) {
    w.due += w.due.empty() ? "too little in it" : "; too little in it";
  }
  return w;
}

std::vector<Whereabouts> bags_under_way(const Book& book, Date today) {
  std::vector<Whereabouts> all;
  for (const Bag& bag : book.bags) {
    Whereabouts w = where_is(bag, book, today);
    if (w.step < Step::answered) all.push_back(std::move(w));
  }
  std::stable_sort(all.begin(), all.end(), [](const Whereabouts& a, const Whereabouts& b) {
    return std::tuple(-a.late, a.due.empty()) < std::tuple(-b.late, b.due.empty());
  });
  return all;
}

}  // namespace pluckbook::cli
