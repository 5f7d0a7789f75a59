#include <fmt/format.h>

#include <algorithm>

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
    return fmt::format("no problems: {} pastures, {} herds, {} bags, {} feeds\n",
                       reading.book.pastures.size(), reading.book.herds.size(),
                       reading.book.bags.size(), reading.book.feeds.size());
  }
  return fmt::format("{} error{}, {} warning{}\n", errors, errors == 1 ? "" : "s", warnings,
                     warnings == 1 ? "" : "s");
}

}  // namespace

Result<Answer> run_check(const Arguments& arguments) {
  Result<std::string> folder = book_folder(arguments);
  if (!folder) return folder.problems();
  const Reading reading = read_whole_book(*folder);
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

}  // namespace pluckbook::cli
