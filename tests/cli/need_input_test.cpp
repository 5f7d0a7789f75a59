// What no herd can have is a Problem that says what to do, the same words every time.
#include <gtest/gtest.h>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

TEST(NeedByFlags, AWeightOf12LbIsRefused) {
  const FreshFolder none;
  const Ran ran = run_in(none.path(), "need --weight 12 --milk 20");
  EXPECT_EQ(ran.exit, 2);
  EXPECT_EQ(ran.output,
            "pluckbook: weight 12 lb is outside 44.09 to 4409 lb\n"
            "  check the number and its unit\n");
}

TEST(NeedByFlags, AMilkOf400LbIsRefused) {
  const FreshFolder none;
  const Ran ran = run_in(none.path(), "need --weight 1200 --milk 400");
  EXPECT_EQ(ran.exit, 2);
  EXPECT_EQ(ran.output,
            "pluckbook: milk 400 lb/day is outside 0 to 88.18 lb/day\n"
            "  check the number and its unit\n");
}

struct BadHerd {
  const char* name;
  const char* from;
  const char* to;
  const char* said;
};

std::ostream& operator<<(std::ostream& out, const BadHerd& bad) {
  return out << bad.name;
}

class NeedOfABadHerd : public ::testing::TestWithParam<BadHerd> {};

TEST_P(NeedOfABadHerd, SaysWhatIsWrongWhereAndWhatToDo) {
  FreshFolder book("northern");
  const auto file = book.path() / "herds.yaml";
  std::string text = read_text(file);
  const std::size_t at = text.find(GetParam().from);
  ASSERT_NE(at, std::string::npos);
  write_text(file, text.replace(at, std::string(GetParam().from).size(), GetParam().to));
  for (const char* words : {"need spring-cows", "workings spring-cows"}) {
    const Ran ran = run_in(book.path(), std::string(words) + " --as-of 2026-08-20");
    EXPECT_EQ(ran.exit, 3) << words;
    EXPECT_EQ(ran.output, GetParam().said) << words;
  }
}

INSTANTIATE_TEST_SUITE_P(
    Herds, NeedOfABadHerd,
    ::testing::Values(
        BadHerd{"weight_12_lb", "weight: 1250 lb", "weight: 12 lb",
                "herds.yaml:4:11: weight 12 lb is outside 44.09 to 4409 lb\n"
                "   4 |   weight: 12 lb\n"
                "     |           ^~~~~\n"
                "  check the number and its unit\n"},
        BadHerd{"milk_400_lb", "peak_milk: 22 lb/day", "peak_milk: 400 lb/day",
                "herds.yaml:5:14: peak_milk 400 lb/day is outside 0 to 88.18 lb/day\n"
                "   5 |   peak_milk: 400 lb/day\n"
                "     |              ^~~~~~~~~~\n"
                "  check the number and its unit\n"},
        BadHerd{"calving_after_weaning", "weaning: 2026-10-15", "weaning: 2026-03-01",
                "herds.yaml:9:12: weaning on 2026-03-01 is before calving on 2026-03-10\n"
                "   9 |   weaning: 2026-03-01\n"
                "     |            ^~~~~~~~~~\n"
                "  give the weaning of the calves born from that day\n"},
        BadHerd{"shares_of_130_percent", "[62, 24, 10, 4]", "[62, 44, 20, 4]",
                "herds.yaml:8:50: the shares born add to 130 %, not 100 %\n"
                "   8 |   calving: {first: 2026-03-10, share_by_21_days: [62, 44, 20, 4]}\n"
                "     |                                                  ^\n"
                "  write the percent of calves born in each 21 days from the first\n"}),
    [](const auto& param) { return std::string(param.param.name); });

}  // namespace
}  // namespace pluckbook::testing
