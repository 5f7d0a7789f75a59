// The README's own examples: every command is run on a fresh copy of the northern demo book and
// must print what the README shows; every line of pencil arithmetic must come out as printed.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

struct Block {
  std::string kind;  // what follows the three ticks: "console", "pencil", ...
  std::vector<std::string> lines;
};

std::vector<Block> blocks_of(const std::string& markdown, const std::string& kind) {
  std::vector<Block> blocks;
  std::istringstream in(markdown);
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("```", 0) == 0) {
      if (!inside) blocks.push_back({line.substr(3), {}});
      inside = !inside;
    } else if (inside) {
      blocks.back().lines.push_back(line);
    }
  }
  std::vector<Block> wanted;
  for (Block& block : blocks) {
    if (block.kind == kind) wanted.push_back(std::move(block));
  }
  return wanted;
}

std::string readme() {
  return read_text(std::filesystem::path(PLUCKBOOK_SOURCE) / "README.md");
}

/// Runs a line of the shell where the reader stands, and goes where it says "cd".
std::string run_there(std::filesystem::path& there, const std::string& command) {
  const Ran ran = run_line(there, "{ " + command + "\n} 2>&1");
  if (command.starts_with("cd ")) there /= command.substr(3);
  return ran.output;
}

/// The lines that follow and begin with ">", as a shell asks for more; put behind the command.
std::string with_more(std::string command, std::istringstream& lines, std::string& text) {
  while (lines.peek() == '>') {
    std::string line;
    std::getline(lines, line);
    text += line + "\n";
    command += "\n" + (line.size() > 2 ? line.substr(2) : "");
  }
  return command;
}

/// The README with every console block's commands run anew, in order: in one fresh demo book, and
/// behind the mark "an empty folder" in one of those.
std::string replayed_readme(const std::string& markdown) {
  FreshFolder book("northern"), empty;
  std::filesystem::path there = book.path();
  std::istringstream lines(markdown);
  std::string text;
  bool inside = false;
  bool console = false;
  for (std::string line; std::getline(lines, line);) {
    if (line == "<!-- an empty folder -->") there = empty.path();
    if (line == "<!-- the demo book -->") there = book.path();
    const bool fence = line.starts_with("```");
    if (fence) inside = !inside;
    if (fence) console = inside && line == "```console";
    const bool command = console && line.starts_with("$ ");
    if (!console || command || fence) text += line + "\n";
    if (command) text += run_there(there, with_more(line.substr(2), lines, text));
  }
  return text;
}

// PLUCKBOOK_GOLDEN=write puts what is printed now into the README; read the difference.
TEST(Readme, EveryCommandPrintsWhatItShows) {
  ASSERT_GE(blocks_of(readme(), "console").size(), 3U);
  const std::string shown = readme();
  const std::string now = replayed_readme(shown);
  const char* mode = std::getenv("PLUCKBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "write") {
    write_text(std::filesystem::path(PLUCKBOOK_SOURCE) / "README.md", now);
  }
  EXPECT_EQ(now, shown);
}

/// Left to right, as one writes it on paper; x is times.
double by_pencil(const std::string& text) {
  std::istringstream in(text);
  double value = 0;
  in >> value;
  char sign = 0;
  double next = 0;
  while (in >> sign >> next) {
    value = sign == 'x'   ? value * next
            : sign == '/' ? value / next
            : sign == '+' ? value + next
                          : value - next;
  }
  return value;
}

TEST(Readme, EveryLineOfPencilArithmeticComesOutAsPrinted) {
  int lines = 0;
  for (const Block& block : blocks_of(readme(), "pencil")) {
    for (const std::string& line : block.lines) {
      const std::size_t equals = line.rfind(" = ");
      const std::size_t colon = line.rfind(": ", equals);
      if (colon == std::string::npos || equals == std::string::npos) continue;
      const std::string answer = line.substr(equals + 3, line.find(' ', equals + 3) - equals - 3);
      const std::size_t point = answer.find('.');
      const double decimals =
          point == std::string::npos ? 0 : static_cast<double>(answer.size() - point - 1);
      const double half = 0.5 * std::pow(10, -decimals);
      EXPECT_NEAR(by_pencil(line.substr(colon + 2, equals - colon - 2)), std::stod(answer),
                  half * 1.0001)
          << line;
      ++lines;
    }
  }
  EXPECT_GE(lines, 8);
}

}  // namespace
}  // namespace pluckbook::testing
