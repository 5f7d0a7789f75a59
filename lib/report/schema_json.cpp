#include "report/schema_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "book/lab_values.h"
#include "book/schema.h"
#include "published/feeds.h"
#include "published/forage_classes.h"

namespace pluckbook {
namespace {

constexpr std::string_view number_pattern = "[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)";

// What a kind of value is, in words with its unit, and which units may be written behind the
// number.
struct Kind {
  std::string words;
  std::string units;  // of a regular expression; empty where none may be written
};

const Kind* kind_named(const std::string& name) {
  static const std::map<std::string, Kind> kinds = {
      {"whole number", {"a whole number, a count", ""}},
      {"number", {"a number", ""}},
      {"percent", {"in %", "%"}},
      {"%", {"in %", "%|g/kg|ppm|mg/kg|g/100 g"}},
      {"money", {"money in the book's currency", "[A-Z]{3}"}},
      {"weight", {"a weight, in lb or kg; a plain number is in the book's own", "lbs?|kg"}},
      {"weight per day",
       {"an amount a day, in lb/day or kg/day; a plain number is in the book's own",
        "(lbs?|kg)(/day)?"}},
      {"area", {"an area, in acre or ha; a plain number is in the book's own", "acres?|ac|ha"}},
      {"load",
       {"a load, in ton or tonne; a plain number is in the book's own", "tons?|lb|tonnes?|kg"}},
      {"price",
       {"a price for a unit of feed as it lies, currency/unit",
        "[A-Z]{3} */ *(([0-9]+\\.?[0-9]*|\\.[0-9]+) +)?[a-z]+( "
        "+(bu|(bag|bale|barrel|block|box|bushel|drum|load|roll|sack|stack|tank|tote|tub)(s|es)?))"
        "?"}},
  };
  const auto found = kinds.find(name);
  return found == kinds.end() ? nullptr : &found->second;
}

Json matching(const std::string& pattern) {
  return {{"type", "string"}, {"pattern", pattern}};
}

// ---- scalars -----------------------------------------------------------------------------------

Json number_schema(const KeyFact& key, const std::string& units) {
  Json plain = {{"type", key.kind == "whole number" ? "integer" : "number"}};
  if (key.bounds) {
    plain["minimum"] = key.bounds->low;
    plain["maximum"] = key.bounds->high;
  }
  const std::string unit = units.empty() ? "" : fmt::format("( *({}))?", units);
  return {{"anyOf", {plain, matching(fmt::format("^ *{}{} *$", number_pattern, unit))}}};
}

// A word in any case, '-', '_' and spaces alike, as the reader takes it.
std::string folded_pattern(const std::string& word) {
  std::string pattern;
  for (const char c : word) {
    if (c >= 'a' && c <= 'z') {
      pattern += fmt::format("[{}{}]", c, static_cast<char>(c - 'a' + 'A'));
    } else if (c == ' ' || c == '-' || c == '_') {
      pattern += "[-_ ]";
    } else {
      pattern += c;
    }
  }
  return pattern;
}

Json word_schema(const std::vector<std::string>& words) {
  Json known = Json::array();
  std::string pattern;
  for (const std::string& word : words) {
    known.push_back(word);
    if (word == "true" || word == "false") known.push_back(word == "true");
    pattern += (pattern.empty() ? "" : "|") + folded_pattern(word);
  }
  return {{"anyOf", {{{"enum", known}}, matching("^ *(" + pattern + ") *$")}}};
}

// Plain scalars that look like numbers are text all the same.
Json text_schema() {
  return {{"anyOf",
           {{{"type", {"number", "boolean"}}},
            {{"type", "string"}, {"pattern", "\\S"}, {"maxLength", 200}}}}};
}

Json id_schema() {
  return {
      {"anyOf", {{{"type", {"number", "boolean"}}}, matching("^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$")}}};
}

Json date_schema() {
  return {{"type", "string"}, {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}, {"format", "date"}};
}

// ---- records -----------------------------------------------------------------------------------

Json record_schema(const std::vector<KeyFact>& keys);

Json list_of(const Json& items) {
  return {{"type", {"array", "null"}}, {"items", items}};
}

Json shape_of(const KeyFact& key) {
  if (key.kind == "date") return date_schema();
  if (key.kind == "id") return id_schema();
  if (key.kind == "text") return text_schema();
  if (key.kind == "choice") return word_schema(key.choices);
  if (key.kind == "currency") return matching("^[A-Z]{3}$");
  if (key.kind == "month and day") return matching("^[0-9]{2}-[0-9]{2}$");
  if (key.kind == "forage class") return word_schema(forage_class_names());
  if (key.kind == "published feed") return word_schema(published_feed_names());
  if (key.kind == "list of percent") {
    return list_of(number_schema({"", "percent", "", false, {}, {}, Bounds{0, 100}}, "%"));
  }
  if (key.kind == "times a week") {
    const Json times = number_schema({"", "whole number", "", false, {}, {}, Bounds{1, 14}}, "");
    return {{"anyOf",
             {times, matching("^ *[sS][eE][lL][fF] *$"), {{"type", "array"}, {"items", times}}}}};
  }
  if (key.kind == "list") return list_of(record_schema(key.inner));
  if (key.kind == "analysis") return record_schema(key.inner);
  if (key.kind == "calving" || key.kind == "sending") {
    return {{"anyOf", {date_schema(), record_schema(key.inner)}}};
  }
  if (key.kind == "quote") {
    const Json quote = record_schema(key.inner);
    return {{"anyOf", {quote, {{"type", "array"}, {"items", quote}}}}};
  }
  const Kind* kind = kind_named(key.kind);
  return number_schema(key, kind != nullptr ? kind->units : "[A-Za-z%/0-9 .]+");
}

std::string description_of(const KeyFact& key) {
  const Analyte* analyte = find_analyte(key.name);
  std::string words = analyte != nullptr ? std::string(analyte->in_words) : key.name;
  std::replace(words.begin(), words.end(), '_', ' ');
  const Kind* kind = kind_named(key.kind);
  words += fmt::format(": {}", kind != nullptr      ? kind->words
                               : key.kind == "date" ? "a date, year-month-day"
                                                    : key.kind);
  return fmt::format("{}; for example {}", words, key.example);
}

// A key the reader knows only to say why it is refused has no kind.
Json record_schema(const std::vector<KeyFact>& keys) {
  Json required = Json::array();
  Json properties = Json::object();
  for (const KeyFact& key : keys) {
    if (key.kind.empty()) continue;
    Json property = {{"description", description_of(key)}};
    property.update(shape_of(key));
    properties[key.name] = property;
    if (key.required) required.push_back(key.name);
  }
  Json record = {{"type", "object"}, {"additionalProperties", false}};
  if (!required.empty()) record["required"] = required;
  record["properties"] = properties;
  return record;
}

}  // namespace

Json json_schema(const std::string& file) {
  Json schema = {{"$schema", "http://json-schema.org/draft-07/schema#"},
                 {"title", file + " of a pluckbook book"}};
  const Json record = record_schema(keys_of_file(file));
  schema.update(file == "book.yaml" ? record : list_of(record));
  return schema;
}

}  // namespace pluckbook
