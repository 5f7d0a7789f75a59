// open_book.h - what most commands need first: the book, the day, the reader.
#pragma once

#include "book/read.h"
#include "cli/command.h"

namespace pluckbook::cli {

struct Opened {
  Book known;  // as it was known on as_of
  Date as_of, until;
  Reader reader;
};
struct OpenedToChange : Opened {
  Book whole;  // as it is on disk
};

/// The folder of the book: --book, PLUCKBOOK_BOOK, or the nearest folder upward with a book.yaml.
Result<std::string> book_folder(const Arguments& arguments);
/// For a question: where it says which pastures' bags it wants, no others are read.
Result<Opened> open_book(const Arguments& arguments, const PasturesWanted& wanted = {});
/// For a change.
Result<OpenedToChange> open_to_change(const Arguments& arguments,
                                      const PasturesWanted& wanted = {});

/// No bag at all.
PasturesWanted no_pastures();
/// The pastures that tell of the herds named by the command's words, of all herds without a word.
PasturesWanted pastures_of_herds(const Arguments& arguments);
/// Those that tell of the pasture with that id, or of the herds that ever stand there.
PasturesWanted pastures_of_pasture(const std::string& id);
PasturesWanted pastures_of_herds_on(const std::string& id);

/// --units where given, else the system named.
Result<UnitSystem> units_of(const Arguments& arguments, UnitSystem otherwise);

/// Fails with the nearest known id suggested.
Result<const Herd*> herd_named(const Book& book, const std::string& id);
/// The herd that is the command's first word; without one, the only herd of the book.
Result<const Herd*> herd_asked(const Book& book, const Arguments& arguments);
/// The herds named; all of them when none is.
Result<std::vector<const Herd*>> herds_named(const Book& book,
                                             const std::vector<std::string>& names);
Result<const Pasture*> pasture_named(const Book& book, const std::string& id);
Result<const Bag*> bag_named(const Book& book, const std::string& id);
Result<const Feed*> feed_named(const Book& book, const std::string& id);

/// "3 pastures, 2 herds, 47 bags, 9 feeds"
std::string contents(const Book& book);

/// --as-of, else today.
Result<Date> as_of_day(const Arguments& arguments);

/// --date, else the day itself: when what is recorded happened.
/// Fails: a day still to come.
Result<Date> recorded_day(const Arguments& arguments, Date as_of);

}  // namespace pluckbook::cli
