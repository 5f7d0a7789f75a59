// reference_trees.h - the files of reference/ as trees, written into the program when it is built
// (reference/compile.cpp). Places are numbers, not pointers: the arrays are read where they lie.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "base/yaml.h"

namespace pluckbook {

/// A node of a file. Its items follow one another, and of a map its keys and values by turns.
struct ReferenceNode {
  YamlNode::Kind kind;
  std::uint32_t line;
  std::uint32_t text, text_size;  // a scalar's bytes, in the text of all
  std::uint32_t first, count;     // a list's items, a map's pairs, in the nodes of all
};

struct ReferenceFile {
  std::string_view topic;  // reference/TOPIC.yaml
  std::uint32_t root;
};

struct ReferenceTrees {
  std::span<const ReferenceFile> files;
  std::span<const ReferenceNode> nodes;
  std::string_view text;

  std::string_view text_of(const ReferenceNode& node) const {
    return text.substr(node.text, node.text_size);
  }
};
const ReferenceTrees& reference_trees();

}  // namespace pluckbook
