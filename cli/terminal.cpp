#include "cli/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <iostream>

#include "base/text.h"

namespace pluckbook::cli {

bool on_terminal() {
  return ::isatty(STDIN_FILENO) == 1 && ::isatty(STDOUT_FILENO) == 1;
}

int page_width() {
  winsize size{};
  if (::isatty(STDOUT_FILENO) != 1 || ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return 80;
  return size.ws_col == 0 ? 80 : std::clamp(static_cast<int>(size.ws_col), 40, 200);
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
  constexpr std::size_t most = std::size_t{64} * 1024;
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
