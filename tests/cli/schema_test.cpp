// The schemas kept in reference/schema, for those who want one without the program, are what the
// program prints. PLUCKBOOK_GOLDEN=write renews them; read the difference.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

namespace fs = std::filesystem;

const std::vector<std::string> files = {"book",    "pastures",  "herds",  "grazing", "feeds",
                                        "samples", "condition", "events", "layouts"};

TEST(Schema, ReferenceHoldsWhatTheProgramPrints) {
  const FreshFolder none;
  const char* mode = std::getenv("PLUCKBOOK_GOLDEN");
  for (const std::string& file : files) {
    const fs::path kept = fs::path(PLUCKBOOK_SOURCE) / "reference/schema" / (file + ".json");
    const Ran ran = run_in(none.path(), "schema " + file);
    EXPECT_EQ(ran.exit, 0);
    if (mode != nullptr && std::string(mode) == "write") write_text(kept, ran.output);
    EXPECT_EQ(ran.output, read_text(kept)) << file;
  }
}

using Json = nlohmann::json;

/// Every record refuses what it does not know, every key says what it is and in which unit.
void expect_described(const Json& schema, const std::string& where) {
  if (schema.is_object() && schema.contains("properties")) {
    EXPECT_EQ(schema.value("additionalProperties", true), false) << where;
    for (const auto& [name, property] : schema["properties"].items()) {
      EXPECT_GT(property.value("description", "").size(), name.size() + 10) << where << "/" << name;
      expect_described(property, where + "/" + name);
    }
  } else if (schema.is_structured()) {
    for (const Json& inner : schema) expect_described(inner, where);
  }
}

TEST(Schema, IsDraftSevenAndDescribesEveryKey) {
  const FreshFolder none;
  for (const std::string& file : files) {
    const Json schema = Json::parse(run_in(none.path(), "schema " + file).output, nullptr, false);
    EXPECT_EQ(schema["$schema"], "http://json-schema.org/draft-07/schema#");
    expect_described(schema, file);
  }
}

TEST(Schema, StartWritesTheOnesItsFilesName) {
  const FreshFolder folder;
  ASSERT_EQ(run_in(folder.path(), "start book").exit, 0);
  for (const std::string& file : files) {
    EXPECT_FALSE(read_text(folder.path() / "book/.schema" / (file + ".json")).empty()) << file;
    if (file == "samples" || file == "layouts") continue;
    const std::string text = read_text(folder.path() / "book" / (file + ".yaml"));
    EXPECT_EQ(text.substr(0, text.find('\n')),
              "# yaml-language-server: $schema=.schema/" + file + ".json");
  }
}

TEST(Schema, AnUnknownFileIsAnsweredWithTheNearest) {
  const FreshFolder none;
  EXPECT_EQ(run_in(none.path(), "schema hrds.yaml").output,
            "pluckbook: no file of a book is called 'hrds.yaml'\n  did you mean 'herds.yaml'?\n");
  EXPECT_EQ(run_in(none.path(), "schema samples/2026/north.yaml").output,
            run_in(none.path(), "schema samples.yaml").output);
}

}  // namespace
}  // namespace pluckbook::testing
