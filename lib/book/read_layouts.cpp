// layouts.yaml: the columns of laboratories' CSV files, confirmed once and used again.
#include "book/lab_values.h"
#include "book/read_parts.h"

namespace pluckbook {
namespace {

// A name a page may use, which import will convert.
Value<std::string> analyte_value() {
  return {"text", "cp",
          [](const Dialect&, std::string_view, std::string_view text) -> Result<std::string> {
            if (auto problem = refuse_analyte(text)) return *std::move(problem);
            return std::string(text);
          }};
}

const Keys<Layout::Figures>& figures_keys() {
  static const Keys<Layout::Figures> table = {
      "column",
      {
          key("header", Need::required, text_value("Crude Protein"), &Layout::Figures::header),
          key("analyte", Need::required, analyte_value(), &Layout::Figures::analyte),
          key("unit", Need::optional, text_value("g/kg"), &Layout::Figures::unit),
      }};
  return table;
}

void read_columns(FileReading& reading, const YamlNode::Entry& entry, Layout& layout) {
  for (const YamlNode& node : items_of(reading, entry.value, "column")) {
    Layout::Figures figures;
    read_record(reading, node, figures_keys(), figures);
    layout.columns.push_back(std::move(figures));
  }
}

const Keys<Layout>& layout_keys() {
  static const Keys<Layout> table = {
      "layout",
      {
          key("id", Need::required, id_value("county"), &Layout::id),
          key("lab", Need::optional, id_value("county"), &Layout::lab),
          key("delimiter", Need::required,
              choice_value<char>("comma",
                                 {{"comma", ','}, {"semicolon", ';'}, {"tab", '\t'}, {"bar", '|'}}),
              &Layout::delimiter),
          key("decimal", Need::required,
              choice_value<DecimalMark>(
                  "point", {{"point", DecimalMark::point}, {"comma", DecimalMark::comma}}),
              &Layout::decimal),
          key("dates", Need::optional,
              choice_value<DateOrder>("year-month-day",
                                      {{"year-month-day", DateOrder::year_month_day},
                                       {"month-day-year", DateOrder::month_day_year},
                                       {"day-month-year", DateOrder::day_month_year}}),
              &Layout::dates),
          key("bag", Need::required, text_value("Sample ID"), &Layout::bag),
          key("reported", Need::optional, text_value("Date Reported"), &Layout::reported),
          key("basis", Need::required,
              choice_value<Basis>("dry matter", {{"dry matter", Basis::dry_matter},
                                                 {"as received", Basis::as_received}}),
              &Layout::basis),
          {"columns",
           Need::required,
           "list",
           "[{header: Crude Protein, analyte: cp}]",
           read_columns,
           {},
           facts_of(figures_keys())},
      }};
  return table;
}

}  // namespace

std::vector<KeyFact> layout_facts() {
  return facts_of(layout_keys());
}

void read_layouts(FileReading& reading, const YamlNode& root, Book& book) {
  UsedIds used;
  for (const YamlNode& node : items_of(reading, root, "layout")) {
    Layout layout;
    layout.origin = reading.origin(node);
    read_record(reading, node, layout_keys(), layout);
    note_used_id(reading, node, used, layout, "layout");
    if (!layout.lab.empty()) {
      note_unknown_id(reading, at_key(node, "lab"), book.labs, layout.lab, "laboratory",
                      "book.yaml");
    }
    book.layouts.push_back(std::move(layout));
  }
}

}  // namespace pluckbook
