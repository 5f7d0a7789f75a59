// yaml.h - the only door through which YAML enters. The text is guarded before, while and after
// yaml-cpp's parser reads it (an open quote, a stray byte or a second document must not be lost in
// silence), and comes out as a plain tree in which every node knows its line and column. Scalars
// stay text: numbers and dates are read from it by our own rules.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace pluckbook {

/// What is refused beyond; tested at n - 1, n and n + 1.
struct YamlLimits {
  std::size_t bytes = 4U << 20U;
  int depth = 16;
  int nodes = 200'000;
  std::size_t text = 4'000;   // characters of one scalar
  std::size_t line = 65'536;  // bytes of one line
};

struct YamlNode {
  enum class Kind { null, scalar, list, map };
  struct Entry;

  Kind kind = Kind::null;
  std::string text;             // scalar
  bool quoted = false;          // scalar written with quotes
  std::vector<YamlNode> items;  // list
  std::vector<Entry> entries;   // map, in the order written
  int line = 1, column = 1;     // where the node starts, from 1; columns count characters
  std::size_t begin = 0;        // byte offset where the node starts

  /// The value under a key, or nullptr.
  const YamlNode* find(std::string_view key) const;
};

struct YamlNode::Entry {
  YamlNode key;
  YamlNode value;
};

/// A file read: its name as shown to people, its bytes, and the tree. Lines of the text are looked
/// up for carets.
struct YamlDocument {
  std::string file;
  std::string text;
  YamlNode root;

  /// The place of a node with its line's text, for a Problem.
  Place place_of(const YamlNode& node) const;
};

/// Reads one document from bytes.
/// Fails: a Problem with line and column for bad UTF-8, a control or direction character (raw or
///        through an escape), a tab in the indentation, an anchor, alias, tag or merge key, a
///        duplicate key, a key that is no plain text or has no colon, a quote that does not close
///        on its line, a directive, a second document or anything after the first, depth, node
///        count, text or size over the limits.
/// An empty or comment-only text gives a null root.
Result<YamlDocument> read_yaml(std::string file, std::string text, const YamlLimits& limits = {});

}  // namespace pluckbook
