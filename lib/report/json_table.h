// json_table.h - the rows of a document as CSV (RFC 4180), so that a command's table and its JSON
// come from one place.
#pragma once

#include <string>

#include "report/json.h"

namespace pluckbook {

/// The rows at `path` ("herds/nutrients": the nutrients of every herd), a line each, under one
/// header. An object's own fields stand before those of the rows inside it. A quantity's unit goes
/// into its column's name ("need_lb_per_day") or, where rows differ in it, into a column of its
/// own; what is unknown is left empty. A text cell that a spreadsheet would take for a formula gets
/// a leading '. Requires: every step of the path is an array of objects.
std::string csv_of(const Json& document, const std::string& path);

}  // namespace pluckbook
