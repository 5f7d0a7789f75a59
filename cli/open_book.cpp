#include "cli/open_book.h"

#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>

#include "base/text.h"
#include "book/read.h"
#include "cli/terminal.h"

namespace pluckbook::cli {
namespace {

constexpr long usual_horizon_days = 180;

template <class Record>
Result<const Record*> named(const std::vector<Record>& records, const std::string& id,
                            const char* kind) {
  std::vector<std::string> known;
  for (const Record& record : records) {
    if (record.id == id) return &record;
    known.push_back(record.id);
  }
  const auto near = nearest_word(id, known);
  const std::string remedy = near            ? fmt::format("did you mean '{}'?", *near)
                             : known.empty() ? fmt::format("the book has no {} yet", kind)
                             : known.size() <= 12
                                 ? fmt::format("the book has: {}", fmt::join(known, ", "))
                                 : fmt::format("the book has {} of them", known.size());
  return usage_problem(fmt::format("no {} '{}' in the book", kind, shown(id)), remedy);
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

Result<Opened> open_book(const Arguments& arguments) {
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
  Result<Book> book = read_book(*folder);
  if (!book) return book.problems();
  Result<UnitSystem> units = units_of(arguments, book->units);
  if (!units) return units.problems();
  Opened opened{std::move(*book), {}, *as_of, *until, {}};
  opened.known = arguments.has("as-of") ? pluckbook::as_of(opened.whole, *as_of)
                                        : as_of_today(opened.whole, *as_of);
  opened.reader = {*units, opened.whole.currency, page_width()};
  return opened;
}

Result<const Herd*> herd_named(const Book& book, const std::string& id) {
  return named(book.herds, id, "herd");
}
Result<const Pasture*> pasture_named(const Book& book, const std::string& id) {
  return named(book.pastures, id, "pasture");
}
Result<const Bag*> bag_named(const Book& book, const std::string& id) {
  return named(book.bags, id, "bag");
}
Result<const Feed*> feed_named(const Book& book, const std::string& id) {
  return named(book.feeds, id, "feed");
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
    return input_problem("the book has no herd yet", "write one in herds.yaml");
  }
  return herds;
}

}  // namespace pluckbook::cli
