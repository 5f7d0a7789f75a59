// read.h - a folder of YAML files becomes a Book, or a list of Problems with places. Writes
// nothing.
#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <string>

#include "base/problem.h"
#include "book/records.h"

namespace pluckbook {

/// Everything a whole reading finds: the book as far as it could be read, and all Problems of all
/// files by file and line, warnings among them.
struct Reading {
  Book book;
  Problems problems;
  bool has_errors() const;
};

/// By file, line and column.
void sort_by_place(Problems& problems);

/// For `check`: reads on after a Problem. A folder without book.yaml is one error.
Reading read_whole_book(const std::filesystem::path& folder);

/// Whose bags a question needs, by pasture, and from which year on.
using FirstYears = std::map<std::string, int>;
/// Told from the book without its bags.
using PasturesWanted = std::function<FirstYears(const Book& without_bags)>;

/// For every other command: the book, or its errors. Warnings are left to `check`. With `wanted`,
/// no other file of bags is opened.
Result<Book> read_book(const std::filesystem::path& folder, const PasturesWanted& wanted = {});

/// A file like the book's feeds.yaml, wherever it lies: a book that holds its feeds and no more.
/// Fails: the file cannot be read, holds errors, or holds no feed.
Result<Book> read_feeds_file(const std::filesystem::path& file, UnitSystem units,
                             const std::string& currency);

/// One `name=value` of a typed result: "cp=6.4", "protein=6.4", "CP=64 g/kg" -> analyte and
/// percent.
struct TypedValue {
  std::string analyte;
  double percent = 0;
};
/// Fails: an analyte nobody knows (nearest suggested), a value that is no number, a bare "nitrate".
Result<TypedValue> parse_lab_value(const std::string& name_value);

/// A green bag with the protein of straw on dry matter: most likely the as-received column was
/// read. The limits (under 60 % dry matter, under 6 % protein) are assumed.
bool looks_as_received(const LabResult& result);

/// "1250 lb", "565 kg" or a bare number in the unit of the system.
Result<KgBody> parse_weight(const std::string& text, UnitSystem units);
Result<double> parse_metres(const std::string& text, UnitSystem units);  // of a walk
Result<KgPerDay> parse_milk(const std::string& text, UnitSystem units);
Result<KgPerDay> parse_gain(const std::string& text, UnitSystem units);

}  // namespace pluckbook
