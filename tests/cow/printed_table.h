// printed_table.h - one published table held against the equations: how far each column lies from
// what they give, printed, and kept in DEVELOPERS.md.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <iostream>
#include <iterator>

#include "published/tsv.h"

namespace pluckbook::test {

class PrintedTable {
 public:
  /// The rows of tests/data/published/NAME.tsv.
  PrintedTable(std::string name, std::size_t rows) : name_(std::move(name)) {
    rows_ = read_tsv(name_);
    EXPECT_EQ(rows_.size(), rows);
  }
  const std::vector<TsvRow>& rows() const { return rows_; }

  /// Agrees to the last digit printed.
  void same(const TsvRow& row, const std::string& column, double computed) {
    near(row, column, computed, print_rounding(row, column));
  }
  /// Agrees within a stated deviation that is more than the print's rounding.
  void near(const TsvRow& row, const std::string& column, double computed, double most) {
    const double off = std::abs(number(row, column) - computed);
    EXPECT_LE(off, most) << name_ << ": " << column << " printed " << row.at(column)
                         << ", computed " << computed;
    if (std::isnan(computed)) ADD_FAILURE() << column;
    double& largest = largest_[column];
    largest = std::max(largest, off);
  }

  /// Prints the largest deviations; they stand in DEVELOPERS.md as they are.
  void report() const {
    std::string line = fmt::format("| `{}` | {} |", name_, rows_.size());
    const char* between = " ";
    for (const auto& [column, off] : largest_) {
      line += fmt::format("{}{} {:.3f}", between, column, off);
      between = ", ";
    }
    line += " |";
    std::cout << line << "\n";
    std::ifstream file(std::string(PLUCKBOOK_SOURCE) + "/DEVELOPERS.md");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    EXPECT_NE(text.find(line + "\n"), std::string::npos) << "DEVELOPERS.md should say\n" << line;
  }

 private:
  std::string name_;
  std::vector<TsvRow> rows_;
  std::map<std::string, double> largest_;
};

}  // namespace pluckbook::test
