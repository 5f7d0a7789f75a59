// mutations.h - a good file of a book spoilt in one known place at a time, some hundreds of ways.
// Keys and values are found here by their looks, not by the reader that is tested.
#pragma once

#include <algorithm>
#include <regex>
#include <string>
#include <vector>

#include "base/text.h"

namespace pluckbook::testing {

struct Mutation {
  std::string name;          // "herds.yaml:3 value has an anchor"
  std::string file, text;    // the whole file, spoilt
  int line = 0, column = 0;  // where a Problem must stand, from 1
  int length = 1;            // of the token there
  bool sole = false;         // it hides the rest of the file: nothing else is said of it
};

class Mutator {
 public:
  Mutator(std::string file, std::string text) : file_(std::move(file)), text_(std::move(text)) {}

  std::vector<Mutation> all() {
    // In a comment nothing is wrong.
    static const std::regex token("^#.*|([a-z_0-9]+): *([^\\n,}\\]{\\[#]*[^\\n,}\\]{\\[# ])?");
    for (auto at = std::sregex_iterator(text_.begin(), text_.end(), token);
         at != std::sregex_iterator(); ++at) {
      if ((*at)[1].matched) spoil_key(*at);
      if ((*at)[2].matched) spoil_value(*at);
    }
    for (std::size_t begin = 0; begin < text_.size(); begin = text_.find('\n', begin) + 1) {
      spoil_line(begin);
    }
    return std::move(mutations_);
  }

 private:
  static std::size_t position(const std::smatch& match, std::size_t group) {
    return static_cast<std::size_t>(match.position(group));
  }

  void spoil_key(const std::smatch& match) {
    const std::size_t at = position(match, 1);
    const std::string key = match[1], value = match[2];
    put("an unknown key", at, key.size(), key + "zq", key.size() + 2, false);
    if (match[2].matched) {
      put("a value taken out", position(match, 2), value.size(), "", 1, false, at, key.size());
    }
    const std::string again = key + ": " + (value.empty() ? "x" : value);
    const std::size_t begin = text_.rfind('\n', at) + 1;
    const std::string before = text_.substr(begin, at - begin);
    if (before.find_first_not_of(' ') == std::string::npos) {
      const std::string line = again + "\n" + before;
      put("a key given twice", at, 0, line, key.size(), true, at + line.size());
    } else if (before.back() == '{' || before.back() == ' ') {
      const std::string in_line = again + ", ";
      if (before.find('{') != std::string::npos) {
        put("a key given twice", at, 0, in_line, key.size(), true, at + in_line.size());
      }
    }
  }

  void spoil_value(const std::smatch& match) {
    const std::size_t at = position(match, 2);
    const std::string value = match[2];
    const auto replace = [&](const char* name, const std::string& by, bool sole) {
      put(name, at, value.size(), by, by.size(), sole);
    };
    replace("several values", "[1]", false);
    replace("an escaped control character", "\"\\e[31m\"", true);
    replace("a raw direction character", "\u202e" + value, true);
    replace("a byte that ends transmissions", "\x04" + value, true);
    replace("a byte that is no UTF-8", "\xff" + value, true);
    replace("a NUL", std::string(1, '\0') + value, true);
    replace("a quote that stays open", "\"" + value, true);
    replace("an anchor", "&a " + value, true);
    replace("an alias", "*a", true);
    replace("a tag", "!!str " + value, true);
    replace("a colon too many", value + ": x", true);
  }

  void spoil_line(std::size_t begin) {
    if (text_[begin] == '\n') return;
    put("a tab in the indentation", begin, 0, "\t", 1, true);
    put("a directive", begin, 0, "%YAML 1.2\n", 9, true);
    if (text_[begin] == '-' && begin > text_.find("- "))
      put("a second document", begin, 0, "---\n", 3, true);
  }

  // Replaces `count` bytes at `at`. The Problem belongs at `place` of the new text (at itself).
  void put(const std::string& what, std::size_t at, std::size_t count, const std::string& by,
           std::size_t length, bool sole, std::size_t place = std::string::npos,
           std::size_t token = 0) {
    if (place == std::string::npos) place = at;
    Mutation one;
    one.file = file_;
    one.text = text_.substr(0, at) + by + text_.substr(at + count);
    const std::string before = one.text.substr(0, place);
    one.line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
    const std::size_t line_begin = before.rfind('\n') + 1;
    one.column = 1 + static_cast<int>(code_points(before.substr(line_begin)).size());
    one.length = static_cast<int>(token > 0 ? token : length);
    one.sole = sole;
    one.name = file_ + ":" + std::to_string(one.line) + " " + what;
    mutations_.push_back(std::move(one));
  }

  std::string file_, text_;
  std::vector<Mutation> mutations_;
};

}  // namespace pluckbook::testing
