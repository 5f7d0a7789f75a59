#include "book/layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "base/text.h"
#include "book/lab_values.h"
#include "book/read_parts.h"
#include "book/values.h"

namespace pluckbook {
namespace {

// ---- what a header says ------------------------------------------------------------------------

struct Header {
  std::string analyte;  // a name parse_analyte takes; empty where none is meant
  std::string unit;
  std::optional<Basis> basis;
};

using Words = std::vector<std::string>;

Words words_of(std::string_view header) {
  Words words(1);
  for (const char c : header) {
    const bool parts = std::string_view(" ()[],;:._-#\n").find(c) != std::string_view::npos;
    if (parts || c == '%') words.emplace_back();
    if (c == '%') words.back() = "%", words.emplace_back();
    if (!parts && c != '%') words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
  }
  std::erase(words, "");
  return words;
}

std::string joined(const Words& words) {
  return fmt::format("{}", fmt::join(words, "_"));
}

// Units as headers write them, by how they are typed.
std::string take_unit(Words& words) {
  static const std::map<std::string, std::string> units = {{"%", "%"},
                                                           {"pct", "%"},
                                                           {"percent", "%"},
                                                           {"g/kg", "g/kg"},
                                                           {"ppm", "ppm"},
                                                           {"mg/kg", "mg/kg"},
                                                           {"mcal/lb", "Mcal/lb"},
                                                           {"mcal/kg", "Mcal/kg"},
                                                           {"mj/kg", "MJ/kg"},
                                                           {"mcal/cwt", "Mcal/cwt"}};
  std::string unit;
  std::erase_if(words, [&](const std::string& word) {
    const auto known = units.find(word);
    if (known != units.end()) unit = known->second;
    return known != units.end();
  });
  return unit;
}

std::optional<Basis> take_basis(Words& words) {
  static const std::set<std::string> dry = {"dm", "dmb", "dry", "db"};
  static const std::set<std::string> fresh = {"ar", "received", "fed", "sampled", "af"};
  static const std::set<std::string> beside = {"as", "matter", "basis", "of", "on", "the"};
  std::optional<Basis> basis;
  std::erase_if(words, [&](const std::string& word) {
    if (dry.contains(word)) basis = Basis::dry_matter;
    if (fresh.contains(word)) basis = Basis::as_received;
    return dry.contains(word) || fresh.contains(word) || beside.contains(word);
  });
  return basis;
}

bool is_analyte(const std::string& name, const std::string& unit) {
  return !name.empty() && parse_analyte(name, unit.empty() ? "50" : "50 " + unit).ok();
}

// "Protein, crude" is crude protein too.
std::string analyte_in(Words words, const std::string& unit) {
  if (is_analyte(joined(words), unit)) return joined(words);
  std::reverse(words.begin(), words.end());
  return is_analyte(joined(words), unit) ? joined(words) : "";
}

Header heard(const std::string& text) {
  Header header;
  Words words = words_of(text);
  header.unit = take_unit(words);
  header.analyte = analyte_in(words, header.unit);  // "dry matter" is a name before it is a basis
  if (header.analyte.empty()) {
    header.basis = take_basis(words);
    header.analyte = analyte_in(words, header.unit);
  }
  if (header.unit == "%") header.unit.clear();
  return header;
}

// The book's own name of the figure: "moisture" gives dm.
std::string key_of(const Header& header) {
  return parse_analyte(header.analyte, header.unit.empty() ? "50" : "50 " + header.unit)->analyte;
}

// ---- which columns are used --------------------------------------------------------------------

std::string column_called(const LabTable& table, std::initializer_list<const char*> names) {
  for (const char* name : names) {
    for (const std::string& header : table.headers.cells) {
      if (joined(words_of(header)) == name) return header;
    }
  }
  return "";
}

std::string bag_column(const LabTable& table) {
  return column_called(table, {"bag", "bag_id", "bag_no", "tag", "sample_id", "sample_no",
                               "sample_number", "sample", "sample_name", "description", "id"});
}

std::string reported_column(const LabTable& table) {
  return column_called(table, {"date_reported", "reported", "report_date", "date_of_report",
                               "date_completed", "completed"});
}

// Dry matter where any column is, or none says; as received where all that say so are.
Basis basis_of(const std::vector<Header>& headers) {
  bool fresh = false;
  for (const Header& header : headers) {
    if (header.basis == Basis::dry_matter) return Basis::dry_matter;
    fresh = fresh || (header.basis == Basis::as_received && key_of(header) != "dm");
  }
  return fresh ? Basis::as_received : Basis::dry_matter;
}

// One column a figure: those of the layout's basis, and of two alike the first.
std::vector<Layout::Figures> figure_columns(const LabTable& table, std::optional<Basis> said,
                                            Basis& basis) {
  std::vector<Header> headers;
  std::vector<std::string> texts;
  for (const std::string& text : table.headers.cells) {
    Header header = heard(text);
    if (header.analyte.empty()) continue;
    headers.push_back(std::move(header));
    texts.push_back(text);
  }
  basis = said ? *said : basis_of(headers);
  std::vector<Layout::Figures> columns;
  std::set<std::string> there;
  for (std::size_t i = 0; i < headers.size(); ++i) {
    const std::string key = key_of(headers[i]);
    const bool other_basis = headers[i].basis && *headers[i].basis != basis && key != "dm";
    if (other_basis || !there.insert(key).second) continue;
    columns.push_back({texts[i], headers[i].analyte, headers[i].unit});
  }
  return columns;
}

// ---- decimals and dates ------------------------------------------------------------------------

std::size_t column_index(const LabTable& table, const std::string& header) {
  const std::vector<std::string>& headers = table.headers.cells;
  return static_cast<std::size_t>(std::find(headers.begin(), headers.end(), header) -
                                  headers.begin());
}

std::vector<std::string> cells_of(const LabTable& table, const std::string& header) {
  std::vector<std::string> cells;
  const std::size_t index = column_index(table, header);
  for (const CsvRow& row : table.rows) {
    if (index < row.cells.size() && !row.cells[index].empty()) cells.push_back(row.cells[index]);
  }
  return cells;
}

DecimalMark decimal_of(const LabTable& table, const std::vector<Layout::Figures>& columns) {
  bool comma = false;
  for (const Layout::Figures& column : columns) {
    for (const std::string& cell : cells_of(table, column.header)) {
      if (cell.find('.') != std::string::npos) return DecimalMark::point;
      comma = comma || cell.find(',') != std::string::npos;
    }
  }
  return comma ? DecimalMark::comma : DecimalMark::point;
}

Result<DateOrder> dates_of(const LabTable& table, const std::string& header) {
  for (const std::string& cell : cells_of(table, header)) {
    if (date_in(DateOrder::year_month_day, cell)) continue;
    return usage_problem(fmt::format("dates such as '{}' can be read in two ways", shown(cell)),
                         "say  --dates month-day-year  or  --dates day-month-year");
  }
  return DateOrder::year_month_day;
}

// ---- in words ----------------------------------------------------------------------------------

std::vector<std::string> layout_lines(const Layout& layout) {
  std::vector<std::string> lines = {"- id: " + layout.id};
  const auto add = [&](std::string_view key, const std::string& value) {
    if (!value.empty()) lines.push_back(fmt::format("  {}: {}", key, as_scalar(value)));
  };
  add("lab", layout.lab);
  add("delimiter", delimiter_word(layout.delimiter));
  add("decimal", in_words(layout.decimal));
  if (!layout.reported.empty()) add("dates", in_words(layout.dates));
  add("bag", layout.bag);
  add("reported", layout.reported);
  add("basis", in_words(layout.basis));
  lines.emplace_back("  columns:");
  for (const Layout::Figures& column : layout.columns) {
    lines.push_back(fmt::format("    - {{header: {}, analyte: {}{}}}", as_scalar(column.header),
                                as_scalar(column.analyte),
                                column.unit.empty() ? "" : ", unit: " + as_scalar(column.unit)));
  }
  return lines;
}

// The line of the headers, the caret under one of them; under the first where none is named.
Place at_headers(const LabTable& table, std::string_view header = "") {
  Place place{table.file, table.headers.line, 1, 1, ""};
  for (const std::string& cell : table.headers.cells) {
    if (!place.line_text.empty()) place.line_text += table.delimiter;
    if (!header.empty() && cell == header) {
      place.column = static_cast<int>(code_points(place.line_text).size()) + 1;
      place.length = static_cast<int>(code_points(cell).size());
    }
    place.line_text += cell;
  }
  return place;
}

}  // namespace

Result<LabTable> lab_table(const std::string& file, std::string_view text, char delimiter) {
  Result<std::vector<CsvRow>> rows = read_csv(file, text, delimiter);
  if (!rows) return rows.problems();
  if (rows->size() < 2) {
    return input_problem("no row stands below the headers", "give the laboratory's CSV as it came",
                         Place{file, 0, 0, 1, ""});
  }
  LabTable table{file, delimiter, rows->front(), {}};
  table.rows.assign(rows->begin() + 1, rows->end());
  std::set<std::string> seen;
  for (const std::string& header : table.headers.cells) {
    if (header.empty() || seen.insert(header).second) continue;
    return input_problem(fmt::format("two columns are headed '{}'", shown(header)),
                         "rename one, so that it is plain which is meant",
                         at_headers(table, header));
  }
  return table;
}

Result<Layout> proposed_layout(const LabTable& table, const LayoutHints& hints) {
  Layout layout;
  layout.id = hints.id;
  layout.lab = hints.lab;
  layout.delimiter = table.delimiter;
  layout.bag = bag_column(table);
  layout.reported = reported_column(table);
  layout.columns = figure_columns(table, hints.basis, layout.basis);
  if (layout.bag.empty()) {
    return input_problem("no column is headed as that of the bags",
                         "head it 'bag', or write the layout into layouts.yaml", at_headers(table));
  }
  if (layout.columns.empty()) {
    return input_problem("no column is headed by a figure this program knows",
                         "write the layout into layouts.yaml, or look at the delimiter",
                         at_headers(table));
  }
  layout.decimal = hints.decimal ? *hints.decimal : decimal_of(table, layout.columns);
  if (layout.reported.empty()) return layout;
  const Result<DateOrder> dates =
      hints.dates ? Result<DateOrder>(*hints.dates) : dates_of(table, layout.reported);
  if (!dates) return dates.problems();
  layout.dates = *dates;
  return layout;
}

Result<Done> fits(const Layout& layout, const LabTable& table) {
  std::vector<std::string> wanted = {layout.bag};
  if (!layout.reported.empty()) wanted.push_back(layout.reported);
  for (const Layout::Figures& column : layout.columns) wanted.push_back(column.header);
  for (const std::string& header : wanted) {
    if (column_index(table, header) < table.headers.cells.size()) continue;
    return input_problem(
        fmt::format("layout '{}' asks for a column headed '{}'", layout.id, shown(header)),
        suggestion(header, table.headers.cells), at_headers(table));
  }
  return Done{};
}

const Layout* layout_for(const Book& book, const LabTable& table) {
  for (const Layout& layout : book.layouts) {
    if (layout.delimiter == table.delimiter && fits(layout, table).ok()) return &layout;
  }
  return nullptr;
}

std::vector<std::pair<std::string, std::string>> uses_of(const Layout& layout,
                                                         const LabTable& table) {
  std::vector<std::pair<std::string, std::string>> uses;
  for (const std::string& header : table.headers.cells) {
    std::string use = "not used";
    if (header == layout.bag) use = "bag";
    if (!header.empty() && header == layout.reported) {
      use = "date of the result, " + in_words(layout.dates);
    }
    for (const Layout::Figures& column : layout.columns) {
      if (column.header != header) continue;
      use = column.unit.empty() ? column.analyte : column.analyte + ", " + column.unit;
    }
    uses.emplace_back(header, use);
  }
  return uses;
}

std::optional<Date> date_in(DateOrder order, std::string_view text) {
  std::array<std::string, 3> parts;
  std::size_t part = 0;
  for (const char c : text) {
    if (c == '-' || c == '/' || c == '.') {
      if (++part == parts.size()) return std::nullopt;
    } else if (c >= '0' && c <= '9' && parts[part].size() < 4) {
      parts[part] += c;
    } else {
      return std::nullopt;
    }
  }
  const std::size_t y = order == DateOrder::year_month_day ? 0 : 2;
  const std::size_t m = order == DateOrder::month_day_year ? 0 : 1;
  const std::size_t d = 3 - y - m;
  std::string year = parts[y].size() == 2 && y == 2 ? "20" + parts[y] : parts[y];
  for (const std::size_t short_part : {m, d}) {
    if (parts[short_part].size() == 1) parts[short_part] = "0" + parts[short_part];
  }
  return parse_date(fmt::format("{}-{}-{}", year, parts[m], parts[d]));
}

std::string in_words(DateOrder order) {
  switch (order) {
    case DateOrder::year_month_day:
      return "year-month-day";
    case DateOrder::month_day_year:
      return "month-day-year";
    case DateOrder::day_month_year:
      return "day-month-year";
  }
  return "";
}

std::string in_words(DecimalMark mark) {
  return mark == DecimalMark::point ? "point" : "comma";
}

std::string in_words(Basis basis) {
  return basis == Basis::dry_matter ? "dry-matter" : "as-received";
}

std::string delimiter_word(char delimiter) {
  return delimiter == ';'    ? "semicolon"
         : delimiter == '\t' ? "tab"
         : delimiter == '|'  ? "bar"
                             : "comma";
}

Result<Spliced> with_layout(const Book& book, const std::string& text, const Layout& layout) {
  const std::string file = "layouts.yaml";
  const Result<YamlDocument> document = read_yaml(file, text);
  if (!document) return document.problems();
  Result<Spliced> spliced =
      with_item(*document, document->root.items.size(), layout_lines(layout), "- id: " + layout.id);
  if (!spliced) return spliced.problems();
  const Result<YamlDocument> now = read_yaml(file, spliced->text);
  if (!now) return edit_by_hand(*document, spliced->line, "- id: " + layout.id);
  Book scratch = book;
  scratch.layouts.clear();
  Problems problems;
  FileReading reading(*now, {book.units, book.currency}, problems);
  read_layouts(reading, now->root, scratch);
  if (problems.empty() && scratch.layouts.size() == book.layouts.size() + 1) return spliced;
  if (problems.empty()) return edit_by_hand(*document, spliced->line, "- id: " + layout.id);
  for (Problem& problem : problems) {
    problem.fault = Fault::usage;
    problem.place.reset();
    problem.remedy += "\nnothing was written";
  }
  return problems;
}

}  // namespace pluckbook
