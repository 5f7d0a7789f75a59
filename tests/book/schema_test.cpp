#include "book/schema.h"

#include <gtest/gtest.h>

#include "base/yaml.h"
#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

const KeyFact* find(const std::vector<KeyFact>& keys, const std::string& name) {
  for (const KeyFact& key : keys) {
    if (key.name == name) return &key;
  }
  return nullptr;
}

TEST(Schema, EveryKeyOfEveryFileHasAKindAndAnExample) {
  ASSERT_EQ(schema_files().size(), 9U);
  for (const std::string& file : schema_files()) {
    const std::vector<KeyFact> keys = keys_of_file(file);
    EXPECT_GE(keys.size(), 4U) << file;
    for (const KeyFact& key : keys) {
      EXPECT_FALSE(key.kind.empty()) << file << " " << key.name;
      EXPECT_FALSE(key.example.empty()) << file << " " << key.name;
      EXPECT_EQ(key.kind == "choice", !key.choices.empty()) << file << " " << key.name;
    }
  }
  EXPECT_TRUE(keys_of_file("other.yaml").empty());
}

TEST(Schema, KnowsWhatMustBeThereAndWhatStandsInside) {
  const std::vector<KeyFact> herd = keys_of_file("herds.yaml");
  EXPECT_TRUE(find(herd, "weight")->required);
  EXPECT_FALSE(find(herd, "weaning")->required);
  EXPECT_EQ(find(herd, "class")->choices.size(), 5U);
  EXPECT_NE(find(find(herd, "calving")->inner, "share_by_21_days"), nullptr);
  const std::vector<KeyFact> feed = keys_of_file("feeds.yaml");
  EXPECT_NE(find(find(feed, "quote")->inner, "freight"), nullptr);
  EXPECT_NE(find(find(feed, "analysis")->inner, "npn_cpe"), nullptr);
  const std::vector<KeyFact> bag = keys_of_file("samples.yaml");
  EXPECT_NE(find(find(bag, "results")->inner, "cp"), nullptr);
  EXPECT_NE(find(find(bag, "sent")->inner, "lab"), nullptr);
}

// The examples are what remedies tell people to write: a book made of them must be read.
TEST(Schema, ABookWrittenFromTheExamplesHasNoErrors) {
  const BookFolder folder;
  const auto record = [](const std::string& file) {
    std::string text;
    for (const KeyFact& key : keys_of_file(file)) {
      const bool lines = key.name == "results";
      text += "  " + key.name + ":" + (lines ? "\n    " : " ") + key.example + "\n";
    }
    text[0] = '-';
    return text;
  };
  std::string front;
  for (const KeyFact& key : keys_of_file("book.yaml"))
    front += key.name + ": " + key.example + "\n";
  folder.write("book.yaml", front);
  for (const char* file : {"pastures.yaml", "herds.yaml", "grazing.yaml", "feeds.yaml",
                           "condition.yaml", "events.yaml", "layouts.yaml"}) {
    folder.write(file, record(file));
  }
  std::filesystem::remove(folder.path() / "samples/2026/north.yaml");
  folder.write("samples/2026/north-breaks.yaml", record("samples.yaml"));
  std::string said;
  for (const Problem& problem : read_whole_book(folder.path()).problems) said += to_text(problem);
  EXPECT_EQ(said, "");
}

}  // namespace
}  // namespace pluckbook
