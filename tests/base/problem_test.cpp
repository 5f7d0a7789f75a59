#include "base/problem.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

TEST(Problem, PlaceLineCaretRemedy) {
  Problem problem = input_problem("unknown key 'fright'", "did you mean 'freight'?",
                                  Place{"feeds.yaml", 12, 5, 6, "    fright: 38"});
  EXPECT_EQ(to_text(problem),
            "feeds.yaml:12:5: unknown key 'fright'\n"
            "  12 |     fright: 38\n"
            "     |     ^~~~~~\n"
            "  did you mean 'freight'?\n");
}

TEST(Problem, CaretStandsTrueAfterWideLettersTabsAndEscapes) {
  EXPECT_EQ(to_text(input_problem("x", "", Place{"f", 3, 4, 1, "牧\té!"})),
            "f:3:4: x\n"
            "   3 | 牧 é!\n"
            "     |     ^\n");
  EXPECT_EQ(to_text(input_problem("x", "", Place{"f", 3, 2, 1, "\x1b!"})),
            "f:3:2: x\n"
            "   3 | \\u001b!\n"
            "     |       ^\n");
}

TEST(Problem, AWarningSaysSoInAWord) {
  Problem problem = input_problem("quote is 14 months old", "ask again");
  problem.severity = Severity::warning;
  EXPECT_EQ(to_text(problem), "pluckbook: warning: quote is 14 months old\n  ask again\n");
}

TEST(Result, HoldsAValueOrProblems) {
  Result<int> good = 3;
  ASSERT_TRUE(good.ok());
  EXPECT_EQ(*good, 3);
  Result<int> bad = usage_problem("no", "try yes");
  ASSERT_FALSE(bad);
  EXPECT_EQ(bad.problems().front().what, "no");
}

}  // namespace
}  // namespace pluckbook
