// What a command that writes says with --json: what was kept, where it stands, what comes next.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

using Json = nlohmann::json;

std::string line_of(const std::filesystem::path& file, int number) {
  std::istringstream text(read_text(file));
  std::string line;
  for (int i = 0; i < number; ++i) std::getline(text, line);
  return line;
}

struct JsonWriting {
  const char* words;
  const char* stands;  // in the line that the document names
  Json about;
};

TEST(WritingJson, EveryWritingCommandNamesWhatItKeptAndTheLineItStandsOn) {
  FreshFolder book("northern");
  const std::vector<JsonWriting> all = {
      {"bag draws --stops 20", "26-draws-09", {{"bag", "26-draws-09"}, {"pasture", "draws"}}},
      {"mark 26-draws-09 dried", "dried: 2026-09-05", {{"bag", "26-draws-09"}, {"mark", "dried"}}},
      {"result 26-draws-08 dm=91.5 cp=6.4", "cp: 6.4", {{"bag", "26-draws-08"}}},
      {"move spring-cows meadow", "pasture: meadow", {{"herd", "spring-cows"}}},
      {"score spring-cows 5.2", "condition: 5.2", {{"herd", "spring-cows"}}},
      {"quote cube-20 '360 USD/ton'", "360 USD/ton", {{"feed", "cube-20"}}},
      {"event draws rain", "event: rain", {{"pasture", "draws"}, {"event", "rain"}}},
  };
  for (const auto& [words, stands, about] : all) {
    SCOPED_TRACE(words);
    const Ran ran = run_in(book.path(), std::string(words) + " --as-of 2026-09-05 --json");
    ASSERT_EQ(ran.exit, 0) << ran.output;
    const Json json = Json::parse(ran.output, nullptr, false);
    ASSERT_TRUE(json.is_object()) << ran.output;
    const std::string command = std::string(words).substr(0, std::string(words).find(' '));
    EXPECT_EQ(json.at("schema"), "pluckbook/" + command + "/1");
    EXPECT_FALSE(json.at("what").get<std::string>().empty());
    EXPECT_NE(json.at("next").get<std::string>().find("pluckbook"), std::string::npos);
    const std::string line =
        line_of(book.path() / json.at("file").get<std::string>(), json.at("line").get<int>());
    EXPECT_NE(line.find(stands), std::string::npos) << line;
    for (const auto& [key, value] : about.items()) EXPECT_EQ(json.at(key), value) << key;
  }
}

TEST(WritingJson, ABookBegunNamesItsFirstFile) {
  FreshFolder folder;
  for (const char* words : {"start mine", "start demo --scenario northern"}) {
    const Ran ran = run_in(folder.path(), std::string(words) + " --json");
    ASSERT_EQ(ran.exit, 0) << ran.output;
    const Json json = Json::parse(ran.output, nullptr, false);
    ASSERT_TRUE(json.is_object()) << ran.output;
    EXPECT_EQ(json.at("schema"), "pluckbook/start/1");
    EXPECT_EQ(json.at("file"), "book.yaml");
  }
}

}  // namespace
}  // namespace pluckbook::testing
