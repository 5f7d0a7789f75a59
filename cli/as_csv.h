// as_csv.h - --csv: the rows of the document that --json would print.
#pragma once

#include "cli/command.h"

namespace pluckbook::cli {

/// Runs the command for its document and turns the command's rows into CSV.
/// Requires: the command has rows.
Result<Answer> run_for_csv(const Command& command, Arguments arguments);

}  // namespace pluckbook::cli
