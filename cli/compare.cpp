#include "advice/compare.h"

#include <filesystem>
#include <fstream>
#include <iterator>

#include "base/text.h"
#include "base/yaml.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<std::string> text_of_file(const std::string& name) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(name, error)) {
    return usage_problem("there is no file '" + shown(name) + "'",
                         "write the what-ifs there; pluckbook compare --help shows how");
  }
  if (std::filesystem::file_size(name, error) > YamlLimits{}.bytes) {
    return input_problem("'" + shown(name) + "' is too large for a file of what-ifs",
                         "is it the right file?");
  }
  std::ifstream in(name, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(in), {}};
  if (!in) return system_problem("cannot read '" + shown(name) + "'", "look at its permissions");
  return text;
}

}  // namespace

Result<Answer> run_compare(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<std::string> text = text_of_file(arguments.words[0]);
  if (!text) return text.problems();
  const Result<WhatIfs> asked = read_what_ifs(arguments.words[0], std::move(*text), opened->known);
  if (!asked) return asked.problems();
  ScheduleSettings settings;
  settings.windows.as_of = opened->as_of;
  settings.windows.until =
      arguments.has("until") ? opened->until : asked->until.value_or(opened->until);
  settings.windows.cover = asked->cover.value_or(opened->known.cover);
  settings.windows.change_every = asked->change_every.value_or(settings.windows.change_every);
  if (arguments.has("intake-recovers")) settings.fed = FedIntake::recovered;
  if (settings.windows.until < settings.windows.as_of) {
    return input_problem(
        "until " + to_iso(settings.windows.until) + " is before " + to_iso(settings.windows.as_of),
        "write a later day, or say --until DATE");
  }
  const Result<Comparison> comparison = compare(opened->known, *asked, settings);
  if (!comparison) return comparison.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *comparison, opened->reader);
  answer.exit_status = comparison->ranked.front().covers() ? 0 : 1;
  return answer;
}

}  // namespace pluckbook::cli
