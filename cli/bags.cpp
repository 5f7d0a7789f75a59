#include <fmt/format.h>

#include <algorithm>

#include "cli/command.h"
#include "cli/open_book.h"
#include "report/json.h"
#include "report/table.h"

namespace pluckbook::cli {
namespace {

// Common practice: air-dry within a day or two, before it moulds.
constexpr long drying_days = 3;
constexpr long usual_lab_days = 10;

struct Whereabouts {
  const Bag* bag = nullptr;
  std::string state;  // "at the laboratory", "drying", ...
  std::string due;    // what is late, and what to do; empty when nothing is
};

Whereabouts where_is(const Bag& bag, const Book& book, Date today) {
  Whereabouts w{&bag, "", ""};
  if (bag.lost) {
    w.state = "lost";
  } else if (bag.spoiled) {
    w.state = "spoiled";
  } else if (!bag.results.empty()) {
    w.state = "answered " + in_words_without_year(bag.results.back().received);
  } else if (bag.sent) {
    const Laboratory* lab = find_laboratory(book, bag.sent->lab);
    const Date expected = bag.sent->date + Days(lab == nullptr ? usual_lab_days : lab->days);
    w.state = fmt::format("{} since {}", bag.sent->lab, in_words_without_year(bag.sent->date));
    if (today > expected) {
      w.due = fmt::format("{} days late: call {}", days_between(expected, today),
                          lab == nullptr ? bag.sent->lab : lab->name);
    }
  } else if (bag.dried) {
    w.state = "dry since " + in_words_without_year(*bag.dried);
    w.due = "mail it";
  } else {
    w.state = "drying since " + in_words_without_year(bag.plucked);
    if (days_between(bag.plucked, today) > drying_days) w.due = "dried long ago? mark it dried";
  }
  return w;
}

}  // namespace

Result<Answer> run_bags(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  std::vector<Whereabouts> all;
  for (const Bag& bag : opened->known.bags) {
    const bool ended = !bag.results.empty() || bag.lost || bag.spoiled;
    if (!ended || arguments.has("all")) all.push_back(where_is(bag, opened->known, opened->as_of));
  }
  std::stable_sort(all.begin(), all.end(), [](const Whereabouts& a, const Whereabouts& b) {
    return !a.due.empty() && b.due.empty();
  });
  Answer answer;
  if (arguments.has("json")) {
    Json json = document("bags");
    json["as_of"] = to_iso(opened->as_of);
    json["bags"] = Json::array();
    for (const Whereabouts& w : all) {
      json["bags"].push_back({{"bag", w.bag->id},
                              {"pasture", w.bag->pasture},
                              {"plucked", to_iso(w.bag->plucked)},
                              {"state", w.state},
                              {"due", w.due.empty() ? Json(nullptr) : Json(w.due)}});
    }
    answer.text = printed(json);
    return answer;
  }
  const auto late = std::count_if(all.begin(), all.end(), [](const Whereabouts& w) {
    return w.due.find("late") != std::string::npos;
  });
  answer.text =
      fmt::format("{} bag{} under way, {} late\n", all.size(), all.size() == 1 ? "" : "s", late);
  if (arguments.has("all")) answer.text = fmt::format("{} bags, {} late\n", all.size(), late);
  Table table({{"bag", Align::left}, {"plucked", Align::left}, {"where", Align::left}});
  for (const Whereabouts& w : all) {
    if (!w.due.empty()) answer.text += fmt::format("{}: {}\n", w.bag->id, w.due);
    table.add({w.bag->id, to_iso(w.bag->plucked), w.state});
  }
  if (!table.empty()) answer.text += "\n" + table.text();
  return answer;
}

}  // namespace pluckbook::cli
