#include "book/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <system_error>

#include "base/text.h"
#include "book/edit.h"
#include "book/files.h"
#include "book/first_lines.h"
#include "book/read.h"
#include "book/read_parts.h"
#include "book/store.h"

namespace pluckbook {
namespace {

namespace fs = std::filesystem;

using Splice = std::function<Result<Spliced>(const std::string& text)>;

Problem changed_meanwhile(const std::string& what) {
  return system_problem(fmt::format("{} was changed by someone else meanwhile", what),
                        "nothing was written; run the command again");
}

Problem kept_both(const std::string& file) {
  Problem note = system_problem(
      fmt::format("{} was changed by someone else meanwhile: both changes are kept", file),
      "read it anew if it is open in an editor");
  note.severity = Severity::warning;
  return note;
}

Problem cleared(const std::string& draft) {
  Problem note = system_problem(fmt::format("{} was left by a change cut short: removed", draft),
                                "that change is not in the book unless its command said so");
  note.severity = Severity::warning;
  return note;
}

Result<fs::path> folder_of(const Book& book) {
  std::error_code error;
  fs::path folder = fs::canonical(book.folder, error);
  if (!error) return folder;
  return system_problem(fmt::format("cannot find {}", shown(book.folder, 200)),
                        "nothing was changed");
}

// What is to be said of a change; what an earlier one left behind is removed first.
// Requires: the book's lock is held.
Written begun(const fs::path& folder, const std::string& file) {
  Written written{file};
  for (const std::string& draft : clear_drafts(disk(), folder)) {
    written.warnings.push_back(cleared(draft));
  }
  return written;
}

// One change of one file under the lock: read, splice, replace; again where an editor saved the
// file in between.
Result<Written> change(const Book& book, const std::string& file, const std::string& header,
                       const Splice& splice) {
  const Result<fs::path> folder = folder_of(book);
  if (!folder) return folder.problems();
  const Result<BookLock> lock = lock_book(disk(), *folder);
  if (!lock) return lock.problems();
  Written written = begun(*folder, file);
  constexpr int most_tries = 3;
  for (int tries = 1; tries <= most_tries; ++tries) {
    const Result<std::optional<std::string>> text = file_text(*folder, file);
    if (!text) return text.problems();
    const Result<Spliced> spliced = splice(text->value_or(header));
    if (!spliced) return spliced.problems();
    const Result<Replaced> replaced = replace_file(disk(), *folder, file, spliced->text, *text);
    if (!replaced) return replaced.problems();
    written.line = spliced->line;
    if (*replaced == Replaced::yes) return written;
    if (tries == 1) written.warnings.push_back(kept_both(file));
  }
  return changed_meanwhile(file);
}

Problem no_such_bag(const Book& book, const std::string& id) {
  std::vector<std::string> known;
  for (const Bag& bag : book.bags) known.push_back(bag.id);
  return usage_problem(fmt::format("there is no bag '{}'", shown(id)),
                       known.empty()             ? "the book holds no bag yet"
                       : nearest_word(id, known) ? suggestion(id, known)
                                                 : std::string("pluckbook bags  lists them"));
}

// Asked under the lock: another shell may have used the id since the command began.
std::optional<Problem> refuse_id(const Book& book, const std::string& id) {
  for (const Bag& other : book.bags) {
    if (!same_id(other.id, id)) continue;
    return usage_problem(fmt::format("bag '{}' is already at {}:{}", shown(other.id),
                                     other.origin.file, other.origin.line),
                         "nothing was changed; give the new bag another id");
  }
  return std::nullopt;
}

// ---- a new book --------------------------------------------------------------------------------

// The line by which an editor finds the schema of a file; `up` leads to the book's folder.
std::string modeline(const std::string& schema, const std::string& up = "") {
  return fmt::format("# yaml-language-server: $schema={}.schema/{}.json\n", up, schema);
}

std::vector<NewFile> new_files(const BookFacts& facts) {
  std::vector<NewFile> files = {
      {"pastures.yaml", "# " + pasture_line("north") + "\n"},
      {"herds.yaml", "# " + herd_line("cows") + "\n"},
      {"grazing.yaml", "# " + move_line("2026-05-10", "cows", "north") + "\n"},
      {"feeds.yaml", "# what a feed may be like:  pluckbook feeds\n# " +
                         feed_line("cube-20", facts.currency) + "\n"},
      {"condition.yaml", "# - {date: 2026-08-20, herd: cows, condition: 5.2, head: 40}\n"},
      {"events.yaml", "# - {date: 2026-08-20, pasture: north, event: rain, note: two inches}\n"},
      {"book.yaml", fmt::format("pluckbook: {}\nname: {}\nunits: {}\ncurrency: {}\n"
                                "cover: 80    # share of outcomes a supplement should cover, %\n"
                                "# trip: 18.00    # one feeding trip to a pasture\n"
                                "# labs: {}\n",
                                book_format, as_scalar(facts.name),
                                facts.units == UnitSystem::us ? "us" : "metric",
                                as_scalar(facts.currency), labs_line("county"))},
  };
  for (NewFile& file : files) file.text = modeline(fs::path(file.name).stem()) + file.text;
  const auto add_first = [&](std::string_view name, const WrittenKeys& record) {
    if (record.empty()) return;
    for (NewFile& file : files) {
      if (file.name == name) file.text += "- " + in_braces(record) + "\n";
    }
  };
  add_first("pastures.yaml", facts.pasture);
  add_first("herds.yaml", facts.herd);
  add_first("grazing.yaml", facts.move);
  return files;
}

std::optional<Problem> refuse_folder(const fs::path& folder) {
  std::error_code error;
  const std::string name = shown(folder.string(), 200);
  if (fs::exists(folder / "book.yaml", error)) {
    return usage_problem(fmt::format("{} holds a book already", name), "nothing was changed");
  }
  if (!fs::exists(folder, error)) return std::nullopt;
  if (!fs::is_directory(folder, error)) {
    return usage_problem(fmt::format("{} is no folder", name), "name a new or an empty folder");
  }
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, error)) {
    if (entry.path().filename().string().starts_with('.')) continue;
    return usage_problem(fmt::format("{} is not empty", name), "name a new or an empty folder");
  }
  return std::nullopt;
}

// What the readers would say of the new files.
Problems problems_of(const std::vector<NewFile>& files, UnitSystem units) {
  using Read = void (*)(FileReading&, const YamlNode&, Book&);
  static const std::pair<std::string_view, Read> readers[] = {{"book.yaml", read_operation},
                                                              {"pastures.yaml", read_pastures},
                                                              {"herds.yaml", read_herds},
                                                              {"grazing.yaml", read_grazing}};
  Problems problems;
  Book book;
  for (const auto& [name, read] : readers) {
    for (const NewFile& file : files) {
      if (file.name != name) continue;
      const Result<YamlDocument> document = read_yaml(file.name, file.text);
      if (!document) return document.problems();
      FileReading reading(*document, {units, ""}, problems);
      read(reading, document->root, book);
    }
  }
  return problems;
}

}  // namespace

Result<Written> start_book(const fs::path& folder, const BookFacts& facts,
                           std::vector<NewFile> schemas) {
  std::vector<NewFile> files = new_files(facts);
  Problems problems = problems_of(files, facts.units);
  for (Problem& problem : problems) problem.place.reset();
  if (!problems.empty()) return problems;
  files.insert(files.begin(), schemas.begin(), schemas.end());
  return start_folder(folder, std::move(files));
}

Result<Written> start_folder(const fs::path& folder, std::vector<NewFile> files) {
  if (auto problem = refuse_folder(folder)) return *std::move(problem);
  std::stable_partition(files.begin(), files.end(),
                        [](const NewFile& file) { return file.name != "book.yaml"; });
  // From the nearest folder that exists, so that those made below it are flushed too.
  std::error_code error;
  const fs::path whole = fs::absolute(folder).lexically_normal();
  fs::path base = whole;
  while (!fs::is_directory(base, error) && base.has_relative_path()) base = base.parent_path();
  const fs::path below = whole.lexically_relative(base);
  for (const NewFile& file : files) {
    const std::string name = (below / file.name).lexically_normal().string();
    const Result<Replaced> replaced =
        replace_file(disk(), fs::canonical(base, error), name, file.text, std::nullopt);
    if (!replaced) return replaced.problems();
    if (*replaced == Replaced::changed_meanwhile) return changed_meanwhile(name);
  }
  return Written{"book.yaml", 1};
}

Result<Written> add_bag(const Book& book, const Bag& bag) {
  const Pasture* pasture = find_pasture(book, bag.pasture);
  if (pasture == nullptr) {
    std::vector<std::string> known;
    for (const Pasture& one : book.pastures) known.push_back(one.id);
    return usage_problem(fmt::format("there is no pasture '{}'", shown(bag.pasture)),
                         known.empty() ? line_to_add("pasture", bag.pasture, book.currency)
                                       : suggestion(bag.pasture, known));
  }
  const int year = static_cast<int>(bag.plucked.year());
  const std::string file = samples_name(year, bag.pasture);
  std::error_code error;
  const bool has_schemas = fs::exists(fs::path(book.folder) / ".schema/samples.json", error);
  const std::string header = has_schemas ? modeline("samples", "../../") : "";
  return change(book, file, header + fmt::format("# {}, {}\n", pasture->name, year),
                [&](const std::string& text) -> Result<Spliced> {
                  const Result<Book> now = read_book(book.folder);
                  if (!now) return now.problems();
                  if (auto taken = refuse_id(*now, bag.id)) return *std::move(taken);
                  return with_bag(*now, file, text, bag);
                });
}

Result<Written> mark_bag(const Book& book, const std::string& bag, const Mark& mark) {
  const Bag* found = find_bag(book, bag);
  if (found == nullptr) return no_such_bag(book, bag);
  const std::string file = found->origin.file;
  return change(book, file, "",
                [&](const std::string& text) { return with_mark(book, file, text, bag, mark); });
}

Result<Written> add_result(const Book& book, const std::string& bag, const LabResult& result) {
  const Bag* found = find_bag(book, bag);
  if (found == nullptr) return no_such_bag(book, bag);
  const std::string file = found->origin.file;
  const std::size_t results = found->results.size();
  return change(book, file, "", [&](const std::string& text) -> Result<Spliced> {
    const Result<Book> now = read_book(book.folder);
    if (!now) return now.problems();
    const Bag* bag_now = find_bag(*now, bag);
    if (bag_now == nullptr || bag_now->results.size() != results) {
      return changed_meanwhile("bag " + bag);
    }
    return with_result(*now, file, text, bag, result);
  });
}

Result<Written> add_record(const Book& book, const std::string& file, const WrittenKeys& record) {
  return change(book, file, "",
                [&](const std::string& text) { return with_record(book, file, text, record); });
}

Result<Written> add_quote(const Book& book, const std::string& feed, const WrittenKeys& quote) {
  const std::string file = "feeds.yaml";
  return change(book, file, "",
                [&](const std::string& text) { return with_quote(book, file, text, feed, quote); });
}

Result<Written> write_texts(const Book& book, const std::vector<TextChange>& changes) {
  const Result<fs::path> folder = folder_of(book);
  if (!folder) return folder.problems();
  const Result<BookLock> lock = lock_book(disk(), *folder);
  if (!lock) return lock.problems();
  Written written = begun(*folder, changes.empty() ? "" : changes.front().file);
  for (const TextChange& change : changes) {
    const Result<std::optional<std::string>> text = file_text(*folder, change.file);
    if (!text) return text.problems();
    if (*text != change.before) return changed_meanwhile(change.file);
  }
  for (std::size_t done = 0; done < changes.size(); ++done) {
    const TextChange& change = changes[done];
    const Result<Replaced> replaced =
        replace_file(disk(), *folder, change.file, change.after, change.before);
    if (replaced && *replaced == Replaced::yes) continue;
    Problems problems = replaced ? Problems{changed_meanwhile(change.file)} : replaced.problems();
    if (done == 0) return problems;
    problems.front().remedy = fmt::format(
        "{} of {} files are written and whole; the same command writes the others and doubles "
        "nothing",
        done, changes.size());
    return problems;
  }
  written.line = 1;
  return written;
}

std::string proposed_bag_id(const Book& book, const std::string& pasture, Date plucked) {
  constexpr std::size_t room = 33;  // an id has 40 letters: "26-", the pasture, "-001"
  const std::string stem =
      fmt::format("{:02}-{}-", static_cast<int>(plucked.year()) % 100, pasture.substr(0, room));
  int highest = 0;
  for (const Bag& bag : book.bags) {
    if (!as_id(bag.id).starts_with(as_id(stem))) continue;
    const std::string_view number = trimmed(std::string_view(bag.id).substr(stem.size()));
    const bool digits = !number.empty() && number.size() < 6 &&
                        number.find_first_not_of("0123456789") == std::string_view::npos;
    if (digits) highest = std::max(highest, std::stoi(std::string(number)));
  }
  return fmt::format("{}{:02}", stem, highest + 1);
}

}  // namespace pluckbook
