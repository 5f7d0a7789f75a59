#include <fmt/format.h>

#include <algorithm>

#include "cli/kept.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

// Common practice: pluck at each move to another kind of pasture, and every two to four weeks.
constexpr long fresh_days = 14;
constexpr long farthest_plan_days = 366;

bool has_fresh_bag(const Book& book, const std::string& pasture, Date day) {
  return std::any_of(book.bags.begin(), book.bags.end(), [&](const Bag& bag) {
    return bag.pasture == pasture && bag.plucked <= day &&
           days_between(bag.plucked, day) <= fresh_days;
  });
}

/// Of the move, which may lie ahead: then it is a plan.
Result<Date> day_of_move(const Arguments& arguments, Date as_of) {
  Result<Date> day = arguments.date("date", as_of);
  if (!day || days_between(as_of, *day) <= farthest_plan_days) return day;
  return usage_problem(fmt::format("{} is over a year ahead", to_iso(*day)),
                       "look at the year; a move can be planned for the year to come");
}

Result<Answer> run_move(const Arguments& arguments) {
  Result<OpenedToChange> opened =
      open_to_change(arguments, pastures_of_pasture(arguments.words[1]));
  if (!opened) return opened.problems();
  Result<const Herd*> herd = herd_named(opened->whole, arguments.words[0]);
  if (!herd) return herd.problems();
  Result<const Pasture*> pasture = pasture_named(opened->whole, arguments.words[1]);
  if (!pasture) return pasture.problems();
  Result<Date> day = day_of_move(arguments, opened->as_of);
  if (!day) return day.problems();
  const bool bare = arguments.has("bare");
  const Move* before = move_of(opened->whole, (*herd)->id, *day);
  if (before != nullptr && before->pasture == (*pasture)->id && before->bare == bare) {
    return usage_problem(
        fmt::format("{} stands in {} already, since {} ({}:{})", (*herd)->id, (*pasture)->id,
                    to_iso(before->date), before->origin.file, before->origin.line),
        "nothing was written");
  }
  WrittenKeys move = {{"date", to_iso(*day)}, {"herd", (*herd)->id}, {"pasture", (*pasture)->id}};
  if (bare) move.emplace_back("bare", "yes");
  const bool ahead = *day > opened->as_of;
  if (ahead) move.emplace_back("planned", to_iso(opened->as_of));
  Result<Written> written = add_record(opened->whole, "grazing.yaml", move);
  if (!written) return written.problems();
  const bool stays = before != nullptr && before->pasture == (*pasture)->id;
  const Pasture* from =
      before == nullptr || stays ? nullptr : find_pasture(opened->whole, before->pasture);
  const Kept kept = {fmt::format("{} in {} from {}{}{}{}", (*herd)->id, (*pasture)->name,
                                 to_iso(*day), ahead ? ", as planned" : "",
                                 from == nullptr || ahead ? "" : ", before that in " + from->name,
                                 bare ? "; grazing is short there" : ""),
                     ahead || has_fresh_bag(opened->whole, (*pasture)->id, *day)
                         ? "pluckbook outlook " + (*herd)->id
                         : fmt::format("no bag of {} days there: pluckbook bag {} --plan",
                                       fresh_days, (*pasture)->id),
                     move};
  return said_of(kept, "move", *written, arguments);
}

}  // namespace

Command move_command() {
  return {
      .name = "move",
      .usage = "HERD PASTURE",
      .purpose = "a herd goes to another pasture",
      .group = "the herd and the feed",
      .examples = {"pluckbook move spring-cows draws --date 2026-07-02",
                   "pluckbook move spring-cows draws --bare"},
      .options = {{"date", "DATE",
                   "when (as-of); a day ahead is a plan, and the outlook follows it"},
                  {"bare", "", "grazing is short there: energy is short before quality"}},
      .least_words = 2,
      .most_words = 2,
      .run = run_move,
  };
}

}  // namespace pluckbook::cli
