// tsv.h - the independent copies of tests/data/published: column names, then one row a line. They
// were cut out of the collected publications by another route than the files of reference/.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "base/text.h"

namespace pluckbook::test {

using TsvRow = std::map<std::string, std::string>;

inline std::vector<TsvRow> read_tsv(const std::string& name) {
  std::ifstream file(std::string(PLUCKBOOK_TEST_DATA) + "/published/" + name + ".tsv");
  EXPECT_TRUE(file.is_open()) << name;
  std::vector<TsvRow> rows;
  std::string line;
  std::getline(file, line);
  const std::string head = line;
  const auto columns = split(head, '\t');
  while (std::getline(file, line)) {
    const auto cells = split(line, '\t');
    EXPECT_EQ(cells.size(), columns.size()) << name << ": " << line;
    TsvRow row;
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i)
      row[std::string(columns[i])] = std::string(cells[i]);
    rows.push_back(std::move(row));
  }
  return rows;
}

inline double number(const TsvRow& row, const std::string& column) {
  const auto found = row.find(column);
  if (found == row.end()) {
    ADD_FAILURE() << "no column " << column;
    return 0;
  }
  const auto value = parse_number(found->second);
  EXPECT_TRUE(value.has_value()) << column << ": " << found->second;
  return value.value_or(0);
}

/// Half a unit of the last printed digit: 0.05 for "11.6". A hair more for the binary fraction.
inline double print_rounding(const TsvRow& row, const std::string& column) {
  const std::string& text = row.at(column);
  const auto point = text.find('.');
  double unit = 1;
  if (point != std::string::npos)
    for (std::size_t i = point + 1; i < text.size(); ++i) unit /= 10;
  return unit / 2 * 1.002;
}

}  // namespace pluckbook::test
