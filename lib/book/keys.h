// keys.h - a record of the book as a table of keys: what each is called, whether it must be there,
// how it is written and where it goes. One line adds a key; an unknown key gets the nearest known.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/yaml.h"
#include "book/schema.h"
#include "book/values.h"

namespace pluckbook {

/// One file while it is read: its text, the book's units, and what was found wrong so far.
class FileReading {
 public:
  FileReading(const YamlDocument& document, Dialect own, Problems& found)
      : dialect(std::move(own)), document_(document), problems_(found) {}

  void error(const YamlNode& at, std::string what, std::string remedy);
  void warn(const YamlNode& at, std::string what, std::string remedy);
  /// Problems that came without a place, now with one.
  void note(const YamlNode& at, const Problems& problems);
  Origin origin(const YamlNode& node) const { return document_.place_of(node); }
  std::size_t problem_count() const { return problems_.size(); }

  Dialect dialect;
  std::set<std::string> unread;  // files whose records are not known

 private:
  const YamlDocument& document_;
  Problems& problems_;
};

/// The text of a scalar; an empty value, a list or keys in its place is a Problem.
std::optional<std::string> scalar_text(FileReading&, std::string_view name, const YamlNode&);

/// A value from its node; nothing, with the Problem noted, when it cannot be read.
template <class T>
std::optional<T> read_value(FileReading& reading, std::string_view name, const YamlNode& node,
                            const Value<T>& value) {
  const auto text = scalar_text(reading, name, node);
  if (!text) return std::nullopt;
  Result<T> parsed = value.parse(reading.dialect, name, *text);
  if (parsed) return *std::move(parsed);
  reading.note(node, parsed.problems());
  return std::nullopt;
}

enum class Need { required, optional };

template <class Record>
struct Key {
  using Read = std::function<void(FileReading&, const YamlNode::Entry&, Record&)>;

  Key(std::string_view name_, Need need_, std::string_view kind_, std::string_view example_,
      Read read_)
      : name(name_), need(need_), kind(kind_), example(example_), read(std::move(read_)) {}
  Key(std::string_view name_, Need need_, std::string_view kind_, std::string_view example_,
      Read read_, std::vector<std::string> choices_, std::vector<KeyFact> inner_)
      : Key(name_, need_, kind_, example_, std::move(read_)) {
    choices = std::move(choices_);
    inner = std::move(inner_);
  }

  std::string_view name;
  Need need;
  std::string_view kind, example;
  Read read;
  std::vector<std::string> choices;  // of a choice
  std::vector<KeyFact> inner;        // the keys of the record, or of the list's records, it holds
  std::optional<Bounds> bounds;      // of a number without a unit
};

template <class Record>
struct Keys {
  std::string_view record;  // "herd": what a record is called in messages
  std::vector<Key<Record>> keys;
};

/// A key whose value goes to a member of the record (of the same type, or an optional of it).
template <class Record, class T, class Member>
Key<Record> key(std::string_view name, Need need, Value<T> value, Member Record::*member) {
  const std::string_view kind = value.kind, example = value.example;
  std::vector<std::string> choices = value.choices;
  const std::optional<Bounds> bounds = value.bounds;
  Key<Record> made(name, need, kind, example,
                   [value = std::move(value), member](
                       FileReading& reading, const YamlNode::Entry& entry, Record& record) {
                     auto got = read_value(reading, entry.key.text, entry.value, value);
                     if (got) record.*member = *std::move(got);
                   },
                   std::move(choices), {});
  made.bounds = bounds;
  return made;
}

/// What a table says of its keys, for a schema.
template <class Record>
std::vector<KeyFact> facts_of(const Keys<Record>& table) {
  std::vector<KeyFact> facts;
  for (const Key<Record>& k : table.keys) {
    facts.push_back({std::string(k.name), std::string(k.kind), std::string(k.example),
                     k.need == Need::required, k.choices, k.inner, k.bounds});
  }
  return facts;
}

/// Fills a record from a map and notes every Problem of it.
template <class Record>
void read_record(FileReading& reading, const YamlNode& node, const Keys<Record>& table,
                 Record& record) {
  if (node.kind != YamlNode::Kind::map) {
    const Key<Record>& first = table.keys.front();
    reading.error(node, fmt::format("a {} is written as keys with values", table.record),
                  fmt::format("write  {}: {}", first.name, first.example));
    return;
  }
  for (const YamlNode::Entry& entry : node.entries) {
    const auto known = std::find_if(table.keys.begin(), table.keys.end(),
                                    [&](const auto& k) { return k.name == entry.key.text; });
    if (known != table.keys.end()) {
      known->read(reading, entry, record);
      continue;
    }
    std::vector<std::string> names;
    for (const Key<Record>& k : table.keys) names.emplace_back(k.name);
    reading.error(entry.key, fmt::format("unknown key '{}'", shown(entry.key.text)),
                  suggestion(entry.key.text, names));
  }
  for (const Key<Record>& k : table.keys) {
    if (k.need == Need::optional || node.find(k.name) != nullptr) continue;
    reading.error(node, fmt::format("this {} has no '{}'", table.record, k.name),
                  fmt::format("add  {}: {}", k.name, k.example));
  }
}

/// The items of a file or key that holds a list; nothing written is an empty list.
const std::vector<YamlNode>& items_of(FileReading&, const YamlNode&, std::string_view record);

/// The node of a key, or the record itself where the key is missing: for Problems.
inline const YamlNode& at_key(const YamlNode& record, std::string_view name) {
  const YamlNode* value = record.find(name);
  return value == nullptr ? record : *value;
}

}  // namespace pluckbook
