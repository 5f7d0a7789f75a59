#include "book/schema.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "cli/command.h"
#include "report/schema_json.h"

namespace pluckbook::cli {
namespace {

/// "herds", "herds.yaml" and "samples/2026/north.yaml" all name a file of the book.
std::string file_named(std::string word) {
  if (word.starts_with("samples/")) return "samples.yaml";
  if (!word.ends_with(".yaml")) word += ".yaml";
  return word;
}

Result<Answer> run_schema(const Arguments& arguments) {
  const std::string file = file_named(arguments.words[0]);
  const std::vector<std::string> known = schema_files();
  if (std::find(known.begin(), known.end(), file) == known.end()) {
    return usage_problem(fmt::format("no file of a book is called '{}'", shown(arguments.words[0])),
                         suggestion(file, known));
  }
  Answer answer;
  answer.text = printed(json_schema(file));
  answer.kind = Answer::Kind::data;
  return answer;
}

}  // namespace

Command schema_command() {
  return {
      .name = "schema",
      .usage = "FILE",
      .purpose = "the JSON Schema of one of the book's files",
      .group = "the book",
      .examples = {"pluckbook schema herds.yaml", "pluckbook schema samples/2026/draws.yaml"},
      .least_words = 1,
      .most_words = 1,
      .uses_book = false,
      .run = run_schema,
  };
}

}  // namespace pluckbook::cli
