#include "book/keys.h"

namespace pluckbook {

void FileReading::error(const YamlNode& at, std::string what, std::string remedy) {
  problems_.push_back(input_problem(std::move(what), std::move(remedy), document_.place_of(at)));
}

void FileReading::warn(const YamlNode& at, std::string what, std::string remedy) {
  error(at, std::move(what), std::move(remedy));
  problems_.back().severity = Severity::warning;
}

void FileReading::note(const YamlNode& at, const Problems& problems) {
  for (Problem problem : problems) {
    problem.place = document_.place_of(at);
    problems_.push_back(std::move(problem));
  }
}

std::optional<std::string> scalar_text(FileReading& reading, std::string_view name,
                                       const YamlNode& node) {
  const bool scalar = node.kind == YamlNode::Kind::scalar;
  if (scalar && !trimmed(node.text).empty()) return node.text;
  if (scalar || node.kind == YamlNode::Kind::null) {
    reading.error(node, fmt::format("'{}' has no value", name), "write one, or remove the key");
  } else {
    reading.error(node, fmt::format("'{}' takes one value, not several", name),
                  "remove the brackets, or the lines indented below it");
  }
  return std::nullopt;
}

const std::vector<YamlNode>& items_of(FileReading& reading, const YamlNode& node,
                                      std::string_view record) {
  static const std::vector<YamlNode> none;
  if (node.kind == YamlNode::Kind::list) return node.items;
  if (node.kind != YamlNode::Kind::null) {
    reading.error(node, fmt::format("a list belongs here, one {} an item", record),
                  "begin each with '- '");
  }
  return none;
}

}  // namespace pluckbook
