#include <fmt/format.h>

#include <algorithm>

#include "book/doubts.h"
#include "book/read.h"
#include "cli/command.h"
#include "cli/open_book.h"
#include "report/json.h"

namespace pluckbook::cli {
namespace {

Json problem_json(const Problem& problem) {
  Json json = {{"severity", problem.severity == Severity::error ? "error" : "warning"},
               {"what", problem.what},
               {"remedy", problem.remedy}};
  if (problem.place) {
    json["file"] = problem.place->file;
    json["line"] = problem.place->line;
    json["column"] = problem.place->column;
  }
  return json;
}

std::string summary(const Reading& reading, std::size_t errors, std::size_t warnings) {
  if (errors + warnings == 0) {
    return "no problems: " + contents(reading.book) + "\n";
  }
  return counted(errors, "error") + ", " + counted(warnings, "warning") + "\n";
}

/// The day doubts are judged on: --as-of, or the book's own last one. Nothing for an empty book.
Result<std::optional<Date>> day_to_judge_on(const Arguments& arguments, const Book& book) {
  if (arguments.has("as-of")) {
    const Result<Date> day = as_of_day(arguments);
    if (!day) return day.problems();
    return std::optional(*day);
  }
  const Date last = last_recorded_day(book);
  return last.is_special() ? std::optional<Date>() : std::optional(last);
}

Result<Answer> run_check(const Arguments& arguments) {
  Result<std::string> folder = book_folder(arguments);
  if (!folder) return folder.problems();
  Reading reading = read_whole_book(*folder);
  const Result<std::optional<Date>> day = day_to_judge_on(arguments, reading.book);
  if (!day) return day.problems();
  if (*day && !reading.has_errors()) {
    const Problems doubts = doubts_on(reading.book, **day);
    reading.problems.insert(reading.problems.end(), doubts.begin(), doubts.end());
    sort_by_place(reading.problems);
  }
  const auto errors = static_cast<std::size_t>(
      std::count_if(reading.problems.begin(), reading.problems.end(),
                    [](const Problem& p) { return p.severity == Severity::error; }));
  const std::size_t warnings = reading.problems.size() - errors;
  Answer answer;
  if (arguments.has("json")) {
    Json json = document("check");
    json["problems"] = Json::array();
    for (const Problem& problem : reading.problems)
      json["problems"].push_back(problem_json(problem));
    json["errors"] = errors;
    json["warnings"] = warnings;
    answer.text = printed(json);
  } else {
    for (const Problem& problem : reading.problems) answer.text += to_text(problem) + "\n";
    answer.text += summary(reading, errors, warnings);
  }
  answer.exit_status = errors > 0 ? 3 : warnings > 0 ? 1 : 0;
  return answer;
}

}  // namespace

Command check_command() {
  return {
      .name = "check",
      .usage = "",
      .purpose = "reads everything, lists every problem",
      .group = "the book",
      .examples = {"pluckbook check", "pluckbook check --book ../mybook"},
      .run = run_check,
      .rows = "problems",
  };
}

}  // namespace pluckbook::cli
