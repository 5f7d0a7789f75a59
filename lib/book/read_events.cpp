// events.yaml: what befell a pasture and changes its diet: green-up, frost, fire, rain.
#include <algorithm>

#include "book/read_parts.h"

namespace pluckbook {
namespace {

const Keys<Event>& event_keys() {
  static const Keys<Event> table = {
      "event",
      {
          key("date", Need::required, date_value("2026-08-20"), &Event::date),
          key("pasture", Need::required, id_value("north-breaks"), &Event::pasture),
          key("event", Need::required, choice_value<EventKind>("rain", event_words()),
              &Event::kind),
          key("note", Need::optional, text_value("two inches in a night"), &Event::note),
      }};
  return table;
}

void check_event(FileReading& reading, const YamlNode& node, const Event& event, const Book& book) {
  if (!event.pasture.empty()) {
    note_unknown_id(reading, at_key(node, "pasture"), book.pastures, event.pasture, "pasture",
                    "pastures.yaml");
  }
  const auto twin = std::find_if(book.events.begin(), book.events.end(), [&](const Event& other) {
    return other.date == event.date && other.pasture == event.pasture && other.kind == event.kind;
  });
  if (twin == book.events.end() || event.date.is_special()) return;
  reading.error(at_key(node, "event"),
                fmt::format("{} of {} on {} is already on line {}", word_of(event.kind),
                            event.pasture, to_iso(event.date), twin->origin.line),
                "keep one of the two lines");
}

}  // namespace

const std::vector<std::pair<std::string, EventKind>>& event_words() {
  static const std::vector<std::pair<std::string, EventKind>> words = {
      {"green-up", EventKind::green_up},
      {"frost", EventKind::frost},
      {"fire", EventKind::fire},
      {"rain", EventKind::rain}};
  return words;
}

const std::string& word_of(EventKind kind) {
  const auto& words = event_words();
  return std::find_if(words.begin(), words.end(),
                      [kind](const auto& w) { return w.second == kind; })
      ->first;
}

std::vector<KeyFact> event_facts() {
  return facts_of(event_keys());
}

void read_events(FileReading& reading, const YamlNode& root, Book& book) {
  for (const YamlNode& node : items_of(reading, root, "event")) {
    Event event;
    event.origin = reading.origin(node);
    read_record(reading, node, event_keys(), event);
    check_event(reading, node, event, book);
    book.events.push_back(std::move(event));
  }
}

}  // namespace pluckbook
