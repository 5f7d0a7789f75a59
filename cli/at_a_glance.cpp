#include "cli/at_a_glance.h"

#include <fmt/format.h>

#include "base/text.h"
#include "cli/command_line.h"
#include "cli/open_book.h"
#include "cli/whereabouts.h"
#include "report/table.h"

namespace pluckbook::cli {

Result<std::string> at_a_glance() {
  const Arguments no_arguments;
  const Result<std::string> folder = book_folder(no_arguments);
  if (!folder) return help_text();
  Result<Opened> opened = open_book(no_arguments);
  if (!opened) return opened.problems();
  const Book& book = opened->known;
  std::string text = fmt::format("{}, the book in {}\n{}\n\n", shown(book.name),
                                 shown(*folder, 200), contents(book));
  bool waiting = false;
  for (const Whereabouts& bag : bags_under_way(book, opened->as_of)) {
    if (bag.due.empty()) continue;
    text += wrapped(fmt::format("{}: {}", bag.bag->id, bag.due), opened->reader.width, 2);
    waiting = true;
  }
  if (!waiting) text += "no bag waits for you\n";
  text += book.herds.empty() ? "next: write a herd in herds.yaml, then  pluckbook check\n"
                             : "next: pluckbook outlook\n";
  return text + "all commands: pluckbook --help\n";
}

}  // namespace pluckbook::cli
