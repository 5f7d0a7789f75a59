// splice.h - text put into a YAML file without moving what stands there. Where it goes is found in
// the tree; what is written around it keeps the file's own line breaks and indents.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "base/yaml.h"

namespace pluckbook {

/// A file's text with something added, and the line where the addition begins.
struct Spliced {
  std::string text;
  int line = 0;
};

/// A text cut after each line break; line(1) is the first. The text must outlive it.
class Lines {
 public:
  explicit Lines(const std::string& text);
  int count() const { return static_cast<int>(begins_.size()); }
  std::size_t begin_of(int line) const;
  std::string_view line(int number) const;
  /// The last line before this one that is neither blank nor a comment; 0 where there is none.
  int last_record_before(int line) const;
  std::string_view line_break() const;

 private:
  bool is_record(int number) const;

  const std::string& text_;
  std::vector<std::size_t> begins_;
};

/// Whole lines put after a line of the text. A missing last line break is added first.
Spliced insert_after(const std::string& text, int line, const std::vector<std::string>& added);

/// Where among records in the order of their dates one of this day belongs: behind those of earlier
/// days and its own. At the end, where the dates are in no order or all of them come later: so two
/// people's records of one season go to places of their own, and merge.
std::size_t place_by_date(const std::vector<Date>& dates, Date day);

/// Lines put into a file that holds a list, as one more item ("- " begins the first), which becomes
/// that one of the list: behind the item before it, or at the end of the file; as far in as the
/// others, and after a blank line where they leave one or, with none to go by, where the item is
/// longer than a line. `by_hand` is what a person would add.
/// Fails: the list is written in brackets.
Result<Spliced> with_item(const YamlDocument& document, std::size_t index,
                          const std::vector<std::string>& item, const std::string& by_hand);

/// The line after which a key of a map on lines goes: behind the last of the keys that stand before
/// it, as the records of the book are written. `next_line` is the first that is no longer the
/// map's.
int line_behind(const YamlDocument& document, const YamlNode& map, int next_line,
                std::span<const std::string_view> before);

/// True for a list or map written in brackets.
bool is_flow(const std::string& text, const YamlNode& node);

/// The bracket that closes the one at `begin`, or npos.
std::size_t closing_bracket(std::string_view text, std::size_t begin);

/// Text put before the bracket that closes a flow list or map.
Spliced insert_in_brackets(const std::string& text, const YamlNode& node,
                           const std::string& addition);

/// Says what to add by hand where a layout cannot be added to.
Problem edit_by_hand(const YamlDocument& document, int line, const std::string& addition);

std::string spaces(int count);

/// To six decimals, as short as it reads back.
std::string number_text(double number);

/// As a person would write it: plain where that reads back the same, else in quotes.
std::string as_scalar(const std::string& text);

}  // namespace pluckbook
