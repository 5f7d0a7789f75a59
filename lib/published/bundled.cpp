#include "published/bundled.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>

#include "base/text.h"

namespace pluckbook {

namespace {

[[noreturn]] void end_with(std::string_view message) {
  fmt::print(stderr, "pluckbook is broken: {}\n", message);
  std::abort();
}

}  // namespace

Bundled Bundled::topic(std::string_view name) {
  const ReferenceTrees& trees = reference_trees();
  for (const ReferenceFile& file : trees.files)
    if (file.topic == name) return {file, trees.nodes[file.root]};
  end_with(fmt::format("reference/{}.yaml was not compiled in", name));
}

void Bundled::fail(std::string_view what) const {
  end_with(fmt::format("reference/{}.yaml:{}: {}", file_->topic, node_->line, what));
}

/// A list's items; a map's keys and values by turns.
std::span<const ReferenceNode> Bundled::parts() const {
  const std::size_t each = node_->kind == YamlNode::Kind::map ? 2 : 1;
  return reference_trees().nodes.subspan(node_->first, each * node_->count);
}

/// The value under a key; nullptr where there is none, or no map.
const ReferenceNode* Bundled::find(std::string_view key) const {
  if (node_->kind != YamlNode::Kind::map) return nullptr;
  const std::span<const ReferenceNode> pairs = parts();
  for (std::size_t at = 0; at < pairs.size(); at += 2)
    if (reference_trees().text_of(pairs[at]) == key) return &pairs[at + 1];
  return nullptr;
}

std::string_view Bundled::plain_text() const {
  if (node_->kind != YamlNode::Kind::scalar) fail("a text is wanted");
  return trimmed(reference_trees().text_of(*node_));
}

Bundled Bundled::at(std::string_view key) const {
  const ReferenceNode* found = find(key);
  if (found == nullptr) fail(fmt::format("no '{}' here", key));
  return {*file_, *found};
}

std::vector<Bundled> Bundled::items() const {
  if (node_->kind != YamlNode::Kind::list) fail("a list is wanted");
  std::vector<Bundled> all;
  all.reserve(node_->count);
  for (const ReferenceNode& item : parts()) all.push_back({*file_, item});
  return all;
}

std::vector<std::string> Bundled::keys() const {
  if (node_->kind != YamlNode::Kind::map) fail("a map is wanted");
  const std::span<const ReferenceNode> pairs = parts();
  std::vector<std::string> all;
  for (std::size_t at = 0; at < pairs.size(); at += 2)
    all.emplace_back(reference_trees().text_of(pairs[at]));
  return all;
}

std::string Bundled::text() const {
  return std::string(plain_text());
}

double Bundled::number() const {
  const auto value = parse_number(plain_text());
  if (!value) fail(fmt::format("'{}' is no number", plain_text()));
  return *value;
}

std::vector<double> Bundled::numbers() const {
  std::vector<double> all;
  for (const Bundled& item : items()) all.push_back(item.number());
  return all;
}

double Bundled::number_or(std::string_view key, double other) const {
  return has(key) ? number(key) : other;
}

Bundled Bundled::with_id(std::string_view id) const {
  for (const Bundled& item : items())
    if (item.at("id").plain_text() == id) return item;
  fail(fmt::format("nothing has the id '{}'", id));
}

Citation citation_of(const Bundled& block) {
  return {block.text("source"), block.has("table") ? block.text("table") : "",
          block.text("status")};
}

BundledRow::BundledRow(const std::vector<std::string>& columns, const Bundled& row)
    : columns_(&columns), cells_(row.items()), row_(row) {
  if (cells_.size() != columns.size())
    row.fail(fmt::format("{} cells under {} columns", cells_.size(), columns.size()));
}

bool BundledRow::has(std::string_view column) const {
  return std::find(columns_->begin(), columns_->end(), column) != columns_->end();
}

std::size_t BundledRow::place_of(std::string_view column) const {
  const auto found = std::find(columns_->begin(), columns_->end(), column);
  if (found == columns_->end()) row_.fail(fmt::format("no column '{}'", column));
  return static_cast<std::size_t>(found - columns_->begin());
}

double BundledRow::number(std::string_view column) const {
  return cells_[place_of(column)].number();
}

std::string BundledRow::text(std::string_view column) const {
  return cells_[place_of(column)].text();
}

std::string folded_name(std::string_view name) {
  std::string folded(trimmed(name));
  for (char& c : folded) {
    if (c == '-' || c == ' ') c = '_';
    c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return folded;
}

std::string spaced_name(std::string_view id) {
  std::string spaced(id);
  std::replace(spaced.begin(), spaced.end(), '_', ' ');
  return spaced;
}

}  // namespace pluckbook
