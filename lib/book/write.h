// write.h - what the program adds to a book. Each function splices text into one file, reads the
// new text back before it touches the disk, and returns only when the change is on disk.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "book/append.h"
#include "book/records.h"

namespace pluckbook {

/// Where the new record stands.
struct Written {
  std::string file;  // as shown: "samples/2026/north.yaml"
  int line = 0;
  Problems warnings = {};  // an editor's change kept beside it, what an earlier change left
};

struct BookFacts {
  std::string name;
  UnitSystem units = UnitSystem::us;
  std::string currency = "USD";
  // The first records of their files, left out where empty.
  WrittenKeys pasture = {}, herd = {}, move = {};
};

/// A file of a new book: its name below the folder, its text.
struct NewFile {
  std::string name, text;
};

/// Begins a book in a new or empty folder: book.yaml and the other files with a comment line each,
/// such that `check` accepts them; each names its schema (".schema/herds.json"), for editors.
/// Fails: the folder already holds a book, or is not empty.
Result<Written> start_book(const std::filesystem::path& folder, const BookFacts& facts,
                           std::vector<NewFile> schemas = {});

/// Begins a book with the files given (a demo book); book.yaml is written last, so that until it
/// stands the folder is no book.
/// Fails: as start_book.
Result<Written> start_folder(const std::filesystem::path& folder, std::vector<NewFile> files);

/// Requires for all below: `book` was read from disk just before (not an as_of copy).
/// A file that an editor saves meanwhile is read again, so that both changes are kept.
/// Fails: an id that exists or is a path; the same bag changed meanwhile; the lock held; the disk.
Result<Written> add_bag(const Book& book, const Bag& bag);

struct Mark {
  enum class What { dried, sent, received, spoiled, lost } what = What::dried;
  Date date;
  std::string lab;  // sent only
};
Result<Written> mark_bag(const Book& book, const std::string& bag, const Mark& mark);
Result<Written> add_result(const Book& book, const std::string& bag, const LabResult& result);

/// A move, score or event at the end of its file; a quote behind those of its feed (append.h).
Result<Written> add_record(const Book& book, const std::string& file, const WrittenKeys& record);
Result<Written> add_quote(const Book& book, const std::string& feed, const WrittenKeys& quote);

/// A file of the book as it was read (nothing: there was none) and as it is to be.
struct TextChange {
  std::string file;
  std::optional<std::string> before;
  std::string after;
};

/// Several files under one lock, the given order: all are looked at before the first is replaced.
/// What is returned names the first of them.
/// Fails: one was changed meanwhile (nothing is written); the disk, saying how many stand already.
Result<Written> write_texts(const Book& book, const std::vector<TextChange>& changes);

/// The id proposed for a new bag: the year's last two digits, the pasture, the next number.
std::string proposed_bag_id(const Book& book, const std::string& pasture, Date plucked);

}  // namespace pluckbook
