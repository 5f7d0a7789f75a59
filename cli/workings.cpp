#include "advice/workings.h"

#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<Answer> run_workings(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments, pastures_of_herds(arguments));
  if (!opened) return opened.problems();
  Result<const Herd*> herd = herd_asked(opened->known, arguments);
  if (!herd) return herd.problems();
  Result<Date> day = arguments.date("on", opened->as_of);
  if (!day) return day.problems();
  Result<HerdDay> that_day = herd_day(opened->known, **herd, *day);
  if (!that_day) return that_day.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, workings_of(*that_day), opened->reader);
  return answer;
}

}  // namespace

Command workings_command() {
  return {
      .name = "workings",
      .usage = "[HERD]",
      .purpose = "one day's arithmetic, line by line, sourced",
      .group = "the numbers",
      .examples = {"pluckbook workings spring-cows",
                   "pluckbook workings spring-cows --on 2026-09-15 --as-of 2026-08-20"},
      .options = {{"on", "DATE", "the day worked out (as-of)"}},
      .most_words = 1,
      .run = run_workings,
      .rows = "sections/lines",
  };
}

}  // namespace pluckbook::cli
