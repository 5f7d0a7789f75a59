// bundled.h - reading the files of reference/. They are compiled in as trees and tested, so a fault
// in one is a fault of the program: it ends with a message that names the file and the line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "published/reference_trees.h"
#include "published/requirements.h"

namespace pluckbook {

/// A node of a bundled file. Every access that finds something else than it needs ends the program.
class Bundled {
 public:
  /// The root of reference/TOPIC.yaml. A look-up: nothing is read.
  static Bundled topic(std::string_view name);

  bool has(std::string_view key) const { return find(key) != nullptr; }
  Bundled at(std::string_view key) const;
  std::vector<Bundled> items() const;
  std::vector<std::string> keys() const;

  std::string text() const;
  double number() const;
  std::vector<double> numbers() const;

  std::string text(std::string_view key) const { return at(key).text(); }
  double number(std::string_view key) const { return at(key).number(); }
  double number_or(std::string_view key, double other) const;

  /// The entry of a list of maps whose `id` is that.
  Bundled with_id(std::string_view id) const;

  [[noreturn]] void fail(std::string_view what) const;

 private:
  Bundled(const ReferenceFile& file, const ReferenceNode& node) : file_(&file), node_(&node) {}

  std::span<const ReferenceNode> parts() const;
  const ReferenceNode* find(std::string_view key) const;
  std::string_view plain_text() const;

  const ReferenceFile* file_;
  const ReferenceNode* node_;
};

/// Source, table and status as a block states them; the table may be missing.
Citation citation_of(const Bundled& block);

/// One row of a table whose columns are named once above it.
class BundledRow {
 public:
  BundledRow(const std::vector<std::string>& columns, const Bundled& row);
  bool has(std::string_view column) const;
  double number(std::string_view column) const;
  std::string text(std::string_view column) const;

 private:
  std::size_t place_of(std::string_view column) const;
  const std::vector<std::string>* columns_;
  std::vector<Bundled> cells_;
  Bundled row_;
};

/// The rows of one table, each made into a Row by `make(const BundledRow&)`.
template <class Row, class Make>
RequirementTable<Row> table_of(const Bundled& block, Make make) {
  RequirementTable<Row> table{citation_of(block), {}};
  std::vector<std::string> columns;
  for (const Bundled& name : block.at("columns").items()) columns.push_back(name.text());
  for (const Bundled& row : block.at("rows").items())
    table.rows.push_back(make(BundledRow(columns, row)));
  return table;
}

/// A name as people write it, for comparison: lower case, '-' and spaces as '_'.
std::string folded_name(std::string_view name);
/// The other way: an id with spaces, as it is shown.
std::string spaced_name(std::string_view id);

}  // namespace pluckbook
