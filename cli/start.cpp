#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "base/text.h"
#include "book/schema.h"
#include "book/write.h"
#include "cli/command.h"
#include "cli/first_facts.h"
#include "cli/open_book.h"
#include "cli/scenarios.h"
#include "report/schema_json.h"

namespace pluckbook::cli {
namespace {

Result<Answer> copy_scenario(const std::string& folder, const std::string& name) {
  std::vector<NewFile> files;
  std::vector<std::string> known;
  for (const ScenarioFile& file : scenario_files()) {
    if (file.scenario == name) files.push_back({file.path, std::string(file.text)});
    if (std::find(known.begin(), known.end(), file.scenario) == known.end()) {
      known.push_back(file.scenario);
    }
  }
  if (files.empty()) {
    return usage_problem(fmt::format("no demo book '{}'", shown(name)), suggestion(name, known));
  }
  Result<Written> written = start_folder(folder, files);
  if (!written) return written.problems();
  Answer answer;
  answer.text = fmt::format(
      "demo book {} copied to {}\nnext: cd {} && pluckbook outlook --as-of 2026-08-20\n", name,
      shown(folder, 200), shown(folder, 200));
  return answer;
}

/// One for each file of a book, so that an editor completes and checks what is typed.
std::vector<NewFile> schemas() {
  std::vector<NewFile> files;
  for (const std::string& file : schema_files()) {
    const std::string stem = std::filesystem::path(file).stem();
    files.push_back({".schema/" + stem + ".json", printed(json_schema(file))});
  }
  return files;
}

}  // namespace

Result<Answer> run_start(const Arguments& arguments) {
  const std::string& folder = arguments.words[0];
  if (arguments.has("scenario")) return copy_scenario(folder, arguments.get("scenario"));
  Result<Date> today = as_of_day(arguments);
  if (!today) return today.problems();
  Result<BookFacts> facts = first_facts(
      arguments, std::filesystem::path(folder).lexically_normal().filename().string(), *today);
  if (!facts) return facts.problems();
  Result<Written> written = start_book(folder, *facts, schemas());
  if (!written) return written.problems();
  const std::string place = shown(folder, 200);
  Answer answer;
  answer.text = fmt::format("book '{}' begun in {}\n", shown(facts->name), place);
  answer.text += facts->herd.empty()
                     ? fmt::format(
                           "next: write your pastures in {0}/pastures.yaml and your herds in "
                           "{0}/herds.yaml, then  pluckbook check --book {0}\n",
                           place)
                     : fmt::format("next: cd {} && pluckbook bag {} --plan\n", place,
                                   facts->pasture.front().second);
  return answer;
}

}  // namespace pluckbook::cli
