// The workings can be done over again from their own text: every line is read, the arithmetic done
// by an evaluator of the tests' own, and the result compared to print rounding.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/paper_arithmetic.h"
#include "cli/run.h"

namespace pluckbook::testing {
namespace {

struct Asked {
  const char* name;
  const char* scenario;
  const char* words;
  std::size_t least_lines;  // of arithmetic
};

std::ostream& operator<<(std::ostream& out, const Asked& asked) {
  return out << asked.scenario << ": " << asked.words;
}

class Workings : public ::testing::TestWithParam<Asked> {
 protected:
  std::string printed(const std::string& more = "") const {
    const FreshFolder book(GetParam().scenario);
    const Ran ran = run_in(book.path(), std::string("workings ") + GetParam().words + more);
    EXPECT_EQ(ran.exit, 0) << ran.output;
    return ran.output;
  }
};

TEST_P(Workings, EveryLineComesOutAsPrinted) {
  const std::vector<PrintedLine> lines = printed_lines(printed());
  EXPECT_GE(lines.size(), GetParam().least_lines);
  for (const PrintedLine& line : lines) {
    SCOPED_TRACE(line.text);
    const Difference difference = difference_of(line);
    EXPECT_LE(difference.off, difference.allowed + 1e-9);
  }
}

TEST_P(Workings, NoLineOfArithmeticGoesUnread) {
  const auto json = nlohmann::json::parse(printed(" --json"));
  EXPECT_EQ(json["schema"], "pluckbook/workings/1");
  std::size_t worked = 0;
  for (const auto& section : json["sections"]) {
    for (const auto& line : section["lines"]) {
      if (!line["worked"].is_null()) ++worked;
      EXPECT_TRUE(line["result"]["value"].is_number()) << line.dump();
    }
  }
  EXPECT_EQ(printed_lines(printed()).size(), worked);
}

// The check is worth as much as what it lets pass: less than a fiftieth, or five of the last place
// where two figures nearly alike are taken from each other.
TEST_P(Workings, AResultWrongByAFiftiethIsFoundOut) {
  for (const PrintedLine& line : printed_lines(printed())) {
    SCOPED_TRACE(line.text);
    const Difference difference = difference_of(line);
    const Approximate result = PaperArithmetic::of(line.result);
    const double five_last_places = 10 * result.error;
    EXPECT_LT(difference.allowed + difference.off,
              std::max(std::abs(result.value) / 50, five_last_places));
  }
}

TEST_P(Workings, FitsEightyColumns) {
  std::istringstream rows(printed());
  for (std::string row; std::getline(rows, row);) EXPECT_LE(row.size(), 80U) << row;
}

INSTANTIATE_TEST_SUITE_P(
    DemoHerds, Workings,
    ::testing::Values(
        Asked{"milking", "northern", "spring-cows --as-of 2026-08-20", 100},
        Asked{"weaned", "northern", "spring-cows --as-of 2026-10-20", 50},
        Asked{"poor_grass", "northern", "spring-cows --as-of 2027-01-15", 50},
        Asked{"first_calf", "northern", "first-calf --as-of 2026-07-20", 60},
        Asked{"ahead", "northern", "first-calf --as-of 2026-08-20 --on 2026-10-02", 40},
        Asked{"metric", "northern", "spring-cows --as-of 2026-08-20 --units metric", 100},
        Asked{"fall", "southern", "fall-cows --as-of 2026-11-10", 60},
        Asked{"bred", "southern", "bred-heifers --as-of 2026-10-10", 30}),
    [](const auto& param) { return std::string(param.param.name); });

TEST(PaperArithmetic, KnowsHowFarRoundingReaches) {
  EXPECT_NEAR(PaperArithmetic::of("1250 lb x 1.2 % / 62 %").value, 24.1935, 1e-4);
  EXPECT_EQ(PaperArithmetic::of("1250 lb x 1.2 % / 62 %").error, 0);
  EXPECT_NEAR(PaperArithmetic::of("24.057 lb x 8.388 %").error,
              24.057 * 0.000005 + 0.08388 * 0.0005 + 0.0005 * 0.000005, 1e-12);
  EXPECT_NEAR(PaperArithmetic::of("the smaller of 30 lb and 2 x (4 - 1) ^ 2").value, 18, 1e-12);
  EXPECT_NEAR(PaperArithmetic::of("9 / 3 / 3 + 1 x 2 - 5").value, -2, 1e-12);
  EXPECT_THROW(PaperArithmetic::of("12 lb x heads"), std::exception);
}

TEST(PaperArithmetic, AResultThatDisagreesIsFoundOut) {
  EXPECT_TRUE(difference_of(*printed_line("CP: a x b = 24.057 lb x 8.388 % = 2.018 lb [4]"))
                  .within_rounding());
  EXPECT_FALSE(difference_of(*printed_line("CP: a x b = 24.057 lb x 8.388 % = 2.020 lb [4]"))
                   .within_rounding());
  EXPECT_FALSE(difference_of(*printed_line("CP: a + b = 24.057 lb + 8.388 % = 2.018 lb [4]"))
                   .within_rounding());
}

}  // namespace
}  // namespace pluckbook::testing
