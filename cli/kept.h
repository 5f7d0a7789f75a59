// kept.h - what a command that wrote something says: what, where, and what comes next.
#pragma once

#include <string>

#include "book/write.h"
#include "cli/command.h"

namespace pluckbook::cli {

/// "WHAT", "FILE:LINE", "next: ..."; what the store had to say goes to standard error.
Answer kept(const Written& written, const std::string& what, const std::string& next);

}  // namespace pluckbook::cli
