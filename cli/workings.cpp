#include "advice/workings.h"

#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {

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

}  // namespace pluckbook::cli
