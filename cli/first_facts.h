// first_facts.h - what a new book begins with: seven plain questions on a terminal, each with an
// option and a default.
#pragma once

#include "book/write.h"
#include "cli/command.h"

namespace pluckbook::cli {

/// The options' answers; on a terminal, what they leave open is asked until it can be read.
/// `usual_name` is the folder's, `today` the day the herd is taken to graze there.
/// Fails: an answer that cannot be read, off a terminal; the input ends before the last question.
Result<BookFacts> first_facts(const Arguments& arguments, const std::string& usual_name,
                              Date today);

}  // namespace pluckbook::cli
