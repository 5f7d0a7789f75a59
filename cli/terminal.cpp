#include "cli/terminal.h"

#include <unistd.h>

#include <cstdio>
#include <iostream>

#include "base/text.h"

namespace pluckbook::cli {

bool on_terminal() {
  return ::isatty(STDIN_FILENO) == 1 && ::isatty(STDOUT_FILENO) == 1;
}

std::optional<std::string> ask(const std::string& question) {
  std::fwrite(question.data(), 1, question.size(), stdout);
  std::fflush(stdout);
  std::string line;
  if (!std::getline(std::cin, line)) {
    std::fputc('\n', stdout);
    return std::nullopt;
  }
  return std::string(trimmed(line));
}

Result<std::vector<std::string>> piped_lines() {
  constexpr std::size_t most = 64 * 1024;
  std::vector<std::string> lines;
  std::size_t size = 0;
  for (std::string line; std::getline(std::cin, line);) {
    size += line.size() + 1;
    if (size > most) {
      return input_problem("more than 64 kB came through the pipe",
                           "pipe the lines of one page, name=value each; nothing was written");
    }
    const std::string_view bare = trimmed(line);
    if (!bare.empty() && bare[0] != '#') lines.emplace_back(bare);
  }
  return lines;
}

}  // namespace pluckbook::cli
