#include "advice/compare.h"

#include "base/yaml.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/named_file.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<Answer> run_compare(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<std::string> text =
      text_of_file(arguments.words[0], YamlLimits{}.bytes,
                   "write the what-ifs there; pluckbook compare --help shows how");
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
    return input_problem("the comparison ends on " + to_iso(settings.windows.until) +
                             ", before it begins on " + to_iso(settings.windows.as_of),
                         "write a later 'until', or say --until DATE");
  }
  const Result<Comparison> comparison = compare(opened->known, *asked, settings);
  if (!comparison) return comparison.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *comparison, opened->reader);
  answer.exit_status = comparison->ranked.front().covers() ? 0 : 1;
  return answer;
}

}  // namespace

Command compare_command() {
  return {
      .name = "compare",
      .usage = "FILE",
      .purpose = "what-ifs of a herd side by side",
      .group = "the season",
      .examples = {"pluckbook compare what-ifs.yaml", "pluckbook compare what-ifs.yaml --json"},
      .options = {{"intake-recovers", "", "price on what she eats once protein is met"}},
      .least_words = 1,
      .most_words = 1,
      .run = run_compare,
      .rows = "ranked",
  };
}

}  // namespace pluckbook::cli
