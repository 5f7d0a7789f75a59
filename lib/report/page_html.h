// page_html.h - an answer's page as HTML: the same blocks the terminal prints.
#pragma once

#include <string>

#include "report/markup.h"
#include "report/page.h"

namespace pluckbook {

/// A heading right before a table becomes its caption; any other stands at `level` (h2, h3, ...).
/// Charts get ids that begin with `prefix`.
/// Commands to type next are left out: a page on a wall is not typed into.
Markup html_of(const Page& page, int level, const std::string& prefix);

/// <table> with caption and scoped headers.
Markup html_table(const Table& table, const std::string& caption);

}  // namespace pluckbook
