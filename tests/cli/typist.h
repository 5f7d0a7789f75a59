// typist.h - a person at a terminal: the program runs in a pseudo-terminal, and each line is typed
// when it asks.
#pragma once

#include <poll.h>
#include <pty.h>
#include <unistd.h>

#include <csignal>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {

/// A question ends with "> " or "): ".
inline bool is_asking(const std::string& screen) {
  return screen.ends_with("> ") || screen.ends_with("): ");
}

/// Runs a line of the shell on a terminal 80 columns wide. Where more is asked than is typed, the
/// input ends there. What the screen shows holds what was typed.
inline Ran run_typed(const std::filesystem::path& folder, const std::string& line,
                     const std::vector<std::string>& typed) {
  const std::string command = shell_line(folder, line);
  winsize window{24, 80, 0, 0};
  int screen = -1;
  const pid_t child = forkpty(&screen, nullptr, nullptr, &window);
  if (child == 0) {
    setenv("NO_COLOR", "1", 1);  // the words are what is looked at
    execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
    _exit(127);
  }
  Ran ran;
  std::size_t next = 0;
  constexpr int patience_ms = 20'000;
  std::array<char, 4096> buffer{};
  for (pollfd ready{screen, POLLIN, 0}; poll(&ready, 1, patience_ms) == 1;) {
    const ssize_t count = read(screen, buffer.data(), buffer.size());
    if (count <= 0) break;
    for (ssize_t i = 0; i < count; ++i) {
      const char c = buffer[static_cast<std::size_t>(i)];
      if (c != '\r') ran.output += c;
    }
    if (!is_asking(ran.output)) continue;
    const std::string answer = next < typed.size() ? typed[next++] + "\n" : "\x04";
    if (write(screen, answer.data(), answer.size()) < 0) break;
  }
  kill(child, SIGHUP);  // gone already, unless it hangs
  int status = 0;
  waitpid(child, &status, 0);
  close(screen);
  ran.exit = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return ran;
}

}  // namespace pluckbook::testing
