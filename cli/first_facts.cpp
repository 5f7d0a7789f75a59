#include "cli/first_facts.h"

#include <fmt/format.h>

#include <functional>

#include "base/text.h"
#include "book/read.h"
#include "cli/open_book.h"
#include "cli/terminal.h"
#include "published/forage_classes.h"
#include "report/table.h"

namespace pluckbook::cli {
namespace {

struct Question {
  std::string option;  // without the dashes
  std::string words;
  std::string usual;  // taken when nothing is said; empty: left open
  std::function<Result<Done>(const std::string&)> read;
};

Result<Done> any_text(const std::string&) {
  return Done{};
}

Result<Done> read_forage(const std::string& text) {
  if (find_forage_class(text) != nullptr) return Done{};
  return usage_problem(fmt::format("no grass '{}' is known", shown(text)),
                       suggestion(text, forage_class_names()));
}

Result<Done> read_head(const std::string& text) {
  const auto head = parse_number(text);
  if (head && *head >= 1 && *head == static_cast<int>(*head)) return Done{};
  return usage_problem(fmt::format("'{}' is no number of head", shown(text)),
                       "write a whole number: 140");
}

Result<Done> read_calving(const std::string& text) {
  if (parse_date(text)) return Done{};
  return usage_problem(fmt::format("'{}' is not a date", shown(text)),
                       "write it as year-month-day: 2026-03-10");
}

/// The option's answer, else the asked one, else the usual.
Result<std::string> answer_to(const Question& question, const Arguments& arguments) {
  if (arguments.has(question.option)) {
    const std::string said = arguments.get(question.option);
    const Result<Done> done = question.read(said);
    if (!done) return done.problems();
    return said;
  }
  if (!on_terminal()) return question.usual;
  const std::string usual = question.usual.empty() ? "none yet" : question.usual;
  for (;;) {
    const auto said = ask(fmt::format("{} ({}): ", question.words, usual));
    if (!said)
      return usage_problem("the questions were not answered to the end", "nothing was written");
    if (said->empty()) return question.usual;
    const Result<Done> done = question.read(*said);
    if (done) return *said;
    for (const Problem& problem : done.problems()) {
      const std::string text = to_text(problem);
      std::fwrite(text.data(), 1, text.size(), stdout);
    }
  }
}

/// "North Draws" -> "north-draws"; `otherwise` where no letter of an id is left.
std::string id_of(const std::string& name, const std::string& otherwise) {
  std::string id;
  for (const char c : name) {
    const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    const bool plain = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9');
    if (plain) id += small;
    if (!plain && !id.empty() && id.back() != '-') id += '-';
  }
  while (!id.empty() && id.back() == '-') id.pop_back();
  return id.empty() ? otherwise : id;
}

/// Asked only where a pasture was named.
Result<WrittenKeys> pasture_keys(const Arguments& arguments, const std::string& name) {
  const std::string known = fmt::format("grasses: {}", fmt::join(forage_class_names(), ", "));
  Result<std::string> forage = answer_to(
      {"forage", wrapped(known) + "Its grass", "northern mixed-grass", read_forage}, arguments);
  if (!forage) return forage.problems();
  return WrittenKeys{{"id", id_of(name, "pasture-1")}, {"name", name}, {"forage", *forage}};
}

/// Asked only where a herd was named; cows at condition 5, to be written out in the file later.
Result<WrittenKeys> herd_keys(const Arguments& arguments, const std::string& name, UnitSystem units,
                              Date today) {
  const auto read_weight = [units](const std::string& text) -> Result<Done> {
    const Result<KgBody> weight = parse_weight(text, units);
    if (!weight) return weight.problems();
    return Done{};
  };
  Result<std::string> head = answer_to({"head", "How many head", "100", read_head}, arguments);
  if (!head) return head.problems();
  const std::string usual = units == UnitSystem::us ? "1200 lb" : "545 kg";
  Result<std::string> weight =
      answer_to({"weight", "What a grown cow weighs, lb or kg", usual, read_weight}, arguments);
  if (!weight) return weight.problems();
  const std::string spring = fmt::format("{}-03-15", static_cast<int>(today.year()));
  Result<std::string> calving = answer_to(
      {"calving", "When the first calf of the season came", spring, read_calving}, arguments);
  if (!calving) return calving.problems();
  return WrittenKeys{{"id", id_of(name, "herd-1")}, {"name", name},      {"head", *head},
                     {"class", "mature cow"},       {"weight", *weight}, {"peak_milk", "20 lb/day"},
                     {"calving", *calving}};
}

/// A place that weighs its cows in kilograms keeps its book in them.
UnitSystem units_told_by(const WrittenKeys& herd, UnitSystem otherwise) {
  for (const auto& [key, value] : herd) {
    if (key == "weight" && value.ends_with("kg")) return UnitSystem::metric;
    if (key == "weight" && value.ends_with("lb")) return UnitSystem::us;
  }
  return otherwise;
}

}  // namespace

Result<BookFacts> first_facts(const Arguments& arguments, const std::string& usual_name,
                              Date today) {
  BookFacts facts;
  facts.currency = arguments.get("currency", "USD");
  Result<std::string> name =
      answer_to({"name", "What the place is called", usual_name, any_text}, arguments);
  if (!name) return name.problems();
  facts.name = *name;
  Result<UnitSystem> units = units_of(arguments, UnitSystem::us);
  if (!units) return units.problems();
  facts.units = *units;
  Result<std::string> pasture =
      answer_to({"pasture", "A pasture that is plucked, by name", "", any_text}, arguments);
  if (!pasture) return pasture.problems();
  if (pasture->empty() && arguments.has("herd")) {
    return usage_problem("--herd is given, and no pasture it grazes",
                         "name one: --pasture 'North Draws'; nothing was written");
  }
  if (pasture->empty()) return facts;
  Result<WrittenKeys> grass = pasture_keys(arguments, *pasture);
  if (!grass) return grass.problems();
  facts.pasture = *grass;
  Result<std::string> herd =
      answer_to({"herd", "The cows that graze it, by name", "", any_text}, arguments);
  if (!herd) return herd.problems();
  if (herd->empty()) return facts;
  Result<WrittenKeys> cows = herd_keys(arguments, *herd, facts.units, today);
  if (!cows) return cows.problems();
  facts.herd = *cows;
  if (!arguments.has("units")) facts.units = units_told_by(facts.herd, facts.units);
  facts.move = {{"date", to_iso(today)},
                {"herd", facts.herd.front().second},
                {"pasture", facts.pasture.front().second}};
  return facts;
}

}  // namespace pluckbook::cli
