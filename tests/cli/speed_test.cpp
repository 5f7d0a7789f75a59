// A book of two hundred bags answers while one looks. Measured as processor time, so that a busy
// machine changes nothing.
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <fmt/format.h>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

double seconds_of_children() {
  rusage used{};
  getrusage(RUSAGE_CHILDREN, &used);
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1e6;
  };
  return seconds(used.ru_utime) + seconds(used.ru_stime);
}

/// Seasons before those of the demo book, ten bags in each of three pastures, until it holds 200.
void add_seasons(const std::filesystem::path& folder) {
  int bags = 47;
  for (int year = 2024; bags < 200; --year) {
    for (const char* pasture : {"draws", "stovepipe", "meadow"}) {
      std::string text;
      for (int i = 0; i < 10 && bags < 200; ++i, ++bags) {
        const int month = 5 + i / 2, day = i % 2 == 0 ? 6 : 21;
        text += fmt::format(
            "- bag: {0}-{1}-{2:02}\n  plucked: {3}-{4:02}-{5:02}\n  stops: 20\n  results:\n"
            "    - {{received: {3}-{4:02}-{6:02}, basis: dry matter, dm: 92, cp: {7:.1f}, adf: "
            "{8:.1f}, ndf: 62}}\n",
            year % 100, pasture, i + 1, year, month, day, day + 7, 14.5 - i, 32.0 + i);
      }
      if (!text.empty())
        write_text(folder / fmt::format("samples/{}/{}.yaml", year, pasture), text);
    }
  }
}

TEST(Speed, EveryCommandAnswersABookOfTwoHundredBagsAtOnce) {
#ifdef PLUCKBOOK_SANITIZED
  GTEST_SKIP() << "the sanitizers' time is not the program's";
#endif
  const FreshFolder folder("northern");
  add_seasons(folder.path());
  const std::vector<std::pair<const char*, double>> limits = {
      {"--help", 0.1},
      {"check", 0.3},
      {"bags --as-of 2026-09-05", 1},
      {"diet draws --as-of 2026-08-20", 1},
      {"need spring-cows --as-of 2026-08-20", 1},
      {"outlook --as-of 2026-08-20", 1},
      {"price spring-cows --as-of 2026-10-25", 1},
      {"workings spring-cows --as-of 2026-10-20", 1},
      {"bag draws --plan --as-of 2026-08-20", 1},
      {"result 26-draws-08 cp=7 dm=92 adf=41 --as-of 2026-09-05", 1},
      {"sources", 1}};
  for (const auto& [words, limit] : limits) {
    const double before = seconds_of_children();
    EXPECT_EQ(run_in(folder.path(), words).exit, 0) << words;
    const double took = seconds_of_children() - before;
    RecordProperty(std::string(words).substr(0, std::string(words).find(' ')),
                   fmt::format("{:.3f}", took));
    EXPECT_LT(took, limit) << words;
  }
}

}  // namespace
}  // namespace pluckbook::testing
