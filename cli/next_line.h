// next_line.h - a printed "next:" line runs as it is printed: it asks the same book, on the same
// day, as the command it follows.
#pragma once

#include <string>

#include "cli/command.h"

namespace pluckbook::cli {

/// The answer with --book and --as-of, where they were given, behind the command of each "next:"
/// line that does not say them yet.
std::string with_next_lines_told(const std::string& answer, const Arguments& arguments);

/// A value as a shell takes it for one word: in quotes where it must be.
std::string shell_word(const std::string& value);

}  // namespace pluckbook::cli
