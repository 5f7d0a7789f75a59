#include <fmt/format.h>

#include "base/text.h"
#include "book/first_lines.h"
#include "book/write.h"
#include "cli/kept.h"
#include "cli/open_book.h"
#include "cli/whereabouts.h"

namespace pluckbook::cli {
namespace {

Result<Mark::What> what_of(const std::string& word) {
  if (word == "dried") return Mark::What::dried;
  if (word == "sent") return Mark::What::sent;
  if (word == "received") return Mark::What::received;
  if (word == "spoiled") return Mark::What::spoiled;
  if (word == "lost") return Mark::What::lost;
  const std::vector<std::string> known = {"dried", "sent", "received", "spoiled", "lost"};
  return usage_problem(fmt::format("unknown mark '{}'", shown(word)), suggestion(word, known));
}

std::vector<std::string> ids_of(const std::vector<Laboratory>& labs) {
  std::vector<std::string> ids;
  for (const Laboratory& lab : labs) ids.push_back(lab.id);
  return ids;
}

/// The laboratory named, or the only one the book has.
Result<std::string> laboratory_for(const Arguments& arguments, const Book& book) {
  const std::string lab = arguments.get("lab");
  if (lab.empty()) {
    if (book.labs.size() == 1) return book.labs.front().id;
    return usage_problem("sent to which laboratory?",
                         book.labs.empty()
                             ? "the book has none yet; " + line_to_add("laboratory", "county", "")
                             : fmt::format("say --lab ID: {}", fmt::join(ids_of(book.labs), ", ")));
  }
  if (find_laboratory(book, lab) != nullptr) return lab;
  return usage_problem(fmt::format("no laboratory '{}' in the book", shown(lab)),
                       book.labs.empty() ? line_to_add("laboratory", shown(lab), "")
                                         : suggestion(lab, ids_of(book.labs)));
}

std::string to_mail(const Book& book, const std::string& bag) {
  const std::string mail = "mail it early in the week";
  if (book.labs.empty()) return mail + "; first " + line_to_add("laboratory", "county", "");
  const std::string lab = book.labs.size() == 1 ? "" : " --lab " + book.labs.front().id;
  return fmt::format("{}, then  pluckbook mark {} sent{}", mail, bag, lab);
}

std::string next_step(const Book& book, const std::string& bag, Mark::What what) {
  switch (what) {
    case Mark::What::dried:
      return to_mail(book, bag);
    case Mark::What::sent:
    case Mark::What::received:
      return fmt::format("when the page comes,  pluckbook result {}", bag);
    case Mark::What::spoiled:
    case Mark::What::lost:
      return "pluck another when the grass has not changed much";
  }
  return "";
}

Result<Answer> run_mark(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments);
  if (!opened) return opened.problems();
  Result<const Bag*> bag = bag_named(opened->whole, arguments.words[0]);
  if (!bag) return bag.problems();
  Result<Mark::What> what = what_of(arguments.words[1]);
  if (!what) return what.problems();
  Result<Date> date = recorded_day(arguments, opened->as_of);
  if (!date) return date.problems();
  if (*date < (*bag)->plucked) {
    return usage_problem(fmt::format("{} lies before the bag was plucked ({})", to_iso(*date),
                                     to_iso((*bag)->plucked)),
                         "correct --date, or the bag's own line in " + (*bag)->origin.file);
  }
  Mark mark{*what, *date, ""};
  if (*what == Mark::What::sent) {
    Result<std::string> lab = laboratory_for(arguments, opened->whole);
    if (!lab) return lab.problems();
    mark.lab = *lab;
  }
  Result<Written> written = mark_bag(opened->whole, (*bag)->id, mark);
  if (!written) return written.problems();
  const std::string to = mark.lab.empty() ? "" : " to " + mark.lab;
  const bool slow = *what == Mark::What::dried && dried_slowly(**bag, *date);
  const Kept kept = {
      fmt::format("bag {} {} on {}{}{}", (*bag)->id, arguments.words[1], to_iso(*date), to,
                  slow ? "\nit dried slowly: look for mould before you mail it" : ""),
      next_step(opened->whole, (*bag)->id, *what),
      {{"bag", (*bag)->id}, {"mark", arguments.words[1]}, {"date", to_iso(*date)}}};
  return said_of(kept, "mark", *written, arguments);
}

}  // namespace

Command mark_command() {
  return {
      .name = "mark",
      .usage = "BAG WORD",
      .purpose = "dried, sent, received, spoiled or lost",
      .group = "the bag",
      .examples = {"pluckbook mark 26-draws-08 dried",
                   "pluckbook mark 26-draws-08 sent --lab county"},
      .options = {{"date", "DATE", "when (as-of)"}, {"lab", "ID", "with sent: which laboratory"}},
      .least_words = 2,
      .most_words = 2,
      .run = run_mark,
  };
}

}  // namespace pluckbook::cli
