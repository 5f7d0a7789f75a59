#include "book/import.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"
#include "book/edit.h"
#include "book/files.h"
#include "book/lab_values.h"
#include "book/values.h"

namespace pluckbook {
namespace {

Problem refused(std::string what) {
  return input_problem(std::move(what), "");
}

std::string reason(const Problems& problems) {
  std::string text = problems.front().what;
  if (!problems.front().remedy.empty()) {
    const std::string& remedy = problems.front().remedy;
    text += "; " + remedy.substr(0, remedy.find('\n'));
  }
  return text;
}

// ---- one cell ----------------------------------------------------------------------------------

bool says_nothing(const std::string& cell) {
  const std::string word = as_id(cell);
  return word.empty() || word == "_" || word == "n/a" || word == "na";
}

// The text as it would be typed: a point for decimals, the unit of the header behind a bare number.
Result<std::string> as_typed(const std::string& cell, const Layout& layout,
                             const Layout::Figures& column) {
  std::string text = cell;
  if (layout.decimal == DecimalMark::comma) {
    if (text.find('.') != std::string::npos) {
      return refused(
          fmt::format("{} '{}' has a point, but the layout's decimals have a comma; write a comma",
                      column.analyte, shown(cell)));
    }
    std::replace(text.begin(), text.end(), ',', '.');
  }
  const bool bare = !text.empty() && text.back() >= '0' && text.back() <= '9';
  return bare && !column.unit.empty() ? text + " " + column.unit : text;
}

Result<Done> add_figure(LabResult& result, const std::string& cell, const Layout& layout,
                        const Layout::Figures& column) {
  if (says_nothing(cell)) return Done{};
  if (cell[0] == '<') {
    result.note += fmt::format("{}{} {}", result.note.empty() ? "" : "; ", column.analyte, cell);
    return Done{};
  }
  const Result<std::string> text = as_typed(cell, layout, column);
  if (!text) return text.problems();
  const Result<TypedValue> value = parse_analyte(column.analyte, *text);
  if (!value) return value.problems();
  if (result.values.emplace(value->analyte, value->percent).second) return Done{};
  return refused(fmt::format("{} stands in two columns; leave one of them empty", value->analyte));
}

// ---- one row -----------------------------------------------------------------------------------

class Columns {
 public:
  explicit Columns(const LabTable& table) : headers_(table.headers.cells) {}
  const std::string& cell(const CsvRow& row, const std::string& header) const {
    const auto at = std::find(headers_.begin(), headers_.end(), header) - headers_.begin();
    return row.cells[static_cast<std::size_t>(at)];
  }

 private:
  const std::vector<std::string>& headers_;
};

Result<const Bag*> bag_of(const Book& book, const std::string& id) {
  if (id.empty()) return refused("the row names no bag; write its tag, or take the row out");
  std::vector<std::string> known;
  for (const Bag& bag : book.bags) {
    if (as_id(bag.id) == as_id(id)) return &bag;
    known.push_back(bag.id);
  }
  const auto near = nearest_word(id, known);
  return refused(fmt::format("there is no bag '{}'{}", shown(id),
                             near ? fmt::format("; did you mean '{}'?", *near) : ""));
}

Result<LabResult> result_of(const CsvRow& row, const Layout& layout, const Columns& columns,
                            Date received) {
  LabResult result;
  result.received = received;
  result.lab = layout.lab;
  result.basis = layout.basis;
  if (!layout.reported.empty()) {
    const std::string& cell = columns.cell(row, layout.reported);
    const auto date = date_in(layout.dates, cell);
    if (!date) {
      return refused(
          fmt::format("date '{}' is not {}; write it so", shown(cell), in_words(layout.dates)));
    }
    result.received = *date;
  }
  for (const Layout::Figures& column : layout.columns) {
    const Result<Done> added = add_figure(result, columns.cell(row, column.header), layout, column);
    if (!added) return added.problems();
  }
  if (result.values.empty())
    return refused("the row holds no figure; take it out, or look at the layout");
  return result;
}

bool says_the_same(const LabResult& a, const LabResult& b) {
  return a.basis == b.basis && std::equal(a.values.begin(), a.values.end(), b.values.begin(),
                                          b.values.end(), [](const auto& x, const auto& y) {
                                            return x.first == y.first &&
                                                   std::abs(x.second - y.second) < 1e-6;
                                          });
}

// ---- all rows ----------------------------------------------------------------------------------

// The book's files while results are added to their texts.
class Drafts {
 public:
  explicit Drafts(const Book& book) : book_(book) {}

  Result<Done> add(const Bag& bag, const LabResult& result) {
    const std::string& file = bag.origin.file;
    if (!texts_.contains(file)) {
      const Result<std::optional<std::string>> text = file_text(book_.folder, file);
      if (!text) return text.problems();
      texts_[file] = {file, *text, text->value_or("")};
    }
    TextChange& change = texts_[file];
    Result<Spliced> spliced = with_result(book_, file, change.after, bag.id, result);
    if (!spliced) return spliced.problems();
    change.after = std::move(spliced->text);
    results_[bag.id].push_back(result);
    return Done{};
  }

  /// Those the bag has and those added to it.
  std::vector<LabResult> results(const Bag& bag) const {
    std::vector<LabResult> all = bag.results;
    const auto added = results_.find(bag.id);
    if (added != results_.end()) {
      all.insert(all.end(), added->second.begin(), added->second.end());
    }
    return all;
  }

  std::vector<TextChange> changes() const {
    std::vector<TextChange> all;
    for (const auto& [file, change] : texts_) {
      if (change.before != change.after) all.push_back(change);
    }
    return all;
  }

 private:
  const Book& book_;
  std::map<std::string, TextChange> texts_;
  std::map<std::string, std::vector<LabResult>> results_;
};

std::string in_words(const LabResult& result) {
  std::string text = to_iso(result.received);
  for (const Analyte& analyte : analytes()) {
    const auto value = result.values.find(std::string(analyte.name));
    if (value == result.values.end()) continue;
    text += fmt::format(", {} {}", analyte.name, number_text(value->second));
  }
  return result.note.empty() ? text : text + "; " + shown(result.note);
}

// Takes a row, or says why not.
Result<std::string> take(const Bag& bag, const LabResult& result, Drafts& drafts) {
  for (const LabResult& there : drafts.results(bag)) {
    if (lab_of(bag, there) != lab_of(bag, result)) continue;
    return refused(fmt::format(
        "the bag has another result of {}; a correction is typed: pluckbook result {} ... "
        "--supersedes {}",
        to_iso(there.received), bag.id, to_iso(there.received)));
  }
  const Result<Done> added = drafts.add(bag, result);
  if (!added) return added.problems();
  return in_words(result);
}

void sort_row(const Book& book, const Layout& layout, const Columns& columns, const CsvRow& row,
              Date received, Drafts& drafts, Import& import) {
  const std::string& id = columns.cell(row, layout.bag);
  const auto refuse = [&](const Problems& problems) {
    import.refused.push_back({row.line, id, reason(problems)});
  };
  const Result<const Bag*> bag = bag_of(book, id);
  if (!bag) return refuse(bag.problems());
  const Result<LabResult> result = result_of(row, layout, columns, received);
  if (!result) return refuse(result.problems());
  const std::vector<LabResult> there = drafts.results(**bag);
  if (std::any_of(there.begin(), there.end(), [&](const LabResult& other) {
        return lab_of(**bag, other) == lab_of(**bag, *result) && says_the_same(other, *result);
      })) {
    import.there_already.push_back({row.line, (*bag)->id, in_words(*result)});
    return;
  }
  const Result<std::string> taken = take(**bag, *result, drafts);
  if (!taken) return refuse(taken.problems());
  import.taken.push_back({row.line, (*bag)->id, *taken});
}

}  // namespace

Import import_rows(const Book& book, const Layout& layout, const LabTable& table, Date received) {
  Import import;
  Drafts drafts(book);
  const Columns columns(table);
  const std::size_t width = table.headers.cells.size();
  for (const CsvRow& row : table.rows) {
    if (row.cells.size() == width) {
      sort_row(book, layout, columns, row, received, drafts, import);
      continue;
    }
    import.refused.push_back(
        {row.line, "",
         fmt::format("the row has {} cells, the headers {}; is a delimiter missing?",
                     row.cells.size(), width)});
  }
  import.changes = drafts.changes();
  return import;
}

}  // namespace pluckbook
