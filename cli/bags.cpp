#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "book/lab_values.h"
#include "cli/command.h"
#include "cli/open_book.h"
#include "cli/whereabouts.h"
#include "report/json.h"
#include "report/table.h"

namespace pluckbook::cli {
namespace {

// ---- all of them -------------------------------------------------------------------------------

std::vector<Whereabouts> bags_asked(const Arguments& arguments, const Opened& opened) {
  std::vector<Whereabouts> all = bags_under_way(opened.known, opened.as_of);
  if (!arguments.has("all")) return all;
  for (const Bag& bag : opened.known.bags) {
    Whereabouts w = where_is(bag, opened.known, opened.as_of);
    if (w.step >= Step::answered) all.push_back(std::move(w));
  }
  return all;
}

Json bags_json(const std::vector<Whereabouts>& all, Date as_of) {
  Json json = document("bags");
  json["as_of"] = to_iso(as_of);
  json["bags"] = Json::array();
  for (const Whereabouts& w : all) {
    json["bags"].push_back({{"bag", w.bag->id},
                            {"pasture", w.bag->pasture},
                            {"plucked", to_iso(w.bag->plucked)},
                            {"state", w.where},
                            {"due", w.due.empty() ? Json(nullptr) : Json(w.due)},
                            {"days_late", w.late}});
  }
  return json;
}

std::string bags_text(const std::vector<Whereabouts>& all) {
  const auto late = std::count_if(all.begin(), all.end(), [](const auto& w) { return w.late > 0; });
  const auto ended =
      std::count_if(all.begin(), all.end(), [](const auto& w) { return w.step >= Step::answered; });
  const auto under_way = static_cast<long>(all.size()) - ended;
  std::string text =
      fmt::format("{} bag{} under way, {} late", under_way, under_way == 1 ? "" : "s", late);
  text += ended == 0 ? "\n" : fmt::format(", {} ended\n", ended);
  Table table({{"bag", Align::left}, {"plucked", Align::left}, {"where", Align::left}});
  for (const Whereabouts& w : all) {
    if (!w.due.empty()) text += wrapped(fmt::format("{}: {}", w.bag->id, w.due), 80, 2);
    table.add({w.bag->id, to_iso(w.bag->plucked), w.where});
  }
  if (!table.empty()) text += "\n" + table.text();
  return text;
}

// ---- one of them -------------------------------------------------------------------------------

struct Happening {
  Date date;
  std::string what;
};

std::string figures(const LabResult& result) {
  std::string text = result.basis == Basis::dry_matter ? "dry matter" : "as received";
  for (const Analyte& analyte : analytes()) {
    const auto value = result.values.find(std::string(analyte.name));
    if (value == result.values.end()) continue;
    text += fmt::format(", {} {}", analyte.name, shortest(value->second));
  }
  return text;
}

/// "2nd": its place among the bag's results of that day, where there are several.
std::string place_in_day(const Bag& bag, const LabResult& result) {
  int place = 0, all = 0;
  for (const LabResult& other : bag.results) {
    if (other.received != result.received) continue;
    ++all;
    if (&other == &result) place = all;
  }
  if (all < 2) return "";
  static constexpr const char* endings[] = {"th", "st", "nd", "rd"};
  const bool plain = place % 10 < 4 && place / 10 % 10 != 1;
  return std::to_string(place) + endings[plain ? place % 10 : 0];
}

/// "that of 2026-09-05", "the 2nd of 2026-09-05"
std::string which(const Bag& bag, const LabResult& result) {
  const std::string place = place_in_day(bag, result);
  return fmt::format("{} of {}", place.empty() ? "that" : "the " + place, to_iso(result.received));
}

std::string result_in_words(const Bag& bag, const LabResult& result) {
  const std::string place = place_in_day(bag, result);
  std::string text = place.empty() ? "result" : place + " result";
  if (!result.lab.empty()) text += " of " + result.lab;
  text += fmt::format(" ({}:{}): {}", result.origin.file, result.origin.line, figures(result));
  for (const LabResult* corrected : corrected_by(bag, result))
    text += "; corrects " + which(bag, *corrected);
  if (const LabResult* correction = correction_of(bag, result))
    text += "; superseded by " + which(bag, *correction) + ", no longer used";
  if (!result.note.empty()) text += "; " + shown(result.note, 200);
  return text;
}

std::vector<Happening> happenings(const Bag& bag) {
  std::vector<Happening> all;
  std::string how = bag.method == Method::clipped ? "clipped" : "plucked";
  if (bag.stops) how += fmt::format(" at {} stops", *bag.stops);
  if (bag.fill) how += fmt::format(", {} % full", shortest(*bag.fill));
  if (!bag.note.empty()) how += "; " + shown(bag.note, 200);
  all.push_back({bag.plucked, how});
  if (bag.dried) all.push_back({*bag.dried, "dried"});
  if (bag.sent) {
    all.push_back({bag.sent->date, bag.sent->lab.empty() ? "sent" : "sent to " + bag.sent->lab});
  }
  if (bag.received) all.push_back({*bag.received, "received by the laboratory"});
  if (bag.spoiled) all.push_back({*bag.spoiled, "spoiled"});
  if (bag.lost) all.push_back({*bag.lost, "lost"});
  for (const LabResult& result : bag.results) {
    all.push_back({result.received, result_in_words(bag, result)});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Happening& a, const Happening& b) { return a.date < b.date; });
  return all;
}

Json history_json(const Bag& bag) {
  Json json = document("bag_history");
  json["bag"] = bag.id;
  json["pasture"] = bag.pasture;
  json["history"] = Json::array();
  for (const Happening& one : happenings(bag)) {
    json["history"].push_back({{"date", to_iso(one.date)}, {"what", one.what}});
  }
  return json;
}

std::string history_text(const Bag& bag) {
  std::string text =
      fmt::format("bag {} of {} ({}:{})\n", bag.id, bag.pasture, bag.origin.file, bag.origin.line);
  constexpr int after_date = 12;
  for (const Happening& one : happenings(bag)) {
    text += wrapped(fmt::format("{}  {}", to_iso(one.date), one.what), 80, after_date);
  }
  return text;
}

Result<Answer> run_bags(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Answer answer;
  if (arguments.has("history")) {
    Result<const Bag*> bag = bag_named(opened->known, arguments.get("history"));
    if (!bag) return bag.problems();
    answer.text = arguments.has("json") ? printed(history_json(**bag)) : history_text(**bag);
    return answer;
  }
  const std::vector<Whereabouts> all = bags_asked(arguments, *opened);
  answer.text = arguments.has("json") ? printed(bags_json(all, opened->as_of)) : bags_text(all);
  return answer;
}

}  // namespace

Command bags_command() {
  return {
      .name = "bags",
      .usage = "",
      .purpose = "every bag and where it is, overdue first",
      .group = "the bag",
      .examples = {"pluckbook bags", "pluckbook bags --as-of 2026-09-05",
                   "pluckbook bags --history 26-draws-08"},
      .options = {{"all", "", "bags that have ended too: answered, spoiled, lost"},
                  {"history", "BAG", "one bag: marks, results, corrections"}},
      .run = run_bags,
      .rows = "bags",
  };
}

}  // namespace pluckbook::cli
