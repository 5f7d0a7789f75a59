// command_line.h - from argv to a command and its arguments, and the words of --help.
#pragma once

#include <string>
#include <vector>

#include "cli/command.h"

namespace pluckbook::cli {

struct Parsed {
  const Command* command = nullptr;  // null: the program's own help or version
  Arguments arguments;
  bool help = false, version = false;
};

/// Options may stand anywhere, `--book DIR` and `--book=DIR` alike; `--` ends options.
/// Fails: unknown command or option (nearest suggested), a value missing, words too few or many.
Result<Parsed> parse(const std::vector<std::string>& words);

std::string help_text();
std::string help_text(const Command& command);

}  // namespace pluckbook::cli
