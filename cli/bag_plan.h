// bag_plan.h - bag --plan: what to know before the walk. Writes nothing.
#pragma once

#include "cli/command.h"
#include "cli/open_book.h"

namespace pluckbook::cli {

Result<Answer> plan_bag(const Arguments& arguments, const Opened& opened, const Pasture& pasture);

}  // namespace pluckbook::cli
