#include "cli/next_line.h"

#include <algorithm>

namespace pluckbook::cli {
std::string shell_word(const std::string& value) {
  const bool plain = value.find_first_not_of(
                         "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._/-") ==
                     std::string::npos;
  if (plain && !value.empty()) return value;
  std::string quoted = "'";
  for (const char c : value) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

std::string with_next_lines_told(const std::string& answer, const Arguments& arguments) {
  std::string text;
  std::string_view rest = answer;
  while (!rest.empty()) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    text += line;
    if (line.starts_with("next: ") && line.find("pluckbook ") != std::string_view::npos) {
      for (const std::string option : {"book", "as-of"}) {
        const bool said = line.find("--" + option) != std::string_view::npos;
        if (said || !arguments.has(option)) continue;
        text += " --" + option + " " + shell_word(arguments.get(option));
      }
    }
    if (line.size() < rest.size()) text += '\n';
    rest.remove_prefix(std::min(line.size() + 1, rest.size()));
  }
  return text;
}

}  // namespace pluckbook::cli
