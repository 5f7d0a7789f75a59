// named_file.h - a file that is no part of the book, named on the command line.
#pragma once

#include <cstddef>
#include <string>

#include "base/problem.h"

namespace pluckbook::cli {

/// The bytes of the file, one more than `limit` at most, so that its reader can say it is too
/// large. Fails: there is no such plain file (`what_to_name` says which file is meant), or it
/// cannot be read.
Result<std::string> text_of_file(const std::string& name, std::size_t limit,
                                 const std::string& what_to_name);

}  // namespace pluckbook::cli
