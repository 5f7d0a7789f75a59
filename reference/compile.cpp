// compile.cpp - run by the build: reads the files of reference/ through the door every YAML file
// goes through and writes their trees as one C++ source (lib/published/reference_trees.h), so that
// the program has them without reading. A fault in a file ends the build with its place.
//   compile_reference OUTPUT FILE...
#include <fmt/format.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

#include "base/yaml.h"

namespace {

using namespace pluckbook;

struct Node {
  const YamlNode* read = nullptr;
  std::size_t text = 0, first = 0, count = 0;
};

class Trees {
 public:
  void add(std::string topic, const YamlNode& root) {
    files_ += fmt::format("    {{\"{}\", {}}},\n", topic, nodes_.size());
    nodes_.push_back({&root});
    // Level by level, so that the items of a node stand together.
    for (std::size_t at = nodes_.size() - 1; at < nodes_.size(); ++at) add_items_of(at);
  }

  std::string source() const;

 private:
  void add_items_of(std::size_t at) {
    const YamlNode& read = *nodes_[at].read;
    nodes_[at].text = place_of(read.text);
    nodes_[at].first = nodes_.size();
    nodes_[at].count = read.items.size() + read.entries.size();
    for (const YamlNode& item : read.items) nodes_.push_back({&item});
    for (const YamlNode::Entry& entry : read.entries) {
      nodes_.push_back({&entry.key});
      nodes_.push_back({&entry.value});
    }
  }

  /// Many texts stand in many places: a source, a key, a figure.
  std::size_t place_of(const std::string& text) {
    const auto [found, is_new] = places_.try_emplace(text, text_.size());
    if (is_new) text_ += text;
    return found->second;
  }

  std::string files_, text_;
  std::vector<Node> nodes_;
  std::map<std::string, std::size_t> places_;
};

std::string_view name_of(YamlNode::Kind kind) {
  switch (kind) {
    case YamlNode::Kind::null:
      return "null";
    case YamlNode::Kind::scalar:
      return "scalar";
    case YamlNode::Kind::list:
      return "list";
    case YamlNode::Kind::map:
      return "map";
  }
  return "";
}

std::string Trees::source() const {
  std::string source =
      "#include \"published/reference_trees.h\"\n\nnamespace pluckbook {\n\n"
      "const ReferenceTrees& reference_trees() {\n"
      "  using enum YamlNode::Kind;\n"
      "  static constexpr ReferenceFile files[] = {\n" +
      files_ + "  };\n  static constexpr ReferenceNode nodes[] = {\n";
  for (const Node& node : nodes_)
    source +=
        fmt::format("    {{{}, {}, {}, {}, {}, {}}},\n", name_of(node.read->kind), node.read->line,
                    node.text, node.read->text.size(), node.first, node.count);
  source += "  };\n  static constexpr char text[] = {";
  // Bytes, not a literal: nothing to escape.
  for (std::size_t at = 0; at < text_.size(); ++at)
    source += fmt::format("{}{},", at % 24 == 0 ? "\n    " : "", static_cast<int>(text_[at]));
  return source +
         "\n  };\n"
         "  static constexpr ReferenceTrees trees = {files, nodes, {text, sizeof text}};\n"
         "  return trees;\n}\n\n}  // namespace pluckbook\n";
}

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::filesystem::path> paths(argv + 1, argv + argc);
  if (paths.size() < 2) return 2;
  std::vector<YamlDocument> documents;
  Trees trees;
  documents.reserve(paths.size());  // the trees point into them
  for (std::size_t at = 1; at < paths.size(); ++at) {
    auto read = read_yaml("reference/" + paths[at].filename().string(), bytes_of(paths[at]));
    if (!read) {
      fmt::print(stderr, "{}", to_text(read.problems().front()));
      return 1;
    }
    documents.push_back(*std::move(read));
    trees.add(paths[at].stem().string(), documents.back().root);
  }
  // Written last: a build that failed leaves no half of it behind.
  std::ofstream output(paths[0], std::ios::binary);
  output << trees.source() << std::flush;
  return output ? 0 : 1;
}
