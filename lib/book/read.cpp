#include "book/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/text.h"
#include "book/files.h"
#include "book/first_lines.h"
#include "book/read_bags.h"
#include "book/read_parts.h"
#include "book/store.h"

namespace pluckbook {
namespace {

namespace fs = std::filesystem;

using Part = void (*)(FileReading&, const YamlNode&, Book&);

enum class Presence { required, optional };

// The book while its files are read one after the other.
struct Reader {
  fs::path folder;
  Reading reading;
  std::map<std::string, YamlDocument> documents;  // kept for Problems that need two files
  std::set<std::string> unread;                   // files that could not be read

  void note(const Problems& problems) {
    reading.problems.insert(reading.problems.end(), problems.begin(), problems.end());
  }
  FileReading read(const YamlDocument& document) {
    FileReading file(document, {reading.book.units, reading.book.currency}, reading.problems);
    file.unread = unread;
    return file;
  }
};

Problem in_file(const std::string& name, std::string what, std::string remedy) {
  return input_problem(std::move(what), std::move(remedy), Place{name, 0, 0, 1, ""});
}

// The document of a file, or nullptr where it is absent or cannot be read.
const YamlDocument* open_document(Reader& reader, const std::string& name, Presence presence) {
  Result<std::optional<YamlDocument>> document = document_of(reader.folder, name);
  if (!document) {
    reader.note(document.problems());
    return nullptr;
  }
  if (!*document) {
    if (presence == Presence::required) {
      reader.note({in_file(name, "this file of the book is missing",
                           "restore it, or make one that holds only a comment line")});
    }
    return nullptr;
  }
  return &reader.documents.insert_or_assign(name, **std::move(document)).first->second;
}

void read_part(Reader& reader, const std::string& name, Presence presence, Part part) {
  const std::size_t before = reader.reading.problems.size();
  const YamlDocument* document = open_document(reader, name, presence);
  if (reader.reading.problems.size() != before) reader.unread.insert(name);
  if (document == nullptr) return;
  if (document->root.kind != YamlNode::Kind::list && document->root.kind != YamlNode::Kind::null) {
    reader.unread.insert(name);
  }
  FileReading reading = reader.read(*document);
  part(reading, document->root, reader.reading.book);
}

// ---- book.yaml ---------------------------------------------------------------------------------

// A book of another format is refused in one sentence: its keys may mean something else.
bool is_our_format(Reader& reader, const YamlDocument& document) {
  const YamlNode* format = document.root.find("pluckbook");
  if (format == nullptr) return true;  // noted as missing with the other keys
  const auto number = parse_number(format->text);
  if (number && *number == book_format) return true;
  const bool newer = number && *number > book_format;
  reader.note(
      {input_problem(fmt::format("this book is in format {}; this pluckbook reads format {}",
                                 shown(format->text), book_format),
                     newer ? "use a newer pluckbook; nothing was read"
                           : fmt::format("write  pluckbook: {}", book_format),
                     document.place_of(*format))});
  return false;
}

// True when the rest of the book can be read in this one's units.
bool read_front(Reader& reader) {
  const YamlDocument* document = open_document(reader, "book.yaml", Presence::required);
  if (document == nullptr || !is_our_format(reader, *document)) return false;
  // Twice: the first reading tells the units and currency the second reads its money in.
  Book first;
  Problems unused;
  FileReading glance(*document, {}, unused);
  read_operation(glance, document->root, first);
  if (document->root.kind != YamlNode::Kind::map) {
    reader.note(unused);
    return false;
  }
  FileReading reading(*document, {first.units, first.currency}, reader.reading.problems);
  read_operation(reading, document->root, reader.reading.book);
  return true;
}

// ---- samples -----------------------------------------------------------------------------------

/// Tells each pasture the years it has a file of bags in.
void note_sampled_years(Book& book, const std::vector<SamplesFile>& files) {
  std::map<std::string, std::vector<int>> years;
  for (const SamplesFile& file : files) years[file.pasture].push_back(file.year);
  for (Pasture& pasture : book.pastures) pasture.sampled_years = years[pasture.id];
}

void read_bags_of_book(Reader& reader, const PasturesWanted& wanted) {
  Book& book = reader.reading.book;
  std::vector<SamplesFile> files = samples_files(reader.folder, reader.reading.problems);
  note_sampled_years(book, files);
  if (wanted) {
    const FirstYears first_years = wanted(book);
    std::erase_if(files, [&](const SamplesFile& file) {
      const auto first = first_years.find(file.pasture);
      return first == first_years.end() || file.year < first->second;
    });
  }
  SamplesReading samples = read_samples_files(reader.folder, files, book, reader.unread);
  reader.note(samples.problems);
  book.bags = std::move(samples.bags);
}

// ---- what needs two files ----------------------------------------------------------------------

void note_herds_without_pasture(Reader& reader) {
  const auto document = reader.documents.find("herds.yaml");
  if (document == reader.documents.end() || reader.unread.contains("grazing.yaml")) return;
  const Book& book = reader.reading.book;
  FileReading reading = reader.read(document->second);
  for (std::size_t i = 0; i < book.herds.size(); ++i) {
    const Herd& herd = book.herds[i];
    const bool placed = std::any_of(book.moves.begin(), book.moves.end(),
                                    [&](const Move& move) { return move.herd == herd.id; });
    if (placed || herd.id.empty()) continue;
    reading.warn(at_key(document->second.root.items[i], "id"),
                 fmt::format("herd '{}' stands in no pasture", herd.id),
                 fmt::format("say where it is:  pluckbook move {} PASTURE", herd.id));
  }
}

void note_leftovers(Reader& reader) {
  for (const std::string& draft : leftover_drafts(disk(), reader.folder)) {
    Problem note = in_file(draft, "a change was cut short here, or is being made just now",
                           "it is no part of the book; the next change removes it");
    note.severity = Severity::warning;
    reader.note({note});
  }
}

}  // namespace

void sort_by_place(Problems& problems) {
  const auto key = [](const Problem& problem) {
    const Place none;
    const Place& place = problem.place ? *problem.place : none;
    return std::tuple(place.file, place.line, place.column);
  };
  std::stable_sort(problems.begin(), problems.end(),
                   [&](const Problem& a, const Problem& b) { return key(a) < key(b); });
}

bool Reading::has_errors() const {
  return std::any_of(problems.begin(), problems.end(),
                     [](const Problem& p) { return p.severity == Severity::error; });
}

namespace {

Reading reading_of(const fs::path& folder, const PasturesWanted& wanted) {
  Reader reader;
  reader.folder = folder;
  reader.reading.book.folder = folder.string();
  std::error_code error;
  if (!fs::exists(folder / "book.yaml", error)) {
    reader.note({input_problem(fmt::format("there is no book in {}", shown(folder.string(), 200)),
                               "a book is a folder that holds book.yaml; begin one with\n"
                               "pluckbook start DIR, or name one with --book DIR")});
    return std::move(reader.reading);
  }
  if (!read_front(reader)) return std::move(reader.reading);
  read_part(reader, "pastures.yaml", Presence::required, read_pastures);
  read_part(reader, "herds.yaml", Presence::required, read_herds);
  read_part(reader, "grazing.yaml", Presence::optional, read_grazing);
  read_part(reader, "feeds.yaml", Presence::optional, read_feeds);
  read_bags_of_book(reader, wanted);
  read_part(reader, "condition.yaml", Presence::optional, read_condition);
  read_part(reader, "events.yaml", Presence::optional, read_events);
  read_part(reader, "layouts.yaml", Presence::optional, read_layouts);
  note_herds_without_pasture(reader);
  note_leftovers(reader);
  sort_by_place(reader.reading.problems);
  return std::move(reader.reading);
}

}  // namespace

Reading read_whole_book(const fs::path& folder) {
  return reading_of(folder, {});
}

Result<Book> read_book(const fs::path& folder, const PasturesWanted& wanted) {
  Reading reading = reading_of(folder, wanted);
  if (!reading.has_errors()) return std::move(reading.book);
  std::erase_if(reading.problems,
                [](const Problem& problem) { return problem.severity == Severity::warning; });
  return std::move(reading.problems);
}

Result<Book> read_feeds_file(const fs::path& file, UnitSystem units, const std::string& currency) {
  Reader reader;
  const fs::path whole = fs::absolute(file);
  reader.folder = whole.parent_path();
  reader.reading.book.units = units;
  reader.reading.book.currency = currency;
  const std::string name = whole.filename().string();
  std::error_code error;
  if (!fs::exists(whole, error))
    return in_file(name, "there is no such file",
                   "write what is offered there:  " + feed_line("cube-20", currency));
  read_part(reader, name, Presence::required, read_feeds);
  if (reader.reading.has_errors()) return std::move(reader.reading.problems);
  if (reader.reading.book.feeds.empty())
    return in_file(name, "no feeds are written here",
                   "write one:  " + feed_line("cube-20", currency));
  return std::move(reader.reading.book);
}

}  // namespace pluckbook
