// read_parts.h - the files of a book, each read into its part of the Book. In this order, because
// later files name what earlier ones hold: book, pastures, herds, grazing, feeds, samples,
// condition, events, layouts. Used in lib/book only.
#pragma once

#include <string>
#include <unordered_map>

#include "book/first_lines.h"
#include "book/keys.h"

namespace pluckbook {

/// The format this program reads and writes.
inline constexpr int book_format = 1;

/// The tables behind the files, for schema.h.
std::vector<KeyFact> book_facts();
std::vector<KeyFact> pasture_facts();
std::vector<KeyFact> herd_facts();
std::vector<KeyFact> move_facts();
std::vector<KeyFact> feed_facts();
std::vector<KeyFact> bag_facts();
std::vector<KeyFact> score_facts();
std::vector<KeyFact> event_facts();
std::vector<KeyFact> layout_facts();

void read_operation(FileReading&, const YamlNode& root, Book&);
void read_pastures(FileReading&, const YamlNode& root, Book&);
void read_herds(FileReading&, const YamlNode& root, Book&);
void read_grazing(FileReading&, const YamlNode& root, Book&);
void read_feeds(FileReading&, const YamlNode& root, Book&);
/// The value of a key `quote`, wherever it stands.
std::vector<Quote> read_quotes_of(FileReading&, const YamlNode::Entry&);
void read_condition(FileReading&, const YamlNode& root, Book&);
void read_events(FileReading&, const YamlNode& root, Book&);
void read_layouts(FileReading&, const YamlNode& root, Book&);

/// The ids met so far of one kind of record: each is not held against every other.
class UsedIds {
 public:
  struct Use {
    std::string id;
    Origin origin;
  };
  /// Takes an id; where it is taken already, by which record.
  const Use* take(const std::string& id, const Origin& origin) {
    const auto [at, is_new] = uses_.try_emplace(as_id(id), Use{id, origin});
    return is_new ? nullptr : &at->second;
  }

 private:
  std::unordered_map<std::string, Use> uses_;
};

/// The bags of one pasture's file; laboratories are looked up in the book.
std::vector<Bag> read_samples(FileReading&, const YamlNode& root, const std::string& pasture,
                              const Book&);

/// Notes a Problem when an id is used before, whatever the case of its letters.
template <class Record>
void note_used_id(FileReading& reading, const YamlNode& node, UsedIds& used, const Record& record,
                  std::string_view what) {
  if (record.id.empty()) return;
  const UsedIds::Use* earlier = used.take(record.id, record.origin);
  if (earlier == nullptr) return;
  reading.error(at_key(node, what == "bag" ? "bag" : "id"),
                fmt::format("{} '{}' is already at {}:{}", what, earlier->id, earlier->origin.file,
                            earlier->origin.line),
                "give one of them another id");
}

/// Notes a Problem when no record of the list has this id. Where the file that holds the list could
/// not be read, or one of its ids, nothing can be said.
template <class Record>
void note_unknown_id(FileReading& reading, const YamlNode& node, const std::vector<Record>& records,
                     const std::string& id, std::string_view what, const std::string& kept_in) {
  if (reading.unread.contains(kept_in)) return;
  std::vector<std::string> known;
  for (const Record& record : records) {
    if (record.id == id || record.id.empty()) return;
    known.push_back(record.id);
  }
  reading.error(node, fmt::format("there is no {} '{}'", what, shown(id)),
                known.empty() ? line_to_add(what, shown(id), reading.dialect.currency)
                              : suggestion(id, known));
}

}  // namespace pluckbook
