#include "book/append.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "book/read_parts.h"

namespace pluckbook {
namespace {

using Part = void (*)(FileReading&, const YamlNode&, Book&);

Part part_of(std::string_view file) {
  if (file == "grazing.yaml") return read_grazing;
  if (file == "condition.yaml") return read_condition;
  if (file == "events.yaml") return read_events;
  return read_feeds;
}

// ---- what is meant, as a tree ------------------------------------------------------------------

YamlNode scalar(const std::string& text) {
  YamlNode node;
  node.kind = YamlNode::Kind::scalar;
  node.text = text;
  return node;
}

YamlNode map_of(const WrittenKeys& keys) {
  YamlNode node;
  node.kind = YamlNode::Kind::map;
  for (const auto& [key, value] : keys) node.entries.push_back({scalar(key), scalar(value)});
  return node;
}

// The list a node is, or would be: nothing is an empty one, a single record its only item.
YamlNode as_list(const YamlNode& node) {
  YamlNode list;
  list.kind = YamlNode::Kind::list;
  if (node.kind == YamlNode::Kind::list) list.items = node.items;
  if (node.kind == YamlNode::Kind::map) list.items = {node};
  return list;
}

// The order of a map's keys says nothing.
bool says_the_same(const YamlNode& a, const YamlNode& b) {
  return a.kind == b.kind && a.text == b.text && a.entries.size() == b.entries.size() &&
         std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(),
                    says_the_same) &&
         std::all_of(a.entries.begin(), a.entries.end(), [&](const YamlNode::Entry& entry) {
           const YamlNode* other = b.find(entry.key.text);
           return other != nullptr && says_the_same(entry.value, *other);
         });
}

// Where a dated record goes among those of its file; at the end where it, or one of them, has no
// date.
std::size_t place_of_record(const std::vector<YamlNode>& items, const WrittenKeys& record) {
  const auto date_of = [](const YamlNode& node) {
    const YamlNode* date = node.find("date");
    return date == nullptr ? std::nullopt : parse_date(date->text);
  };
  std::vector<Date> dates;
  for (const YamlNode& item : items) {
    const auto date = date_of(item);
    if (!date) return items.size();
    dates.push_back(*date);
  }
  const auto day = date_of(map_of(record));
  return day ? place_by_date(dates, *day) : items.size();
}

// ---- reading back ------------------------------------------------------------------------------

// Problems of a new text, as said of what was typed.
Problems as_typed(Problems problems) {
  for (Problem& problem : problems) {
    problem.fault = Fault::usage;
    problem.place.reset();
    problem.remedy += "\nnothing was written";
  }
  return problems;
}

// What the reader of the file says against a new text.
Problems refused(const Book& book, const YamlDocument& document) {
  Book scratch = book;
  scratch.moves.clear();
  scratch.scores.clear();
  scratch.events.clear();
  scratch.feeds.clear();
  Problems problems;
  FileReading reading(document, {book.units, book.currency}, problems);
  part_of(document.file)(reading, document.root, scratch);
  std::erase_if(problems, [](const Problem& p) { return p.severity == Severity::warning; });
  return as_typed(std::move(problems));
}

Result<Spliced> verified(const Book& book, const YamlDocument& before, Spliced spliced,
                         const YamlNode& meant, const std::string& by_hand) {
  const Result<YamlDocument> document = read_yaml(before.file, spliced.text);
  if (!document) return as_typed(document.problems());
  if (!says_the_same(document->root, meant)) {
    return edit_by_hand(before, spliced.line, by_hand);
  }
  Problems problems = refused(book, *document);
  if (!problems.empty()) return problems;
  return spliced;
}

// ---- a quote in a feed -------------------------------------------------------------------------

// The only quote of a feed, made the first of a list: what it says stays on its own lines.
std::string as_first_of_list(const std::string& text, const YamlNode& quote, int column,
                             int last_line) {
  const Lines lines(text);
  const std::string dash = spaces(column - 1) + "- ";
  if (is_flow(text, quote)) {
    const std::size_t colon = text.find_last_of(':', quote.begin);
    return text.substr(0, colon + 1) + std::string(lines.line_break()) + dash +
           text.substr(quote.begin);
  }
  std::string changed = text.substr(0, lines.begin_of(quote.line));
  for (int line = quote.line; line <= last_line; ++line) {
    const bool first = line == quote.line;
    const auto indent = static_cast<std::size_t>(quote.column - 1);
    changed += first ? dash + std::string(lines.line(line).substr(indent))
                     : spaces(column + 2 - quote.column) + std::string(lines.line(line));
  }
  return changed + text.substr(lines.begin_of(last_line + 1));
}

struct FeedPlace {
  const YamlNode* node;
  int next_line;  // of the next feed, or one past the end
};

constexpr std::array<std::string_view, 4> before_quote = {"id", "name", "like", "analysis"};

// A quote put into a feed that is written on lines.
Spliced quote_on_lines(const YamlDocument& document, const FeedPlace& place,
                       const std::string& addition) {
  const std::string& text = document.text;
  const std::vector<YamlNode::Entry>& entries = place.node->entries;
  const auto key = std::find_if(entries.begin(), entries.end(),
                                [](const auto& entry) { return entry.key.text == "quote"; });
  if (key == entries.end()) {
    return insert_after(text, line_behind(document, *place.node, place.next_line, before_quote),
                        {spaces(entries.front().key.column - 1) + "quote: " + addition});
  }
  const YamlNode& quote = key->value;
  if (quote.kind == YamlNode::Kind::list && is_flow(text, quote)) {
    return insert_in_brackets(text, quote, addition);
  }
  const auto next = std::next(key);
  const int last_line =
      Lines(text).last_record_before(next == entries.end() ? place.next_line : next->key.line);
  if (quote.kind == YamlNode::Kind::list) {
    return insert_after(text, last_line, {spaces(quote.column - 1) + "- " + addition});
  }
  const int column = key->key.column + 2;
  const std::string listed = as_first_of_list(text, quote, column, last_line);
  const int moved = is_flow(text, quote) ? 1 : 0;  // down by a line, behind "quote:"
  return insert_after(listed, last_line + moved, {spaces(column - 1) + "- " + addition});
}

// A quote put into a feed that is written in brackets.
Spliced quote_in_brackets(const std::string& text, const YamlNode& feed,
                          const std::string& addition) {
  const YamlNode* quote = feed.find("quote");
  if (quote == nullptr) return insert_in_brackets(text, feed, "quote: " + addition);
  if (quote->kind == YamlNode::Kind::list) return insert_in_brackets(text, *quote, addition);
  const std::size_t end = closing_bracket(text, quote->begin) + 1;
  return {text.substr(0, quote->begin) + "[" + text.substr(quote->begin, end - quote->begin) +
              ", " + addition + "]" + text.substr(end),
          quote->line};
}

// The same tree with one more quote of a feed.
YamlNode with_quote_meant(YamlNode root, std::size_t feed, const WrittenKeys& quote) {
  std::vector<YamlNode::Entry>& entries = root.items[feed].entries;
  const auto there = std::find_if(entries.begin(), entries.end(),
                                  [](const auto& entry) { return entry.key.text == "quote"; });
  if (there != entries.end()) {
    there->value = as_list(there->value);
    there->value.items.push_back(map_of(quote));
    return root;
  }
  entries.push_back({scalar("quote"), map_of(quote)});
  return root;
}

}  // namespace

std::string in_braces(const WrittenKeys& keys) {
  std::string text;
  for (const auto& [key, value] : keys) {
    text += fmt::format("{}{}: {}", text.empty() ? "{" : ", ", key, as_scalar(value));
  }
  return text + "}";
}

Result<Spliced> with_record(const Book& book, const std::string& file, const std::string& text,
                            const WrittenKeys& record) {
  const Result<YamlDocument> document = read_yaml(file, text);
  if (!document) return document.problems();
  const std::string line = "- " + in_braces(record);
  YamlNode meant = as_list(document->root);
  const std::size_t index = place_of_record(meant.items, record);
  Result<Spliced> spliced = with_item(*document, index, {line}, line);
  if (!spliced) return spliced.problems();
  meant.items.insert(meant.items.begin() + static_cast<std::ptrdiff_t>(index), map_of(record));
  return verified(book, *document, *std::move(spliced), meant, line);
}

Result<Spliced> with_quote(const Book& book, const std::string& file, const std::string& text,
                           const std::string& feed, const WrittenKeys& quote) {
  const Result<YamlDocument> document = read_yaml(file, text);
  if (!document) return document.problems();
  const std::vector<YamlNode>& feeds = document->root.items;
  const auto found = std::find_if(feeds.begin(), feeds.end(), [&](const YamlNode& node) {
    const YamlNode* id = node.find("id");
    return id != nullptr && id->text == feed;
  });
  if (found == feeds.end()) {
    return usage_problem(fmt::format("there is no feed '{}' in {}", shown(feed), file),
                         "nothing was written");
  }
  const std::string addition = in_braces(quote);
  const auto next = std::next(found);
  const int after = Lines(text).count() + 1;
  const FeedPlace place{&*found, next == feeds.end() ? after : next->line};
  Spliced spliced = is_flow(text, *found) ? quote_in_brackets(text, *found, addition)
                                          : quote_on_lines(*document, place, addition);
  const auto index = static_cast<std::size_t>(found - feeds.begin());
  return verified(book, *document, std::move(spliced),
                  with_quote_meant(document->root, index, quote), "quote: " + addition);
}

}  // namespace pluckbook
