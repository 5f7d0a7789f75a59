// schema_json.h - the JSON Schema (draft 7) of a file of the book, made from the very tables that
// read it, so that an editor completes and checks what is typed. It refuses nothing that the reader
// takes; what needs more than one file, or a sum, is left to `check`.
#pragma once

#include <string>

#include "report/json.h"

namespace pluckbook {

/// Requires: a file of schema_files().
Json json_schema(const std::string& file);

}  // namespace pluckbook
