#include <fmt/format.h>

#include <cmath>

#include "base/text.h"
#include "cli/kept.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

/// The newest score of a herd on a day, or nullptr.
const ConditionScore* score_before(const Book& book, const std::string& herd, Date day) {
  const ConditionScore* newest = nullptr;
  for (const ConditionScore& score : book.scores) {
    if (score.herd != herd || score.date > day) continue;
    if (newest == nullptr || score.date >= newest->date) newest = &score;
  }
  return newest;
}

std::string against(const ConditionScore* before, double now) {
  if (before == nullptr) return "";
  const double change = now - before->condition;
  const std::string since = in_words(before->date);
  if (std::abs(change) < 0.05) return ", as on " + since;
  return fmt::format(", {} {} since {}", change > 0 ? "up" : "down", fixed(std::abs(change), 1),
                     since);
}

Result<Answer> run_score(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments, no_pastures());
  if (!opened) return opened.problems();
  Result<const Herd*> herd = herd_named(opened->whole, arguments.words[0]);
  if (!herd) return herd.problems();
  Result<Date> day = recorded_day(arguments, opened->as_of);
  if (!day) return day.problems();
  const std::string& condition = arguments.words[1];
  WrittenKeys score = {{"date", to_iso(*day)}, {"herd", (*herd)->id}, {"condition", condition}};
  for (const char* key : {"weight", "head"}) {
    if (arguments.has(key)) score.emplace_back(key, arguments.get(key));
  }
  Result<Written> written = add_record(opened->whole, "condition.yaml", score);
  if (!written) return written.problems();
  const ConditionScore* before = score_before(opened->whole, (*herd)->id, *day);
  const Kept kept = {fmt::format("{} scored {} on {}{}", (*herd)->id, condition, to_iso(*day),
                                 against(before, parse_number(condition).value_or(0))),
                     "pluckbook outlook " + (*herd)->id, score};
  return said_of(kept, "score", *written, arguments);
}

}  // namespace

Command score_command() {
  return {
      .name = "score",
      .usage = "HERD CONDITION",
      .purpose = "the condition seen, 1 to 9",
      .group = "the herd and the feed",
      .examples = {"pluckbook score spring-cows 5.2 --head 40",
                   "pluckbook score spring-cows 4.8 --weight '1238 lb' --date 2026-05-14"},
      .options = {{"date", "DATE", "when (as-of)"},
                  {"weight", "WEIGHT", "mean weight, in the book's unit or with its own"},
                  {"head", "N", "how many were scored"}},
      .least_words = 2,
      .most_words = 2,
      .run = run_score,
  };
}

}  // namespace pluckbook::cli
