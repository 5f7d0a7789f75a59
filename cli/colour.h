// colour.h - the answer and its cautions made easier to find on a terminal. Colour never says what
// a word does not say as well: without it nothing is lost.
#pragma once

#include <string>

#include "cli/command.h"

namespace pluckbook::cli {

/// --color, else: a terminal, no NO_COLOR, and TERM is not dumb.
bool colour_wanted(const Arguments& arguments);

/// The first paragraph bold; the heading "cautions" in a colour that reads on black and on white.
std::string painted(const std::string& text);

}  // namespace pluckbook::cli
