// in_form.h - one answer in the form asked for: a document with --json, else the page as text.
#pragma once

#include <string>

#include "cli/command.h"
#include "report/json.h"
#include "report/pages.h"

namespace pluckbook::cli {

template <class Answered>
std::string in_form_asked(const Arguments& arguments, const Answered& answered,
                          const Reader& reader) {
  if (arguments.has("json")) return printed(to_json(answered, reader));
  return text_of(page_of(answered, reader), reader.width);
}

}  // namespace pluckbook::cli
