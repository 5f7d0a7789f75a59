// One byte of a book's file changed: the file is refused or doubted, or what it says has changed
// only where a person comparing the two versions line by line would see it. Nothing that stands on
// another line is lost, moved or read otherwise in silence.
#include <gtest/gtest.h>

#include <cstdlib>
#include <set>
#include <tuple>

#include "base/yaml.h"
#include "book/book_folder.h"
#include "book/parts.h"

namespace pluckbook {
namespace {

// Line, column, keys that lead there, value.
using Saying = std::tuple<int, int, std::string, std::string>;
using Sayings = std::set<Saying>;

void collect(const YamlNode& node, const std::string& path, Sayings& sayings) {
  if (node.kind == YamlNode::Kind::scalar) {
    sayings.insert({node.line, node.column, path, node.text});
  }
  for (const YamlNode& item : node.items) collect(item, path + "/-", sayings);
  for (const YamlNode::Entry& entry : node.entries) {
    collect(entry.value, path + "/" + entry.key.text, sayings);
  }
}

// What a file says; nothing where it is refused or doubted.
std::optional<Sayings> said_by(const std::string& file, const std::string& text) {
  const Result<YamlDocument> document = read_yaml(file, text);
  if (!document) return std::nullopt;
  Book book;
  book.labs.push_back({"county", "County Forage Lab", 10});
  for (const char* id : {"north", "meadow"}) {
    if (file == "pastures.yaml") break;
    book.pastures.push_back({});
    book.pastures.back().id = id;
  }
  if (file != "herds.yaml") {
    book.herds.push_back({});
    book.herds.back().id = "cows";
  }
  if (file == "book.yaml") book.labs.clear();
  Problems problems;
  FileReading reading(*document, {}, problems);
  read_part(reading, document->root, file, book);
  if (!problems.empty()) return std::nullopt;
  Sayings sayings;
  collect(document->root, "", sayings);
  return sayings;
}

// The lines that a comparison shows: those that hold the byte before and after.
struct Seen {
  int first, last;
  int more;  // lines that the new text has more than the old one
};

Seen seen(const std::string& text, std::size_t at, char by) {
  const auto end = text.begin() + static_cast<long>(at);
  const int line = 1 + static_cast<int>(std::count(text.begin(), end, '\n'));
  const bool joins = text[at] == '\n', parts = by == '\n';
  return {line, line + (joins ? 1 : 0), parts ? 1 : joins ? -1 : 0};
}

// The first of what stood on lines not seen that is no longer said in the same place.
std::string lost_unseen(const Sayings& before, const Sayings& after, Seen lines) {
  for (Saying saying : before) {
    int& line = std::get<0>(saying);
    if (line >= lines.first && line <= lines.last) continue;
    if (line > lines.last) line += lines.more;
    if (!after.contains(saying)) return std::get<2>(saying) + ": " + std::get<3>(saying);
  }
  return "";
}

std::vector<std::pair<std::string, std::string>> files() {
  std::vector<std::pair<std::string, std::string>> all;
  const BookFolder folder;
  for (const char* file : {"book.yaml", "pastures.yaml", "herds.yaml", "grazing.yaml", "feeds.yaml",
                           "samples/2026/north.yaml"}) {
    all.emplace_back(file, folder.text(file));
  }
  all.emplace_back("condition.yaml",
                   "- {date: 2026-08-20, herd: cows, condition: 5.2, weight: 1265 lb, head: 40}\n"
                   "- date: 2026-09-20  # after the rain\n  herd: cows\n  condition: 5\n");
  all.emplace_back(
      "events.yaml",
      "# what came\n- {date: 2026-04-22, pasture: north, event: green-up}\n"
      "- date: 2026-08-20\n  pasture: meadow\n  event: rain\n  note: \"two inches\"\n");
  return all;
}

// The bytes a slip or a bad disk puts; all 255 others when PLUCKBOOK_LONG is set.
std::string bytes_put() {
  if (std::getenv("PLUCKBOOK_LONG") == nullptr) return "\"'{}[]:,#-&*!|>%@`?. \t\r\n0a~\x01\xff";
  std::string all;
  for (int byte = 0; byte < 256; ++byte) all += static_cast<char>(byte);
  return all;
}

TEST(OneByte, ChangesNothingUnseen) {
  const std::string bytes = bytes_put();
  for (const auto& [file, text] : files()) {
    const auto before = said_by(file, text);
    ASSERT_TRUE(before) << file;
    int tried = 0, refused = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
      for (const char by : bytes) {
        if (by == text[at]) continue;
        std::string changed = text;
        changed[at] = by;
        const auto after = said_by(file, changed);
        ++tried;
        refused += after ? 0 : 1;
        if (!after) continue;
        EXPECT_EQ(lost_unseen(*before, *after, seen(text, at, by)), "")
            << file << ", byte " << at << "\n"
            << changed;
      }
    }
    EXPECT_GT(refused, tried / 10) << file;
    RecordProperty(file, tried);
  }
}

}  // namespace
}  // namespace pluckbook
