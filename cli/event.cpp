#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "cli/kept.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<EventKind> kind_of(const std::string& word) {
  std::vector<std::string> known;
  for (const auto& [name, kind] : event_words()) {
    if (name == word) return kind;
    known.push_back(name);
  }
  return usage_problem(fmt::format("unknown event '{}'", shown(word)), suggestion(word, known));
}

/// When the next bag tells most. Common practice.
std::string when_to_pluck(EventKind kind) {
  switch (kind) {
    case EventKind::green_up:
      return "pluck before turnout";
    case EventKind::frost:
      return "pluck once the grass has cured";
    case EventKind::fire:
    case EventKind::rain:
      return "wait for regrowth, then pluck";
  }
  return "";
}

Result<Answer> run_event(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments, no_pastures());
  if (!opened) return opened.problems();
  Result<const Pasture*> pasture = pasture_named(opened->whole, arguments.words[0]);
  if (!pasture) return pasture.problems();
  Result<EventKind> kind = kind_of(arguments.words[1]);
  if (!kind) return kind.problems();
  Result<Date> day = recorded_day(arguments, opened->as_of);
  if (!day) return day.problems();
  WrittenKeys event = {
      {"date", to_iso(*day)}, {"pasture", (*pasture)->id}, {"event", word_of(*kind)}};
  if (arguments.has("note")) event.emplace_back("note", arguments.get("note"));
  Result<Written> written = add_record(opened->whole, "events.yaml", event);
  if (!written) return written.problems();
  const Kept kept = {
      fmt::format("{} at {} on {} kept", word_of(*kind), (*pasture)->name, to_iso(*day)),
      fmt::format("{}: pluckbook bag {} --plan", when_to_pluck(*kind), (*pasture)->id), event};
  return said_of(kept, "event", *written, arguments);
}

}  // namespace

Command event_command() {
  return {
      .name = "event",
      .usage = "PASTURE WORD",
      .purpose = "green-up, frost, fire or rain, on a date",
      .group = "the herd and the feed",
      .examples = {"pluckbook event draws rain --note 'two inches'",
                   "pluckbook event draws green-up --date 2026-04-22"},
      .options = {{"date", "DATE", "when (as-of)"}, {"note", "TEXT", "what was seen"}},
      .least_words = 2,
      .most_words = 2,
      .run = run_event,
  };
}

}  // namespace pluckbook::cli
