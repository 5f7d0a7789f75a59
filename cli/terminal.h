// terminal.h - the few questions the program asks, and lines from a pipe. Nothing is asked unless
// both standard input and output are terminals.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"

namespace pluckbook::cli {

bool on_terminal();

/// Columns to print in: the terminal's own, between 40 and 200; 80 anywhere else.
int page_width();

/// Prints the question and waits for a line, trimmed; nothing at the end of the input.
std::optional<std::string> ask(const std::string& question);

/// The lines of standard input, trimmed; blank ones and those that begin with # left out.
/// Fails: more than 64 kB, which is no page of a laboratory.
Result<std::vector<std::string>> piped_lines();

}  // namespace pluckbook::cli
