// typed_page.h - a laboratory's page as it is typed: on the command line, through a pipe, or line
// by line on a terminal, where a slip is answered at once.
#pragma once

#include "book/records.h"
#include "cli/command.h"

namespace pluckbook::cli {

/// The basis and the figures of `result BAG ...`; nothing else of the result is set.
/// Fails: a figure that cannot be read, one given twice, none at all.
Result<LabResult> typed_page(const Arguments& arguments);

}  // namespace pluckbook::cli
