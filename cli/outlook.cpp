#include "advice/outlook.h"

#include "book/first_lines.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
Result<Answer> run_outlook(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<std::vector<const Herd*>> herds = herds_named(opened->known, arguments.words);
  if (!herds) return herds.problems();
  OutlookAnswer outlook;
  outlook.settings.as_of = opened->as_of;
  outlook.settings.until = opened->until;
  for (const Herd* herd : *herds) {
    Result<HerdOutlook> one = outlook_of(opened->known, *herd, outlook.settings);
    if (!one) return one.problems();
    outlook.herds.push_back(std::move(*one));
  }
  if (opened->known.feeds.empty())
    outlook.first_feed = "add to feeds.yaml:  " + feed_line("cube-20", opened->whole.currency);
  outlook.next_sample = next_sample(opened->known, outlook.herds, outlook.settings);
  Answer answer;
  answer.text = in_form_asked(arguments, outlook, opened->reader);
  return answer;
}

}  // namespace pluckbook::cli
