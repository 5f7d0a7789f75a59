#include "book/splice.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace pluckbook {
namespace {

// Whether the items of a list stand apart. A single one says nothing: then long ones do.
bool leaves_a_blank_line(const YamlDocument& document, std::size_t item_lines) {
  const Lines lines(document.text);
  if (document.root.items.size() < 2) return item_lines > 1;
  const int last = document.root.items.back().line;
  for (int line = lines.last_record_before(last) + 1; line < last; ++line) {
    if (trimmed(lines.line(line)).empty()) return true;
  }
  return false;
}

}  // namespace

Lines::Lines(const std::string& text) : text_(text) {
  std::size_t begin = 0;
  while (begin < text.size()) {
    begins_.push_back(begin);
    begin = std::min(text.find('\n', begin), text.size() - 1) + 1;
  }
}

std::size_t Lines::begin_of(int line) const {
  return line > count() ? text_.size() : begins_[static_cast<std::size_t>(line - 1)];
}

std::string_view Lines::line(int number) const {
  return std::string_view(text_).substr(begin_of(number), begin_of(number + 1) - begin_of(number));
}

bool Lines::is_record(int number) const {
  const std::string_view bare = trimmed(line(number));
  return !bare.empty() && bare[0] != '#';
}

int Lines::last_record_before(int line) const {
  int last = line - 1;
  while (last > 0 && !is_record(last)) --last;
  return last;
}

std::string_view Lines::line_break() const {
  const std::size_t first = text_.find('\n');
  return first != std::string::npos && first > 0 && text_[first - 1] == '\r' ? "\r\n" : "\n";
}

Spliced insert_after(const std::string& text, int line, const std::vector<std::string>& added) {
  const Lines lines(text);
  const std::string line_break(lines.line_break());
  const std::size_t at = lines.begin_of(line + 1);
  std::string block;
  if (at > 0 && text[at - 1] != '\n') block += line_break;
  for (const std::string& one : added) block += one + line_break;
  return {text.substr(0, at) + block + text.substr(at), line + 1};
}

std::size_t place_by_date(const std::vector<Date>& dates, Date day) {
  if (!std::is_sorted(dates.begin(), dates.end())) return dates.size();
  const auto later = std::upper_bound(dates.begin(), dates.end(), day);
  return later == dates.begin() ? dates.size() : static_cast<std::size_t>(later - dates.begin());
}

Result<Spliced> with_item(const YamlDocument& document, std::size_t index,
                          const std::vector<std::string>& item, const std::string& by_hand) {
  const std::string& text = document.text;
  const YamlNode& root = document.root;
  if (root.kind == YamlNode::Kind::list && is_flow(text, root)) {
    return edit_by_hand(document, root.line, by_hand);
  }
  const Lines lines(text);
  const bool at_end = index >= root.items.size();
  const int last = at_end ? lines.count() : lines.last_record_before(root.items[index].line);
  const std::string indent = root.kind == YamlNode::Kind::null ? "" : spaces(root.column - 1);
  std::vector<std::string> added;
  const bool blank = !text.empty() && leaves_a_blank_line(document, item.size()) &&
                     !trimmed(lines.line(last)).empty();
  if (blank) added.emplace_back();
  for (const std::string& line : item) added.push_back(indent + line);
  Spliced spliced = insert_after(text, last, added);
  if (blank) ++spliced.line;
  return spliced;
}

int line_behind(const YamlDocument& document, const YamlNode& map, int next_line,
                std::span<const std::string_view> before) {
  const Lines lines(document.text);
  const std::vector<YamlNode::Entry>& entries = map.entries;
  int line = map.line;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (std::find(before.begin(), before.end(), entries[i].key.text) == before.end()) continue;
    const int next = i + 1 < entries.size() ? entries[i + 1].key.line : next_line;
    line = std::max(line, lines.last_record_before(next));
  }
  return line;
}

bool is_flow(const std::string& text, const YamlNode& node) {
  return node.begin < text.size() && (text[node.begin] == '{' || text[node.begin] == '[');
}

std::size_t closing_bracket(std::string_view text, std::size_t begin) {
  int depth = 0;
  char before = ' ';  // the last character that is no space
  for (std::size_t i = begin; i < text.size(); ++i) {
    const char c = text[i];
    const bool opens_text = before == '{' || before == '[' || before == ',' || before == ':';
    if ((c == '"' || c == '\'') && opens_text) {
      for (++i; i < text.size() && text[i] != c; ++i) i += c == '"' && text[i] == '\\' ? 1 : 0;
    } else if (c == '#' && i > 0 && (text[i - 1] == ' ' || text[i - 1] == '\n')) {
      i = std::min(text.find('\n', i), text.size() - 1);
    } else if (c == '{' || c == '[') {
      ++depth;
    } else if (c == '}' || c == ']') {
      if (--depth == 0) return i;
    }
    if (c != ' ' && c != '\n' && c != '\r') before = c;
  }
  return std::string_view::npos;
}

Spliced insert_in_brackets(const std::string& text, const YamlNode& node,
                           const std::string& addition) {
  std::size_t at = closing_bracket(text, node.begin);
  if (at == std::string_view::npos) return {text, node.line};
  while (at > node.begin + 1 && text[at - 1] == ' ') --at;
  const bool empty = node.items.empty() && node.entries.empty();
  const std::string before = text.substr(0, at);
  return {before + (empty ? "" : ", ") + addition + text.substr(at),
          1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'))};
}

Problem edit_by_hand(const YamlDocument& document, int line, const std::string& addition) {
  const Lines lines(document.text);
  const int there = std::min(line, lines.count());
  return input_problem("what stands here cannot be added to without rewriting it",
                       fmt::format("nothing was changed; add by hand:  {}", shown(addition, 200)),
                       Place{document.file, there, 1, 1, std::string(trimmed(lines.line(there)))});
}

std::string spaces(int count) {
  return std::string(static_cast<std::size_t>(std::max(0, count)), ' ');
}

std::string number_text(double number) {
  return shortest(std::round(number * 1e6) / 1e6);
}

std::string as_scalar(const std::string& text) {
  static constexpr std::string_view plain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 ._/+()%-";
  const bool reads_back = !text.empty() && text.find_first_not_of(plain) == std::string::npos &&
                          plain.find(text[0]) < 62 && text.back() != ' ' && text != "null" &&
                          text != "Null" && text != "NULL";
  if (reads_back) return text;
  std::string quoted = "\"";
  for (char c : text) {
    if (c == '"' || c == '\\') quoted += '\\';
    quoted += c;
  }
  return quoted + "\"";
}

}  // namespace pluckbook
