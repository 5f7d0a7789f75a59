#include "advice/outlook.h"

#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<std::vector<const Herd*>> herds_asked(const Book& book,
                                             const std::vector<std::string>& names) {
  std::vector<const Herd*> herds;
  if (names.empty()) {
    for (const Herd& herd : book.herds) herds.push_back(&herd);
  }
  for (const std::string& name : names) {
    Result<const Herd*> herd = herd_named(book, name);
    if (!herd) return herd.problems();
    herds.push_back(*herd);
  }
  if (herds.empty()) {
    return input_problem("the book has no herd yet", "write one in herds.yaml");
  }
  return herds;
}

}  // namespace

Result<Answer> run_outlook(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<std::vector<const Herd*>> herds = herds_asked(opened->known, arguments.words);
  if (!herds) return herds.problems();
  OutlookAnswer outlook;
  outlook.settings.as_of = opened->as_of;
  outlook.settings.until = opened->until;
  for (const Herd* herd : *herds) {
    Result<HerdOutlook> one = outlook_of(opened->known, *herd, outlook.settings);
    if (!one) return one.problems();
    outlook.herds.push_back(std::move(*one));
  }
  outlook.next_sample = next_sample(opened->known, outlook.herds, outlook.settings);
  Answer answer;
  answer.text = in_form_asked(arguments, outlook, opened->reader);
  return answer;
}

}  // namespace pluckbook::cli
