// samples/YEAR/PASTURE.yaml: the bags of a pasture and what laboratories said of them.
#include <algorithm>

#include "book/lab_values.h"
#include "book/read_parts.h"

namespace pluckbook {
namespace {

// ---- one result --------------------------------------------------------------------------------

// A result is known by the day it was received, kept as written.
Value<std::string> received_date_value() {
  return {"date", "2026-06-25",
          [](const Dialect& dialect, std::string_view name,
             std::string_view text) -> Result<std::string> {
            const Result<Date> date = date_value("2026-06-25").parse(dialect, name, text);
            if (!date) return date.problems();
            return to_iso(*date);
          }};
}

const Keys<LabResult>& result_keys() {
  static const Keys<LabResult> table = [] {
    Keys<LabResult> keys = {
        "result",
        {
            key("received", Need::required, date_value("2026-06-25"), &LabResult::received),
            key("lab", Need::optional, id_value("county"), &LabResult::lab),
            key("basis", Need::optional,
                choice_value<Basis>("dry matter", {{"dry matter", Basis::dry_matter},
                                                   {"as received", Basis::as_received}}),
                &LabResult::basis),
            key("supersedes", Need::optional, received_date_value(), &LabResult::supersedes),
            key("tdn_by", Need::optional, text_value("summative"), &LabResult::tdn_by),
            key("note", Need::optional, text_value("dried in an oven"), &LabResult::note),
        }};
    const auto value = [&](std::string_view name, std::string_view kind) {
      keys.keys.push_back(
          {name, Need::optional, kind, "10.4",
           [](FileReading& reading, const YamlNode::Entry& entry, LabResult& result) {
             const auto text = scalar_text(reading, entry.key.text, entry.value);
             if (!text) return;
             const Result<TypedValue> typed = parse_analyte(entry.key.text, *text);
             if (!typed) return reading.note(entry.value, typed.problems());
             if (auto twice = keep_figure(result.values, *typed))
               reading.note(entry.value, {*std::move(twice)});
           }});
    };
    for (const Analyte& analyte : analytes())
      value(analyte.name, analyte.unit.empty() ? "number" : analyte.unit);
    for (const OtherName& other : other_names()) value(other.name, other.unit);
    return keys;
  }();
  return table;
}

// The key the figure of an analyte was written under.
const YamlNode& at_analyte(const YamlNode& node, std::string_view analyte) {
  for (const YamlNode::Entry& entry : node.entries)
    if (analyte_named(entry.key.text) == analyte) return entry.value;
  return node;
}

std::string slip_remedy(const Analyte& analyte, double value) {
  if (analyte.unit == "%" && value > analyte.refuse_high) {
    const std::string tenth = said(value / 10);
    const std::string shown_value = said(value);
    return fmt::format(
        "if the laboratory printed {}, write {}; if it printed g/kg, write \"{} g/kg\"", tenth,
        tenth, shown_value);
  }
  if (analyte.unit == "%" && value > 0 && value <= 0.9) {
    return fmt::format("if {} is a fraction, write {}", said(value), said(value * 100));
  }
  return "look at the laboratory's page again";
}

std::string unusual_remedy(const Analyte& analyte) {
  if (analyte.name != "nitrate_n_ppm") return "keep it if the page says so";
  return "nitrate can kill, pregnant cows lose calves first: ask a veterinarian before grazing";
}

void check_figure(FileReading& reading, const YamlNode& node, const LabResult& result,
                  const Analyte& analyte, double printed) {
  const bool as_received = result.basis == Basis::as_received && analyte.part_of == PartOf::page;
  const double value = as_received ? printed * 100 / result.values.at("dm") : printed;
  const std::string unit(analyte.unit);
  const std::string_view of = analyte.part_of == PartOf::page ? " of dry matter" : "";
  const std::string figure =
      fmt::format("{} {} {}{}", analyte.in_words, said(value), unit, as_received ? of : "");
  if (value < analyte.refuse_low || value > analyte.refuse_high) {
    reading.error(at_analyte(node, analyte.name),
                  fmt::format("{} is outside {} to {} {}{}", figure, said(analyte.refuse_low),
                              said(analyte.refuse_high), unit, as_received ? "" : of),
                  slip_remedy(analyte, value));
  } else if (value < analyte.warn_low || value > analyte.warn_high) {
    reading.warn(at_analyte(node, analyte.name),
                 fmt::format("{} is unusual: outside {} to {} {}{}", figure, said(analyte.warn_low),
                             said(analyte.warn_high), unit, as_received ? "" : of),
                 unusual_remedy(analyte));
  }
}

// The part is not below the whole.
void check_part(FileReading& reading, const YamlNode& node, const LabResult& result,
                std::string_view part, std::string_view whole) {
  const auto small = result.values.find(std::string(part));
  const auto large = result.values.find(std::string(whole));
  if (small == result.values.end() || large == result.values.end()) return;
  if (small->second < large->second) return;
  const Analyte& a = *find_analyte(part);
  const Analyte& b = *find_analyte(whole);
  reading.error(
      at_key(node, part),
      fmt::format("{} {} % is not below {} {} %", a.in_words, said(small->second), b.in_words,
                  said(large->second)),
      fmt::format("{} is a part of {}: check whether they changed places", a.in_words, b.in_words));
}

void check_basis(FileReading& reading, const YamlNode& node, const LabResult& result) {
  if (node.find("basis") == nullptr && !result.values.empty()) {
    reading.warn(node, "this result does not say its basis; taken as dry matter",
                 "add  basis: dry matter  or  basis: as received, as the page says");
  }
  if (looks_as_received(result)) {
    reading.warn(
        at_key(node, "cp"),
        fmt::format("crude protein {} % of dry matter from a bag of {} % dry matter is low",
                    said(result.values.at("cp")), said(result.values.at("dm"))),
        "if it stands in the as received column, write  basis: as received");
  }
}

void check_result(FileReading& reading, const YamlNode& node, const LabResult& result) {
  const auto dm = result.values.find("dm");
  if (result.values.empty()) {
    reading.error(node, "this result holds no figure", "add what was printed:  cp: 10.4");
  }
  if (result.basis == Basis::as_received && (dm == result.values.end() || dm->second <= 0)) {
    reading.error(at_key(node, "basis"), "a result as received needs the dry matter",
                  "add  dm: 92.1  (100 less the moisture)");
    return;
  }
  check_basis(reading, node, result);
  for (const auto& [name, value] : result.values) {
    check_figure(reading, node, result, *find_analyte(name), value);
  }
  check_part(reading, node, result, "adf", "ndf");
  check_part(reading, node, result, "lignin", "adf");
  check_part(reading, node, result, "adicp", "cp");
}

// ---- one bag -----------------------------------------------------------------------------------

const Keys<Sent>& sent_keys() {
  static const Keys<Sent> table = {
      "sending",
      {
          key("date", Need::required, date_value("2026-06-15"), &Sent::date),
          key("lab", Need::optional, id_value("county"), &Sent::lab),
      }};
  return table;
}

void read_sent(FileReading& reading, const YamlNode::Entry& entry, Bag& bag) {
  Sent sent;
  if (entry.value.kind == YamlNode::Kind::map) {
    read_record(reading, entry.value, sent_keys(), sent);
  } else if (auto day = read_value(reading, "sent", entry.value, date_value("2026-06-15"))) {
    sent.date = *day;
  }
  if (!sent.date.is_special()) bag.sent = std::move(sent);
}

void read_results(FileReading& reading, const YamlNode::Entry& entry, Bag& bag) {
  for (const YamlNode& node : items_of(reading, entry.value, "result")) {
    LabResult result;
    result.origin = reading.origin(node);
    const std::size_t before = reading.problem_count();
    read_record(reading, node, result_keys(), result);
    if (reading.problem_count() == before) check_result(reading, node, result);
    const bool known = std::any_of(
        bag.results.begin(), bag.results.end(),
        [&](const LabResult& other) { return to_iso(other.received) == result.supersedes; });
    if (!result.supersedes.empty() && !known) {
      reading.error(at_key(node, "supersedes"),
                    fmt::format("no result above was received on {}", result.supersedes),
                    "write the received date of the result this one corrects");
    }
    bag.results.push_back(std::move(result));
  }
}

const Keys<Bag>& bag_keys() {
  static const Keys<Bag> table = {
      "bag",
      {
          key("bag", Need::required, id_value("26-north-01"), &Bag::id),
          key("plucked", Need::required, date_value("2026-06-12"), &Bag::plucked),
          key("method", Need::optional,
              choice_value<Method>("hand-plucked", {{"hand-plucked", Method::hand_plucked},
                                                    {"clipped", Method::clipped}}),
              &Bag::method),
          key("stops", Need::optional, whole_value("22", 1, 1000), &Bag::stops),
          key("fill", Need::optional, percent_value("70", 0, 100), &Bag::fill),
          key("dried", Need::optional, date_value("2026-06-13"), &Bag::dried),
          {"sent",
           Need::optional,
           "sending",
           "{date: 2026-06-15, lab: county}",
           read_sent,
           {},
           facts_of(sent_keys())},
          key("received", Need::optional, date_value("2026-06-18"), &Bag::received),
          key("spoiled", Need::optional, date_value("2026-06-20"), &Bag::spoiled),
          key("lost", Need::optional, date_value("2026-07-10"), &Bag::lost),
          key("note", Need::optional, text_value("short walk, storm coming in"), &Bag::note),
          {"results",
           Need::optional,
           "list",
           "- {received: 2026-06-25, basis: dry matter, cp: 10.4}",
           read_results,
           {},
           facts_of(result_keys())},
      }};
  return table;
}

void check_order(FileReading& reading, const YamlNode& node, std::string_view what,
                 std::optional<Date> day, std::string_view before, Date earlier) {
  if (!day || *day >= earlier) return;
  reading.error(
      node,
      fmt::format("{} {} is before it was {}, {}", what, to_iso(*day), before, to_iso(earlier)),
      "one of the two dates is wrong");
}

void check_dates(FileReading& reading, const YamlNode& node, const Bag& bag) {
  const auto after_plucked = [&](std::string_view what, std::optional<Date> day) {
    check_order(reading, at_key(node, what), what, day, "plucked", bag.plucked);
  };
  after_plucked("dried", bag.dried);
  after_plucked("spoiled", bag.spoiled);
  after_plucked("lost", bag.lost);
  if (bag.sent) after_plucked("sent", bag.sent->date);
  check_order(reading, at_key(node, "received"), "received", bag.received,
              bag.sent ? "sent" : "plucked", bag.sent ? bag.sent->date : bag.plucked);
  const YamlNode& results = at_key(node, "results");
  for (std::size_t i = 0; i < bag.results.size() && i < results.items.size(); ++i) {
    const YamlNode& at = at_key(results.items[i], "received");
    check_order(reading, at, "received", bag.results[i].received, bag.sent ? "sent" : "plucked",
                bag.sent ? bag.sent->date : bag.plucked);
  }
}

void check_laboratories(FileReading& reading, const YamlNode& node, const Bag& bag,
                        const Book& book) {
  if (bag.sent && !bag.sent->lab.empty()) {
    note_unknown_id(reading, at_key(at_key(node, "sent"), "lab"), book.labs, bag.sent->lab,
                    "laboratory", "book.yaml");
  }
  const YamlNode& results = at_key(node, "results");
  for (std::size_t i = 0; i < bag.results.size() && i < results.items.size(); ++i) {
    if (bag.results[i].lab.empty()) continue;
    note_unknown_id(reading, at_key(results.items[i], "lab"), book.labs, bag.results[i].lab,
                    "laboratory", "book.yaml");
  }
}

}  // namespace

bool looks_as_received(const LabResult& result) {
  const auto dm = result.values.find("dm");
  const auto cp = result.values.find("cp");
  return result.basis == Basis::dry_matter && dm != result.values.end() && dm->second < 60 &&
         cp != result.values.end() && cp->second < 6;
}

std::vector<KeyFact> bag_facts() {
  return facts_of(bag_keys());
}

std::vector<Bag> read_samples(FileReading& reading, const YamlNode& root,
                              const std::string& pasture, const Book& book) {
  std::vector<Bag> bags;
  bags.reserve(root.items.size());
  UsedIds used;
  for (const YamlNode& node : items_of(reading, root, "bag")) {
    Bag bag;
    bag.pasture = pasture;
    bag.origin = reading.origin(node);
    const std::size_t before = reading.problem_count();
    read_record(reading, node, bag_keys(), bag);
    note_used_id(reading, node, used, bag, "bag");
    check_laboratories(reading, node, bag, book);
    if (reading.problem_count() == before) check_dates(reading, node, bag);
    bags.push_back(std::move(bag));
  }
  return bags;
}

}  // namespace pluckbook
