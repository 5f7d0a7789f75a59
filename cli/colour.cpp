#include "cli/colour.h"

#include <unistd.h>

#include <cstdlib>

#include "base/text.h"

namespace pluckbook::cli {
namespace {

constexpr const char* bold = "\x1b[1m";
constexpr const char* warning = "\x1b[1;35m";  // magenta
constexpr const char* plain = "\x1b[0m";

}  // namespace

bool colour_wanted(const Arguments& arguments) {
  const std::string asked = arguments.get("color", "auto");
  if (asked != "auto") return asked == "always";
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  const bool dumb = term != nullptr && std::string_view(term) == "dumb";
  return ::isatty(STDOUT_FILENO) == 1 && !dumb && (no_color == nullptr || *no_color == '\0');
}

std::string painted(const std::string& text) {
  std::string out;
  bool first_paragraph = true;
  for (std::string_view line : split(text, '\n')) {
    first_paragraph = first_paragraph && !line.empty();
    const char* colour = first_paragraph ? bold : line == "cautions" ? warning : nullptr;
    if (!out.empty() || &*line.begin() != text.data()) out += "\n";
    out += colour == nullptr ? std::string(line) : colour + std::string(line) + plain;
  }
  return out;
}

}  // namespace pluckbook::cli
