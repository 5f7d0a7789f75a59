#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "base/text.h"
#include "book/schema.h"
#include "book/write.h"
#include "cli/command.h"
#include "cli/first_facts.h"
#include "cli/kept.h"
#include "cli/next_line.h"
#include "cli/open_book.h"
#include "cli/scenarios.h"
#include "report/schema_json.h"

namespace pluckbook::cli {
namespace {

Answer begun(const Kept& book, const Written& written, const Arguments& arguments) {
  return {arguments.has("json") ? document_of(book, "start", written)
                                : fmt::format("{}\nnext: {}\n", book.what, book.next),
          {}};
}

Result<Answer> copy_scenario(const Arguments& arguments) {
  const std::string &folder = arguments.words[0], name = arguments.get("scenario");
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
  const std::string place = shell_word(shown(folder, 200));
  return begun({fmt::format("demo book {} copied to {}", name, place),
                fmt::format("cd {} && pluckbook outlook --as-of 2026-08-20", place)},
               *written, arguments);
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

Result<Answer> run_start(const Arguments& arguments) {
  const std::string& folder = arguments.words[0];
  if (arguments.has("scenario")) return copy_scenario(arguments);
  Result<Date> today = as_of_day(arguments);
  if (!today) return today.problems();
  Result<BookFacts> facts = first_facts(
      arguments, std::filesystem::path(folder).lexically_normal().filename().string(), *today);
  if (!facts) return facts.problems();
  Result<Written> written = start_book(folder, *facts, schemas());
  if (!written) return written.problems();
  const std::string place = shell_word(shown(folder, 200));
  const std::string next =
      facts->herd.empty()
          ? fmt::format(
                "write your pastures in {0}/pastures.yaml and your herds in "
                "{0}/herds.yaml, then  pluckbook check --book {0}",
                place)
          : fmt::format("cd {} && pluckbook bag {} --plan", place, facts->pasture.front().second);
  return begun({fmt::format("book '{}' begun in {}", shown(facts->name), place), next}, *written,
               arguments);
}

}  // namespace

Command start_command() {
  return {
      .name = "start",
      .usage = "DIR",
      .purpose = "begins a book, or copies a demo book",
      .group = "the book",
      .examples = {"pluckbook start mybook", "pluckbook start demo --scenario northern"},
      .options = {{"name", "TEXT", "what the place is called (the folder's name)"},
                  {"pasture", "TEXT", "a pasture that is plucked, by name (none yet)"},
                  {"forage", "WORD", "its grass (northern mixed-grass)"},
                  {"herd", "TEXT", "the cows that graze it, by name (none yet)"},
                  {"head", "N", "how many (100)"},
                  {"weight", "WEIGHT", "what a grown cow weighs (1200 lb)"},
                  {"calving", "DATE", "when the season's first calf came (15 March)"},
                  {"currency", "CODE", "money of the quotes (USD)"},
                  {"scenario", "NAME", "copy a demo: northern or southern"}},
      .least_words = 1,
      .most_words = 1,
      .uses_book = false,
      .run = run_start,
  };
}

}  // namespace pluckbook::cli
