#include "book/what_ifs.h"

#include <algorithm>

#include "book/read_parts.h"

namespace pluckbook {
namespace {

const Keys<MoveAhead>& move_ahead_keys() {
  static const Keys<MoveAhead> table = {
      "move",
      {
          key("date", Need::required, date_value("2026-09-10"), &MoveAhead::date),
          key("pasture", Need::required, id_value("meadow"), &MoveAhead::pasture),
      }};
  return table;
}

void read_move_ahead(FileReading& reading, const YamlNode::Entry& entry, WhatIf& what_if) {
  MoveAhead move;
  const std::size_t before = reading.problem_count();
  read_record(reading, entry.value, move_ahead_keys(), move);
  if (reading.problem_count() == before) what_if.move = std::move(move);
}

const Keys<QuoteAhead>& quote_ahead_keys() {
  static const Keys<QuoteAhead> table = {
      "purchase",
      {
          key("feed", Need::required, id_value("cube-20"), &QuoteAhead::feed),
          {"quote", Need::required, "quote", "{price: 340 USD/ton, date: 2026-11-01}",
           [](FileReading& reading, const YamlNode::Entry& entry, QuoteAhead& ahead) {
             ahead.quotes = read_quotes_of(reading, entry);
           }},
      }};
  return table;
}

void read_quote_ahead(FileReading& reading, const YamlNode::Entry& entry, WhatIf& what_if) {
  QuoteAhead ahead;
  const std::size_t before = reading.problem_count();
  read_record(reading, entry.value, quote_ahead_keys(), ahead);
  if (reading.problem_count() == before) what_if.buy = std::move(ahead);
}

/// One feed or a list of them.
void read_only(FileReading& reading, const YamlNode::Entry& entry, WhatIf& what_if) {
  const auto add = [&](const YamlNode& node) {
    if (auto id = read_value(reading, "only", node, id_value("cube-20")))
      what_if.only.push_back(std::move(*id));
  };
  if (entry.value.kind != YamlNode::Kind::list) return add(entry.value);
  for (const YamlNode& node : entry.value.items) add(node);
}

/// The group is written as a herd of herds.yaml is, and read by the same table.
void read_split(FileReading& reading, const YamlNode::Entry& entry, WhatIf& what_if) {
  YamlNode herds = entry.value;
  herds.kind = YamlNode::Kind::list;
  herds.items = {entry.value};
  Book group;
  const std::size_t before = reading.problem_count();
  read_herds(reading, herds, group);
  if (reading.problem_count() == before) what_if.split = std::move(group.herds.front());
}

const Keys<WhatIf>& what_if_keys() {
  static const Keys<WhatIf> table = {
      "what-if",
      {
          key("name", Need::required, text_value("wean early"), &WhatIf::name),
          key("wean", Need::optional, date_value("2026-09-10"), &WhatIf::wean),
          {"move", Need::optional, "move", "{date: 2026-09-10, pasture: meadow}", read_move_ahead},
          {"only", Need::optional, "list", "[cube-20]", read_only},
          {"buy", Need::optional, "purchase",
           "{feed: cube-20, quote: {price: 340 USD/ton, date: 2026-11-01}}", read_quote_ahead},
          {"split", Need::optional, "herd",
           "{id: young, head: 20, class: first-calf heifer, weight: 1015 lb, calving: 2026-02-25}",
           read_split},
          key("split_pasture", Need::optional, id_value("meadow"), &WhatIf::split_pasture),
          key("feed_nothing", Need::optional, yes_no_value(), &WhatIf::feed_nothing),
      }};
  return table;
}

// ---- what the book must hold -------------------------------------------------------------------

void check_feeds(FileReading& reading, const YamlNode& node, const WhatIf& what_if,
                 const Book& book) {
  for (const std::string& feed : what_if.only)
    note_unknown_id(reading, at_key(node, "only"), book.feeds, feed, "feed", "feeds.yaml");
  if (what_if.buy)
    note_unknown_id(reading, at_key(at_key(node, "buy"), "feed"), book.feeds, what_if.buy->feed,
                    "feed", "feeds.yaml");
}

void check_pastures(FileReading& reading, const YamlNode& node, const WhatIf& what_if,
                    const Book& book) {
  const auto known = [&](const YamlNode& at, const std::string& pasture) {
    note_unknown_id(reading, at, book.pastures, pasture, "pasture", "pastures.yaml");
  };
  if (what_if.move) known(at_key(at_key(node, "move"), "pasture"), what_if.move->pasture);
  if (what_if.split_pasture) known(at_key(node, "split_pasture"), *what_if.split_pasture);
}

void check_split(FileReading& reading, const YamlNode& node, const WhatIf& what_if,
                 const Herd& herd, const Book& book) {
  if (!what_if.split) return;
  const YamlNode& at = at_key(node, "split");
  if (what_if.split->head >= herd.head)
    reading.error(
        at_key(at, "head"),
        fmt::format("{} head split from {}, which has {}", what_if.split->head, herd.id, herd.head),
        "leave some with the herd");
  if (find_herd(book, what_if.split->id) != nullptr)
    reading.error(at_key(at, "id"),
                  fmt::format("the book has a herd '{}' already", what_if.split->id),
                  "give those that are split off another id");
}

void check_weaning(FileReading& reading, const YamlNode& node, const WhatIf& what_if,
                   const Herd& herd) {
  if (!what_if.wean) return;
  const YamlNode& at = at_key(node, "wean");
  if (!herd.calving)
    reading.error(at, fmt::format("{} have no calves to wean", herd.id), "leave 'wean' out");
  else if (*what_if.wean <= herd.calving->first)
    reading.error(at,
                  fmt::format("weaning on {} is before calving on {}", to_iso(*what_if.wean),
                              to_iso(herd.calving->first)),
                  "give the weaning of the calves born from that day");
}

void note_used_name(FileReading& reading, const YamlNode& node, const std::string& name,
                    const std::vector<WhatIf>& earlier) {
  for (const WhatIf& other : earlier)
    if (!name.empty() && other.name == name)
      reading.error(at_key(node, "name"),
                    fmt::format("'{}' is already on line {}", shown(name), other.origin.line),
                    "give each what-if a name of its own");
}

// ---- the file ----------------------------------------------------------------------------------

void read_list(FileReading& reading, const YamlNode& list, const Book& book, WhatIfs& all) {
  const Herd* herd = find_herd(book, all.herd);
  for (const YamlNode& node : items_of(reading, list, "what-if")) {
    WhatIf what_if;
    what_if.origin = reading.origin(node);
    read_record(reading, node, what_if_keys(), what_if);
    note_used_name(reading, node, what_if.name, all.what_ifs);
    check_feeds(reading, node, what_if, book);
    check_pastures(reading, node, what_if, book);
    if (herd != nullptr) {
      check_split(reading, node, what_if, *herd, book);
      check_weaning(reading, node, what_if, *herd);
    }
    all.what_ifs.push_back(std::move(what_if));
  }
  if (all.what_ifs.size() < 2)
    reading.error(list, "there is nothing to compare: fewer than two what-ifs",
                  "add another:  - {name: do nothing, feed_nothing: yes}");
}

const Keys<WhatIfs>& file_keys() {
  static const Keys<WhatIfs> table = {
      "file of what-ifs",
      {
          key("herd", Need::required, id_value("spring-cows"), &WhatIfs::herd),
          key("until", Need::optional, date_value("2027-03-10"), &WhatIfs::until),
          key("cover", Need::optional, share_value("80", 50, 99), &WhatIfs::cover),
          key("change_every", Need::optional, whole_value("14", 1, 180), &WhatIfs::change_every),
          {"what_ifs", Need::required, "list", "[{name: as now}, {name: wean, wean: 2026-09-10}]",
           [](FileReading&, const YamlNode::Entry&, WhatIfs&) {}},  // read when the herd is known
      }};
  return table;
}

}  // namespace

Result<WhatIfs> read_what_ifs(const std::string& file, std::string text, const Book& book) {
  const Result<YamlDocument> document = read_yaml(file, std::move(text));
  if (!document) return document.problems();
  Problems problems;
  FileReading reading(*document, {book.units, book.currency}, problems);
  WhatIfs all;
  read_record(reading, document->root, file_keys(), all);
  if (!all.herd.empty())
    note_unknown_id(reading, at_key(document->root, "herd"), book.herds, all.herd, "herd",
                    "herds.yaml");
  if (const YamlNode* list = document->root.find("what_ifs")) read_list(reading, *list, book, all);
  std::erase_if(problems, [](const Problem& p) { return p.severity == Severity::warning; });
  if (!problems.empty()) return problems;
  return all;
}

}  // namespace pluckbook
