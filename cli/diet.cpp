#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<Answer> run_diet(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments, pastures_of_pasture(arguments.words[0]));
  if (!opened) return opened.problems();
  Result<const Pasture*> pasture = pasture_named(opened->known, arguments.words[0]);
  if (!pasture) return pasture.problems();
  Result<DietSeries> series = DietSeries::of(opened->known, **pasture);
  if (!series) return series.problems();
  OutlookSettings settings;
  settings.as_of = opened->as_of;
  settings.until = opened->until;
  const DietAnswer diet = diet_answer(opened->known, *series, settings);
  Answer answer;
  answer.text = in_form_asked(arguments, diet, opened->reader);
  return answer;
}

}  // namespace

Command diet_command() {
  return {
      .name = "diet",
      .usage = "PASTURE",
      .purpose = "the series: bags, curve, range, chart",
      .group = "the season",
      .examples = {"pluckbook diet draws", "pluckbook diet draws --as-of 2026-08-20 --json"},
      .least_words = 1,
      .most_words = 1,
      .run = run_diet,
      .rows = "days",
  };
}

}  // namespace pluckbook::cli
