#include "published/bundled.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>

#include "base/text.h"
#include "published/reference_text.h"

namespace pluckbook {

namespace {

[[noreturn]] void end_with(std::string_view message) {
  fmt::print(stderr, "pluckbook is broken: {}\n", message);
  std::abort();
}

}  // namespace

Bundled Bundled::topic(std::string_view name) {
  const auto text = reference_text(name);
  if (!text) end_with(fmt::format("reference/{}.yaml was not compiled in", name));
  auto document = read_yaml(fmt::format("reference/{}.yaml", name), std::string(*text));
  if (!document) end_with(to_text(document.problems().front()));
  auto kept = std::make_shared<const YamlDocument>(*std::move(document));
  const YamlNode* root = &kept->root;
  return {std::move(kept), root};
}

void Bundled::fail(std::string_view what) const {
  end_with(fmt::format("{}:{}: {}", document_->file, node_->line, what));
}

Bundled Bundled::at(std::string_view key) const {
  const YamlNode* found = node_->find(key);
  if (found == nullptr) fail(fmt::format("no '{}' here", key));
  return {document_, found};
}

std::vector<Bundled> Bundled::items() const {
  if (node_->kind != YamlNode::Kind::list) fail("a list is wanted");
  std::vector<Bundled> all;
  for (const YamlNode& item : node_->items) all.push_back({document_, &item});
  return all;
}

std::vector<std::string> Bundled::keys() const {
  if (node_->kind != YamlNode::Kind::map) fail("a map is wanted");
  std::vector<std::string> all;
  for (const YamlNode::Entry& entry : node_->entries) all.push_back(entry.key.text);
  return all;
}

std::string Bundled::text() const {
  if (node_->kind != YamlNode::Kind::scalar) fail("a text is wanted");
  return std::string(trimmed(node_->text));
}

double Bundled::number() const {
  const auto value = parse_number(text());
  if (!value) fail(fmt::format("'{}' is no number", node_->text));
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
    if (item.text("id") == id) return item;
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
