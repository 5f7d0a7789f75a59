// import.h - the rows of a laboratory's CSV as results of the book's bags. Every row is taken,
// there already, or refused with a reason; none is lost silently.
#pragma once

#include <string>
#include <vector>

#include "book/layout.h"
#include "book/records.h"
#include "book/write.h"

namespace pluckbook {

struct Import {
  struct Row {
    int line = 0;  // of the CSV
    std::string bag;
    std::string what;  // taken: the result as written; else the reason
  };
  std::vector<Row> taken, there_already, refused;
  std::vector<TextChange> changes;  // what the rows taken make of the samples files
};

/// Reads the rows by the layout and adds each result to the text of its bag's file, where the
/// reader of the book judges it; writes nothing. `received` dates the results where no column does.
/// A cell "<0.1" is no figure and is kept in the note; "7.5%" and "7.5 %" are 7.5; an empty cell,
/// "-" and "n/a" say nothing.
/// Requires: the layout fits the table; `book` was read from disk just before.
Import import_rows(const Book& book, const Layout& layout, const LabTable& table, Date received);

}  // namespace pluckbook
