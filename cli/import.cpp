#include "book/import.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "book/files.h"
#include "book/values.h"
#include "cli/command.h"
#include "cli/named_file.h"
#include "cli/next_line.h"
#include "cli/open_book.h"
#include "cli/terminal.h"
#include "report/json.h"
#include "report/table.h"

namespace pluckbook::cli {
namespace {

// ---- the file and its layout -------------------------------------------------------------------

template <class T>
Result<std::optional<T>> hint(const Arguments& arguments, const char* option,
                              const std::vector<T>& values) {
  if (!arguments.has(option)) return std::optional<T>();
  std::vector<std::string> words;
  for (const T& value : values) {
    words.push_back(in_words(value));
    if (words.back() == arguments.get(option)) return std::optional<T>(value);
  }
  return usage_problem(fmt::format("--{} cannot be '{}'", option, shown(arguments.get(option))),
                       fmt::format("write {}", fmt::join(words, " or ")));
}

/// "county", or "county-2" where the book has a layout of that name for other columns.
std::string free_layout_id(const Book& book, const std::string& wanted) {
  const auto is_taken = [&](const std::string& id) {
    return std::any_of(book.layouts.begin(), book.layouts.end(),
                       [&](const Layout& layout) { return same_id(layout.id, id); });
  };
  std::string id = wanted;
  for (int next = 2; is_taken(id); ++next) id = fmt::format("{}-{}", wanted, next);
  return id;
}

Result<LayoutHints> hints_of(const Arguments& arguments, const Book& book) {
  LayoutHints hints;
  hints.lab = arguments.get("lab", book.labs.size() == 1 ? book.labs.front().id : "");
  hints.id =
      arguments.get("layout", free_layout_id(book, hints.lab.empty() ? "layout" : hints.lab));
  const auto decimal =
      hint<DecimalMark>(arguments, "decimal", {DecimalMark::point, DecimalMark::comma});
  if (!decimal) return decimal.problems();
  const auto dates = hint<DateOrder>(
      arguments, "dates",
      {DateOrder::year_month_day, DateOrder::month_day_year, DateOrder::day_month_year});
  if (!dates) return dates.problems();
  const auto basis = hint<Basis>(arguments, "basis", {Basis::dry_matter, Basis::as_received});
  if (!basis) return basis.problems();
  hints.decimal = *decimal;
  hints.dates = *dates;
  hints.basis = *basis;
  return hints;
}

/// The layout for a file, and whether the book has it.
struct Chosen {
  Layout layout;
  LabTable table;
  bool is_new = false;
};

Result<Chosen> choose(const Arguments& arguments, const Book& book, const std::string& text) {
  const std::string& file = arguments.words[0];
  const std::string name = arguments.get("layout");
  const auto named = std::find_if(book.layouts.begin(), book.layouts.end(),
                                  [&](const Layout& layout) { return layout.id == name; });
  const bool is_known = named != book.layouts.end();
  Result<LabTable> table = lab_table(file, text, is_known ? named->delimiter : csv_delimiter(text));
  if (!table) return table.problems();
  if (is_known) {
    const Result<Done> fit = fits(*named, *table);
    if (!fit) return fit.problems();
    return Chosen{*named, *std::move(table), false};
  }
  const Layout* known = name.empty() ? layout_for(book, *table) : nullptr;
  if (known != nullptr) return Chosen{*known, *std::move(table), false};
  const Result<LayoutHints> hints = hints_of(arguments, book);
  if (!hints) return hints.problems();
  const Result<Layout> proposed = proposed_layout(*table, *hints);
  if (!proposed) return proposed.problems();
  return Chosen{*proposed, *std::move(table), true};
}

// ---- in words ----------------------------------------------------------------------------------

std::string layout_text(const Chosen& chosen) {
  const Layout& layout = chosen.layout;
  std::string text =
      fmt::format("layout '{}', {}: parted by {}, decimal {}, basis {}{}\n", layout.id,
                  chosen.is_new ? "proposed from the headers"
                                : fmt::format("{}:{}", layout.origin.file, layout.origin.line),
                  delimiter_word(layout.delimiter), in_words(layout.decimal),
                  in_words(layout.basis), layout.lab.empty() ? "" : ", laboratory " + layout.lab);
  Table table({{"column", Align::left}, {"becomes", Align::left}});
  for (const auto& [header, use] : uses_of(layout, chosen.table)) table.add({shown(header), use});
  return wrapped(text) + table.text();
}

std::string rows_text(const Import& import, const std::string& file, bool with_taken) {
  std::string text;
  const auto add = [&](const std::vector<Import::Row>& rows, std::string_view word) {
    for (const Import::Row& row : rows) {
      text += wrapped(fmt::format("{}:{}: {}{}: {}", shown(file, 200), row.line, word,
                                  row.bag.empty() ? "" : " " + shown(row.bag), row.what),
                      80, 4);
    }
  };
  if (with_taken) add(import.taken, "take");
  if (with_taken) add(import.there_already, "there already");
  add(import.refused, "refused");
  return text;
}

std::string count_text(const Import& import, std::string_view done) {
  return fmt::format("{} {}, {} there already, {} refused\n", import.taken.size(), done,
                     import.there_already.size(), import.refused.size());
}

Json rows_json(const std::vector<Import::Row>& rows) {
  Json json = Json::array();
  for (const Import::Row& row : rows) {
    json.push_back({{"line", row.line}, {"bag", row.bag}, {"what", row.what}});
  }
  return json;
}

/// The command that writes what was looked at.
std::string writing_command(const Arguments& arguments, const Chosen& chosen,
                            const Import& import) {
  if (import.taken.empty() && !import.refused.empty())
    return "mend these rows, or the layout, and import the file again";
  std::string options;
  for (const char* option : {"layout", "lab", "basis", "decimal", "dates", "date"}) {
    if (arguments.has(option))
      options += fmt::format(" --{} {}", option, shell_word(arguments.get(option)));
  }
  if (chosen.is_new) options += " --accept";
  if (!import.refused.empty()) options += " --take-good-rows";
  return fmt::format("pluckbook import {}{}", shell_word(shown(arguments.words[0], 200)), options);
}

Json import_json(const Chosen& chosen, const Import& import, const std::string& next,
                 bool written) {
  Json json = document("import");
  json["layout"] = chosen.layout.id;
  json["layout_is_new"] = chosen.is_new;
  json["columns"] = Json::array();
  for (const auto& [header, use] : uses_of(chosen.layout, chosen.table)) {
    json["columns"].push_back({{"header", header}, {"becomes", use}});
  }
  json["taken"] = rows_json(import.taken);
  json["there_already"] = rows_json(import.there_already);
  json["refused"] = rows_json(import.refused);
  json["written"] = written;
  json["files"] = Json::array();
  for (const TextChange& change : import.changes) json["files"].push_back(change.file);
  json["next"] = next;
  return json;
}

// ---- writing -----------------------------------------------------------------------------------

/// A layout is confirmed once: it is the book's, or --accept says so.
bool is_confirmed(const Arguments& arguments, const Chosen& chosen) {
  return !chosen.is_new || arguments.has("accept");
}

bool confirms(const Chosen& chosen) {
  const auto word =
      ask(layout_text(chosen) +
          fmt::format("keep this layout as '{}'? yes or no (no): ", chosen.layout.id));
  return word && (*word == "yes" || *word == "y");
}

Result<Written> write(const Book& book, const Chosen& chosen, const Import& import) {
  std::vector<TextChange> changes;
  if (chosen.is_new) {
    const std::string file = "layouts.yaml";
    const Result<std::optional<std::string>> text = file_text(book.folder, file);
    if (!text) return text.problems();
    const Result<Spliced> spliced = with_layout(book, text->value_or(""), chosen.layout);
    if (!spliced) return spliced.problems();
    changes.push_back({file, *text, spliced->text});
  }
  changes.insert(changes.end(), import.changes.begin(), import.changes.end());
  return write_texts(book, changes);
}

/// What was found, with nothing written.
Answer looked_at(const Arguments& arguments, const Chosen& chosen, const Import& import) {
  const std::string& file = arguments.words[0];
  const std::string next = writing_command(arguments, chosen, import);
  Answer answer;
  answer.exit_status = import.refused.empty() ? 0 : 3;
  if (arguments.has("json")) {
    answer.text = printed(import_json(chosen, import, next, false));
    return answer;
  }
  answer.text = layout_text(chosen) + "\n" + rows_text(import, file, true) +
                count_text(import, "to take") + "nothing was written\n";
  answer.text += "next: " + next + "\n";
  return answer;
}

Answer imported(const Arguments& arguments, const Chosen& chosen, const Import& import) {
  const std::string& file = arguments.words[0];
  Answer answer;
  answer.exit_status = import.refused.empty() ? 0 : 3;
  if (arguments.has("json")) {
    answer.text = printed(import_json(chosen, import, "pluckbook outlook", true));
    return answer;
  }
  answer.text = rows_text(import, file, false) + count_text(import, "kept");
  if (chosen.is_new)
    answer.text += fmt::format("layout '{}' kept in layouts.yaml\n", chosen.layout.id);
  for (const TextChange& change : import.changes) answer.text += change.file + "\n";
  answer.text +=
      import.taken.empty() ? "nothing new: no sample was changed\n" : "next: pluckbook outlook\n";
  return answer;
}

Result<Answer> run_import(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments);
  if (!opened) return opened.problems();
  Result<Date> received = recorded_day(arguments, opened->as_of);
  if (!received) return received.problems();
  const Result<std::string> text = text_of_file(arguments.words[0], CsvLimits().bytes,
                                                "name the CSV as it came from the laboratory");
  if (!text) return text.problems();
  const Result<Chosen> chosen = choose(arguments, opened->whole, *text);
  if (!chosen) return chosen.problems();
  const Import import = import_rows(opened->whole, chosen->layout, chosen->table, *received);
  const bool all_good = import.refused.empty() || arguments.has("take-good-rows");
  if (arguments.has("dry-run")) return looked_at(arguments, *chosen, import);
  const bool may_ask = all_good && on_terminal() && !arguments.has("json");
  if (!is_confirmed(arguments, *chosen) && may_ask && !confirms(*chosen)) {
    return Answer{"nothing was written\n", {}, 1};
  }
  if (!all_good || (!is_confirmed(arguments, *chosen) && !may_ask)) {
    Answer answer = looked_at(arguments, *chosen, import);
    answer.exit_status = std::max(answer.exit_status, 1);
    return answer;
  }
  const Result<Written> written = write(opened->whole, *chosen, import);
  if (!written) return written.problems();
  Answer answer = imported(arguments, *chosen, import);
  answer.warnings = written->warnings;
  return answer;
}

}  // namespace

Command import_command() {
  return {
      .name = "import",
      .usage = "FILE",
      .purpose = "a laboratory's CSV becomes results",
      .group = "the bag",
      .examples = {"pluckbook import august.csv --dry-run",
                   "pluckbook import august.csv --accept         keeps the layout proposed",
                   "pluckbook import august.csv --take-good-rows"},
      .options = {{"dry-run", "", "show what each column and row becomes, write nothing"},
                  {"accept", "", "keep the layout proposed from the headers, and use it"},
                  {"layout", "NAME", "a layout of the book, or the name of the new one"},
                  {"lab", "ID", "the laboratory of a new layout (the only one)"},
                  {"basis", "WORD", "of a new layout: dry-matter or as-received"},
                  {"decimal", "WORD", "of a new layout: point or comma"},
                  {"dates", "ORDER", "of a new layout: month-day-year or day-month-year"},
                  {"date", "DATE", "when the page came, where no column says (as-of)"},
                  {"take-good-rows", "", "write these though other rows are refused"}},
      .least_words = 1,
      .most_words = 1,
      .run = run_import,
  };
}

}  // namespace pluckbook::cli
