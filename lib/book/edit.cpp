#include "book/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <tuple>
#include <vector>

#include "base/text.h"
#include "base/yaml.h"
#include "book/lab_values.h"
#include "book/read_parts.h"

namespace pluckbook {
namespace {

// ---- how records are written -------------------------------------------------------------------

std::string result_text(const LabResult& result) {
  std::string text = fmt::format("{{received: {}", to_iso(result.received));
  if (!result.lab.empty()) text += ", lab: " + as_scalar(result.lab);
  text +=
      fmt::format(", basis: {}", result.basis == Basis::dry_matter ? "dry matter" : "as received");
  for (const Analyte& analyte : analytes()) {
    const auto value = result.values.find(std::string(analyte.name));
    if (value == result.values.end()) continue;
    text += fmt::format(", {}: {}", analyte.name, number_text(value->second));
    if (!reads_back_plain(analyte, value->second)) text += fmt::format(" {}", analyte.unit);
  }
  if (!result.tdn_by.empty()) text += ", tdn_by: " + as_scalar(result.tdn_by);
  if (!result.supersedes.empty()) text += ", supersedes: " + as_scalar(result.supersedes);
  if (!result.note.empty()) text += ", note: " + as_scalar(result.note);
  return text + "}";
}

std::vector<std::string> bag_lines(const Bag& bag) {
  std::vector<std::string> lines = {
      "- bag: " + as_scalar(bag.id), "  plucked: " + to_iso(bag.plucked),
      fmt::format("  method: {}", bag.method == Method::clipped ? "clipped" : "hand-plucked")};
  if (bag.stops) lines.push_back(fmt::format("  stops: {}", *bag.stops));
  if (bag.fill) lines.push_back("  fill: " + number_text(*bag.fill));
  if (!bag.note.empty()) lines.push_back("  note: " + as_scalar(bag.note));
  return lines;
}

std::string_view mark_key(Mark::What what) {
  static constexpr std::array<std::string_view, 5> keys = {"dried", "sent", "received", "spoiled",
                                                           "lost"};
  return keys[static_cast<std::size_t>(what)];
}

std::string mark_text(const Mark& mark) {
  const std::string date = to_iso(mark.date);
  if (mark.what != Mark::What::sent) return fmt::format("{}: {}", mark_key(mark.what), date);
  if (mark.lab.empty()) return fmt::format("sent: {{date: {}}}", date);
  return fmt::format("sent: {{date: {}, lab: {}}}", date, as_scalar(mark.lab));
}

// ---- reading back ------------------------------------------------------------------------------

bool same(const LabResult& a, const LabResult& b) {
  return a.received == b.received && a.lab == b.lab && a.basis == b.basis &&
         a.supersedes == b.supersedes && a.tdn_by == b.tdn_by && a.note == b.note &&
         std::equal(a.values.begin(), a.values.end(), b.values.begin(), b.values.end(),
                    [](const auto& x, const auto& y) {
                      return x.first == y.first && std::abs(x.second - y.second) < 1e-6;
                    });
}

bool same(const Bag& a, const Bag& b) {
  const auto facts = [](const Bag& bag) {
    return std::tie(bag.id, bag.plucked, bag.method, bag.stops, bag.fill, bag.dried, bag.received,
                    bag.spoiled, bag.lost, bag.note);
  };
  const auto sent = [](const Bag& bag) {
    return bag.sent ? to_iso(bag.sent->date) + " " + bag.sent->lab : std::string();
  };
  return facts(a) == facts(b) && sent(a) == sent(b) &&
         std::equal(a.results.begin(), a.results.end(), b.results.begin(), b.results.end(),
                    [](const LabResult& x, const LabResult& y) { return same(x, y); });
}

struct Samples {
  YamlDocument document;
  std::vector<Bag> bags;
};

// The bags of a text. Its errors come without a place when the text is not yet in the file.
Result<Samples> read_bags(const Book& book, const std::string& file, const std::string& text) {
  Result<YamlDocument> document = read_yaml(file, text);
  if (!document) return document.problems();
  Problems problems;
  FileReading reading(*document, {book.units, book.currency}, problems);
  std::vector<Bag> bags = read_samples(reading, document->root, "", book);
  std::erase_if(problems, [](const Problem& p) { return p.severity == Severity::warning; });
  if (!problems.empty()) return problems;
  return Samples{*std::move(document), std::move(bags)};
}

// The splice, if the new text holds exactly the bags that are meant.
Result<Spliced> verified(const Book& book, const YamlDocument& before, Spliced spliced,
                         const std::vector<Bag>& meant, const std::string& addition) {
  Result<Samples> samples = read_bags(book, before.file, spliced.text);
  if (samples && std::equal(samples->bags.begin(), samples->bags.end(), meant.begin(), meant.end(),
                            [](const Bag& a, const Bag& b) { return same(a, b); })) {
    return spliced;
  }
  if (samples) return edit_by_hand(before, spliced.line, addition);
  Problems problems = samples.problems();
  for (Problem& problem : problems) {
    problem.place.reset();
    problem.remedy += "\nnothing was written";
  }
  return problems;
}

// ---- where an addition goes --------------------------------------------------------------------

struct BagPlace {
  const YamlNode* node;
  int index;
  int next_line;  // of the next bag, or one past the end
};

Result<BagPlace> find_place(const Samples& samples, const std::string& bag) {
  const std::vector<YamlNode>& items = samples.document.root.items;
  for (std::size_t i = 0; i < samples.bags.size() && i < items.size(); ++i) {
    if (samples.bags[i].id != bag) continue;
    const int after = Lines(samples.document.text).count() + 1;
    return BagPlace{&items[i], static_cast<int>(i),
                    i + 1 < items.size() ? items[i + 1].line : after};
  }
  return input_problem(fmt::format("there is no bag '{}' in {}", shown(bag), samples.document.file),
                       "pluckbook bags  lists them");
}

// The keys a bag is written with that stand before one.
std::span<const std::string_view> keys_before(std::string_view key) {
  static constexpr std::array<std::string_view, 12> order = {
      "bag",   "plucked", "method",   "stops",   "fill", "note",
      "dried", "sent",    "received", "spoiled", "lost", "results"};
  const auto rank = std::find(order.begin(), order.end(), key) - order.begin();
  return std::span(order).first(static_cast<std::size_t>(rank));
}

Spliced insert_key(const Samples& samples, const BagPlace& place, std::string_view key,
                   std::vector<std::string> added) {
  const std::string indent = spaces(place.node->entries.front().key.column - 1);
  for (std::string& line : added) line = indent + line;
  return insert_after(samples.document.text,
                      line_behind(samples.document, *place.node, place.next_line, keys_before(key)),
                      added);
}

Spliced insert_result(const Samples& samples, const BagPlace& place, const std::string& addition) {
  const std::string& text = samples.document.text;
  const YamlNode* results = place.node->find("results");
  if (is_flow(text, *place.node) && results == nullptr) {
    return insert_in_brackets(text, *place.node, "results: [" + addition + "]");
  }
  if (results == nullptr) {
    Spliced spliced = insert_key(samples, place, "results", {"results:", "  - " + addition});
    ++spliced.line;  // of the result, not of the key above it
    return spliced;
  }
  if (is_flow(text, *results)) return insert_in_brackets(text, *results, addition);
  // Behind the last result, as far in as the others.
  const auto key = std::find_if(place.node->entries.begin(), place.node->entries.end(),
                                [](const auto& entry) { return entry.key.text == "results"; });
  const auto next = std::next(key);
  const int boundary = next == place.node->entries.end() ? place.next_line : next->key.line;
  const int column = results->kind == YamlNode::Kind::list ? results->column : key->key.column + 2;
  return insert_after(text, Lines(text).last_record_before(boundary),
                      {spaces(column - 1) + "- " + addition});
}

}  // namespace

Result<Spliced> with_bag(const Book& book, const std::string& file, const std::string& text,
                         const Bag& bag) {
  Result<Samples> samples = read_bags(book, file, text);
  if (!samples) return samples.problems();
  std::vector<Date> plucked;
  for (const Bag& there : samples->bags) plucked.push_back(there.plucked);
  const std::size_t index = place_by_date(plucked, bag.plucked);
  const Result<Spliced> spliced =
      with_item(samples->document, index, bag_lines(bag), "- bag: " + bag.id);
  if (!spliced) return spliced.problems();
  std::vector<Bag> meant = samples->bags;
  meant.insert(meant.begin() + static_cast<std::ptrdiff_t>(index), bag);
  return verified(book, samples->document, *spliced, meant, "- bag: " + bag.id);
}

Result<Spliced> with_mark(const Book& book, const std::string& file, const std::string& text,
                          const std::string& bag, const Mark& mark) {
  const Result<Samples> samples = read_bags(book, file, text);
  if (!samples) return samples.problems();
  const Result<BagPlace> place = find_place(*samples, bag);
  if (!place) return place.problems();
  const std::string_view key = mark_key(mark.what);
  if (const YamlNode* there = place->node->find(key)) {
    return input_problem(fmt::format("bag {} is already marked {}", bag, key),
                         "nothing was changed; correct the date by hand if it is wrong",
                         samples->document.place_of(*there));
  }
  std::vector<Bag> meant = samples->bags;
  Bag& marked = meant[static_cast<std::size_t>(place->index)];
  if (mark.what == Mark::What::dried) marked.dried = mark.date;
  if (mark.what == Mark::What::sent) marked.sent = Sent{mark.date, mark.lab};
  if (mark.what == Mark::What::received) marked.received = mark.date;
  if (mark.what == Mark::What::spoiled) marked.spoiled = mark.date;
  if (mark.what == Mark::What::lost) marked.lost = mark.date;
  const std::string addition = mark_text(mark);
  Spliced spliced = is_flow(text, *place->node) ? insert_in_brackets(text, *place->node, addition)
                                                : insert_key(*samples, *place, key, {addition});
  return verified(book, samples->document, std::move(spliced), meant, addition);
}

Result<Spliced> with_result(const Book& book, const std::string& file, const std::string& text,
                            const std::string& bag, const LabResult& result) {
  const Result<Samples> samples = read_bags(book, file, text);
  if (!samples) return samples.problems();
  const Result<BagPlace> place = find_place(*samples, bag);
  if (!place) return place.problems();
  std::vector<Bag> meant = samples->bags;
  meant[static_cast<std::size_t>(place->index)].results.push_back(result);
  const std::string addition = result_text(result);
  Spliced spliced = insert_result(*samples, *place, addition);
  return verified(book, samples->document, std::move(spliced), meant, "results: - " + addition);
}

}  // namespace pluckbook
