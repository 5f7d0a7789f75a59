#include "cli/open_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>

#include "advice/herd_day.h"
#include "base/text.h"
#include "book/first_lines.h"
#include "book/read.h"
#include "cli/terminal.h"
#include "forage/diet_refit.h"

namespace pluckbook::cli {
namespace {

constexpr long usual_horizon_days = 180;

/// What to do about an id that the book does not hold.
std::string remedy_for(const std::string& id, const char* kind,
                       const std::vector<std::string>& known, const std::string& currency) {
  constexpr std::size_t listed = 12;
  if (const auto near = nearest_word(id, known)) return fmt::format("did you mean '{}'?", *near);
  if (known.size() > listed) return "all of them:  pluckbook bags --all";
  std::string remedy = known.empty() ? "" : fmt::format("the book has: {}", fmt::join(known, ", "));
  const bool may_be_new = known.empty() || kind == std::string_view("feed");
  if (!may_be_new) return remedy;
  if (!remedy.empty()) remedy += "\n";
  return remedy + line_to_add(kind, shown(id), currency);
}

template <class Record>
Result<const Record*> named(const Book& book, const std::vector<Record>& records,
                            const std::string& id, const char* kind) {
  std::vector<std::string> known;
  for (const Record& record : records) {
    if (record.id == id) return &record;
    known.push_back(record.id);
  }
  return usage_problem(fmt::format("no {} '{}' in the book", kind, shown(id)),
                       remedy_for(id, kind, known, book.currency));
}

Problem no_herd_yet(const Book& book) {
  return input_problem("the book has no herd yet", line_to_add("herd", "cows", book.currency));
}

}  // namespace

Result<std::string> book_folder(const Arguments& arguments) {
  if (arguments.has("book")) return arguments.get("book");
  const char* set = std::getenv("PLUCKBOOK_BOOK");
  if (set != nullptr && *set != '\0') return std::string(set);
  std::error_code error;
  for (std::filesystem::path at = std::filesystem::current_path(error); !error;) {
    if (std::filesystem::exists(at / "book.yaml", error)) return at.string();
    if (at == at.parent_path()) break;
    at = at.parent_path();
  }
  return usage_problem("no book here: neither this folder nor one above it holds a book.yaml",
                       "go to the book's folder, or say --book DIR; to begin one: pluckbook start "
                       "DIR");
}

Result<UnitSystem> units_of(const Arguments& arguments, UnitSystem otherwise) {
  if (!arguments.has("units")) return otherwise;
  const std::string word = arguments.get("units");
  if (word == "us") return UnitSystem::us;
  if (word == "metric") return UnitSystem::metric;
  return usage_problem(fmt::format("unknown units '{}'", shown(word)), "write us or metric");
}

std::string contents(const Book& book) {
  return counted(book.pastures.size(), "pasture") + ", " + counted(book.herds.size(), "herd") +
         ", " + counted(book.bags.size(), "bag") + ", " + counted(book.feeds.size(), "feed");
}

Result<Date> as_of_day(const Arguments& arguments) {
  return arguments.date("as-of", today());
}

Result<Date> recorded_day(const Arguments& arguments, Date as_of) {
  Result<Date> day = arguments.date("date", as_of);
  if (!day || *day <= as_of) return day;
  return usage_problem(fmt::format("{} has not come yet", to_iso(*day)),
                       "records are kept on the day itself or later");
}

namespace {

Result<OpenedToChange> opened_for(const Arguments& arguments, const PasturesWanted& wanted,
                                  bool keeps_whole) {
  Result<Date> as_of = as_of_day(arguments);
  if (!as_of) return as_of.problems();
  Result<Date> until = arguments.date("until", *as_of + Days(usual_horizon_days));
  if (!until) return until.problems();
  if (*until < *as_of || days_between(*as_of, *until) > 1100) {
    return usage_problem(fmt::format("--until {} is not within three years after {}",
                                     to_iso(*until), to_iso(*as_of)),
                         "choose a later day; 180 days ahead is usual");
  }
  Result<std::string> folder = book_folder(arguments);
  if (!folder) return folder.problems();
  const auto known_on = [&](Book book) {
    return arguments.has("as-of") ? pluckbook::as_of(std::move(book), *as_of)
                                  : as_of_today(std::move(book), *as_of);
  };
  // What was known then tells whose bags are wanted: later years must not decide it.
  const auto wanted_then = [&](const Book& without_bags) { return wanted(known_on(without_bags)); };
  Result<Book> book = read_book(*folder, wanted ? PasturesWanted(wanted_then) : wanted);
  if (!book) return book.problems();
  Result<UnitSystem> units = units_of(arguments, book->units);
  if (!units) return units.problems();
  OpenedToChange opened;
  opened.as_of = *as_of;
  opened.until = *until;
  opened.reader = {*units, book->currency, page_width()};
  if (keeps_whole) opened.whole = *book;
  opened.known = known_on(*std::move(book));
  return opened;
}

}  // namespace

Result<Opened> open_book(const Arguments& arguments, const PasturesWanted& wanted) {
  Result<OpenedToChange> opened = opened_for(arguments, wanted, false);
  if (!opened) return opened.problems();
  return Opened(*std::move(opened));
}

Result<OpenedToChange> open_to_change(const Arguments& arguments, const PasturesWanted& wanted) {
  return opened_for(arguments, wanted, true);
}

PasturesWanted no_pastures() {
  return [](const Book&) { return FirstYears(); };
}

PasturesWanted pastures_of_herds(const Arguments& arguments) {
  return [words = arguments.words](const Book& book) {
    std::vector<const Pasture*> asked;
    for (const Herd& herd : book.herds) {
      if (!words.empty() && std::find(words.begin(), words.end(), herd.id) == words.end()) continue;
      for (const Pasture* pasture : pastures_of(book, herd)) asked.push_back(pasture);
    }
    return pastures_that_tell_of(book, asked);
  };
}

PasturesWanted pastures_of_pasture(const std::string& id) {
  return [id](const Book& book) {
    const Pasture* pasture = find_pasture(book, id);
    return pasture == nullptr ? FirstYears() : pastures_that_tell_of(book, {pasture});
  };
}

PasturesWanted pastures_of_herds_on(const std::string& id) {
  return [id](const Book& book) {
    const Pasture* here = find_pasture(book, id);
    if (here == nullptr) return FirstYears();
    std::vector<const Pasture*> asked = {here};
    for (const Herd& herd : book.herds) {
      const std::vector<const Pasture*> theirs = pastures_of(book, herd);
      if (std::find(theirs.begin(), theirs.end(), here) == theirs.end()) continue;
      asked.insert(asked.end(), theirs.begin(), theirs.end());
    }
    return pastures_that_tell_of(book, asked);
  };
}

Result<const Herd*> herd_named(const Book& book, const std::string& id) {
  return named(book, book.herds, id, "herd");
}
Result<const Pasture*> pasture_named(const Book& book, const std::string& id) {
  return named(book, book.pastures, id, "pasture");
}
Result<const Bag*> bag_named(const Book& book, const std::string& id) {
  return named(book, book.bags, id, "bag");
}
Result<const Feed*> feed_named(const Book& book, const std::string& id) {
  return named(book, book.feeds, id, "feed");
}

Result<const Herd*> herd_asked(const Book& book, const Arguments& arguments) {
  if (!arguments.words.empty()) return herd_named(book, arguments.words[0]);
  if (book.herds.size() == 1) return &book.herds.front();
  if (book.herds.empty()) return no_herd_yet(book);
  std::vector<std::string> known;
  for (const Herd& herd : book.herds) known.push_back(herd.id);
  return usage_problem("the book has several herds: which one?",
                       fmt::format("name one: {}", fmt::join(known, ", ")));
}

Result<std::vector<const Herd*>> herds_named(const Book& book,
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
    return no_herd_yet(book);
  }
  return herds;
}

}  // namespace pluckbook::cli
