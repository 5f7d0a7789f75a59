#include "advice/outlook.h"

#include "base/parallel.h"
#include "book/first_lines.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<Answer> run_outlook(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments, pastures_of_herds(arguments));
  if (!opened) return opened.problems();
  Result<std::vector<const Herd*>> herds = herds_named(opened->known, arguments.words);
  if (!herds) return herds.problems();
  OutlookAnswer outlook;
  outlook.settings.as_of = opened->as_of;
  outlook.settings.until = opened->until;
  Result<std::vector<HerdOutlook>> all = all_in_parallel<HerdOutlook>(
      herds->size(),
      [&](std::size_t i) { return outlook_of(opened->known, *(*herds)[i], outlook.settings); });
  if (!all) return all.problems();
  outlook.herds = *std::move(all);
  if (opened->known.feeds.empty())
    outlook.first_feed = "add to feeds.yaml:  " + feed_line("cube-20", opened->known.currency);
  outlook.next_sample = next_sample(opened->known, outlook.herds, outlook.settings);
  Answer answer;
  answer.text = in_form_asked(arguments, outlook, opened->reader);
  return answer;
}

}  // namespace

Command outlook_command() {
  return {
      .name = "outlook",
      .usage = "[HERD ...]",
      .purpose = "when protein and energy fall below need",
      .group = "the season",
      .examples = {"pluckbook outlook", "pluckbook outlook spring-cows --as-of 2026-08-20"},
      .most_words = 64,
      .run = run_outlook,
      .rows = "herds/nutrients",
  };
}

}  // namespace pluckbook::cli
