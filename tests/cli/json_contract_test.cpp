// What a consumer of version 1 of the documents reads, every later build still writes:
// tests/data/contract/json_1.txt.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

using nlohmann::json;

std::string kind_of(const json& value) {
  if (value.is_string()) return "text";
  if (value.is_boolean()) return "yes or no";
  if (value.is_number()) return "number";
  if (value.is_array()) return "list";
  return value.is_object() ? "record" : "nothing";
}

/// "bags[].plucked?" -> its last key, and what it is of: "bags[]"
struct Field {
  std::string parent, key, kind;
  bool always = true;
};

Field field_of(const std::string& line) {
  const std::size_t colon = line.find(": ");
  std::string path = line.substr(0, colon);
  Field field{"", "", line.substr(colon + 2), !path.ends_with('?')};
  if (!field.always) path.pop_back();
  if (path.ends_with("[]")) {
    field.parent = path.substr(0, path.size() - 2);
    field.key = "[]";
  } else {
    const std::size_t dot = path.rfind('.');
    field.parent = dot == std::string::npos ? "" : path.substr(0, dot);
    field.key = path.substr(dot == std::string::npos ? 0 : dot + 1);
  }
  return field;
}

/// All values that stand at a path; those of a list one by one.
std::vector<json> values_at(const json& document, const std::string& path) {
  std::vector<json> found = {document};
  std::istringstream parts(path);
  for (std::string part; std::getline(parts, part, '.');) {
    const bool list = part.ends_with("[]");
    const std::string key = list ? part.substr(0, part.size() - 2) : part;
    std::vector<json> below;
    for (const json& value : found) {
      if (!value.is_object() || !value.contains(key)) continue;
      if (!list) below.push_back(value.at(key));
      if (list && value.at(key).is_array())
        below.insert(below.end(), value.at(key).begin(), value.at(key).end());
    }
    found = std::move(below);
  }
  return found;
}

/// A consumer reads one field; what is not known now may be null.
void read_field(const json& document, const Field& field) {
  for (const json& parent : values_at(document, field.parent)) {
    if (parent.is_null()) continue;
    if (field.key == "[]") {
      ASSERT_TRUE(parent.is_array());
      for (const json& item : parent)
        EXPECT_TRUE(item.is_null() || kind_of(item) == field.kind) << kind_of(item);
      continue;
    }
    ASSERT_TRUE(parent.is_object());
    EXPECT_TRUE(!field.always || parent.contains(field.key)) << "the field is gone";
    if (!parent.contains(field.key) || parent.at(field.key).is_null()) continue;
    EXPECT_EQ(kind_of(parent.at(field.key)), field.kind);
  }
}

TEST(JsonContract, WhatAConsumerOfVersionOneReadsIsStillThere) {
  const FreshFolder folder("northern");
  std::istringstream lines(
      read_text(std::filesystem::path(PLUCKBOOK_TEST_DATA) / "contract/json_1.txt"));
  json document;
  std::string command;
  int fields = 0;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.starts_with('#')) continue;
    SCOPED_TRACE(command + "\n" + line);
    if (line.starts_with("$ ")) {
      command = line;
      document = json::parse(run_line(folder.path(), line.substr(2) + " 2>/dev/null").output);
      EXPECT_TRUE(document.at("schema").get<std::string>().ends_with("/1"));
    } else {
      read_field(document, field_of(line));
      ++fields;
    }
  }
  EXPECT_GT(fields, 600);
}

}  // namespace
}  // namespace pluckbook::testing
