// kept.h - what a command that wrote something says: what, where, and what comes next.
#pragma once

#include <string>
#include <string_view>

#include "book/write.h"
#include "cli/command.h"

namespace pluckbook::cli {

struct Kept {
  std::string what, next;  // in words
  WrittenKeys about = {};  // {{"bag", "26-draws-08"}}: what a document names beside the words
};

/// "WHAT", "FILE:LINE", "next: ...", or the same as a document with --json; what the store had to
/// say goes to standard error.
Answer said_of(const Kept& kept, std::string_view command, const Written& written,
               const Arguments& arguments);

/// {"schema": "pluckbook/COMMAND/1", "bag": ..., "what": ..., "file": ..., "line": ..., "next":
/// ...}
std::string document_of(const Kept& kept, std::string_view command, const Written& written);

}  // namespace pluckbook::cli
