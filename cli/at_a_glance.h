// at_a_glance.h - `pluckbook` alone: which book this is and what waits to be done.
#pragma once

#include <string>

#include "base/problem.h"

namespace pluckbook::cli {

/// Where there is no book, the help text.
/// Fails: a book that cannot be read.
Result<std::string> at_a_glance();

}  // namespace pluckbook::cli
