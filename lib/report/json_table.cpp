#include "report/json_table.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "base/text.h"

namespace pluckbook {
namespace {

/// One line of the table: values under the keys they had, "diet_now.median".
using Row = std::vector<std::pair<std::string, Json>>;

bool is_quantity(const Json& json) {
  return json.is_object() && json.contains("value") && json.contains("unit");
}

/// Scalars and quantities of an object, those of its inner objects under csv_line names. Numbers
/// that share one unit ({"median": 9, "low": 8, "unit": "%"}) become quantities. Arrays are left to
/// the path.
void add_fields(Row& row, const std::string& before, const Json& object) {
  const bool share_a_unit = object.contains("unit") && !object.contains("value");
  for (const auto& [key, value] : object.items()) {
    const std::string name = before.empty() ? key : before + "_" + key;
    if (value.is_array() || (share_a_unit && key == "unit")) continue;
    if (share_a_unit && value.is_number()) {
      row.emplace_back(name, Json{{"value", value}, {"unit", object.at("unit")}});
      continue;
    }
    if (value.is_object() && !is_quantity(value)) {
      add_fields(row, name, value);
    } else {
      row.emplace_back(name, value);
    }
  }
}

void add_rows(std::vector<Row>& rows, const Row& so_far, const Json& object,
              const std::vector<std::string_view>& path, std::size_t step) {
  for (const Json& item : object.at(std::string(path[step]))) {
    Row row = so_far;
    add_fields(row, "", item);
    if (step + 1 < path.size()) {
      add_rows(rows, row, item, path, step + 1);
    } else {
      rows.push_back(std::move(row));
    }
  }
}

/// "lb/day" -> "lb_per_day", "% of DM" -> "percent_of_dm".
std::string unit_in_a_name(const std::string& unit) {
  std::string name;
  for (const char c : unit) {
    if (c == '%') {
      name += "percent";
    } else if (c == '/') {
      name += "_per_";
    } else if (c >= 'A' && c <= 'Z') {
      name += static_cast<char>(c - 'A' + 'a');
    } else {
      name += c == ' ' ? '_' : c;
    }
  }
  return name;
}

struct CsvColumn {
  std::string key;
  std::vector<std::string> units;  // those its quantities have
  bool known = false;              // in any row

  bool mixed() const { return units.size() > 1; }
  std::string header() const {
    return units.size() == 1 ? key + "_" + unit_in_a_name(units.front()) : key;
  }
};

/// Of the same rows some may know an object where others say null: its own columns serve.
bool stands_for_an_object(const CsvColumn& column, const std::vector<CsvColumn>& all) {
  return !column.known && std::any_of(all.begin(), all.end(), [&](const CsvColumn& other) {
    return other.key.starts_with(column.key + "_");
  });
}

/// In the order first met.
std::vector<CsvColumn> columns_of(const std::vector<Row>& rows) {
  std::vector<CsvColumn> columns;
  for (const Row& row : rows) {
    for (const auto& [key, value] : row) {
      auto column = std::find_if(columns.begin(), columns.end(),
                                 [&key = key](const CsvColumn& c) { return c.key == key; });
      if (column == columns.end()) column = columns.insert(columns.end(), {key, {}});
      column->known = column->known || !value.is_null();
      if (!is_quantity(value)) continue;
      const std::string unit = value.at("unit").get<std::string>();
      if (std::find(column->units.begin(), column->units.end(), unit) == column->units.end()) {
        column->units.push_back(unit);
      }
    }
  }
  std::vector<CsvColumn> kept;
  for (const CsvColumn& column : columns) {
    if (!stands_for_an_object(column, columns)) kept.push_back(column);
  }
  return kept;
}

std::string quoted(std::string text) {
  if (!text.empty() && std::string_view("=+-@\t\r").find(text[0]) != std::string_view::npos) {
    text.insert(text.begin(), '\'');
  }
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

std::string cell(const Json& value) {
  if (is_quantity(value)) return cell(value.at("value"));
  if (value.is_null()) return "";
  if (value.is_string()) return quoted(shown(value.get<std::string>(), std::string::npos));
  return value.dump();
}

std::string csv_line(const std::vector<std::string>& cells) {
  std::string line;
  for (const std::string& one : cells) line += (&one == &cells.front() ? "" : ",") + one;
  return line + "\r\n";
}

const Json* find(const Row& row, const std::string& key) {
  for (const auto& [name, value] : row) {
    if (name == key) return &value;
  }
  return nullptr;
}

}  // namespace

std::string csv_of(const Json& document, const std::string& path) {
  std::vector<Row> rows;
  add_rows(rows, {}, document, split(path, '/'), 0);
  const std::vector<CsvColumn> columns = columns_of(rows);
  std::vector<std::string> header;
  for (const CsvColumn& column : columns) {
    header.push_back(quoted(column.header()));
    if (column.mixed()) header.push_back(quoted(column.key + "_unit"));
  }
  std::string text = csv_line(header);
  for (const Row& row : rows) {
    std::vector<std::string> cells;
    for (const CsvColumn& column : columns) {
      const Json* value = find(row, column.key);
      cells.push_back(value == nullptr ? "" : cell(*value));
      if (!column.mixed()) continue;
      const bool has_unit = value != nullptr && is_quantity(*value);
      cells.push_back(has_unit ? quoted(value->at("unit").get<std::string>()) : "");
    }
    text += csv_line(cells);
  }
  return text;
}

}  // namespace pluckbook
