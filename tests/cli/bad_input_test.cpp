// Rubbish in the book: a Problem with place and remedy, exit status 3, an untouched book.
#include <gtest/gtest.h>

#include <map>
#include <ostream>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

struct Bad {
  const char* name;
  const char* file;
  const char* from;  // replaced once; empty: the whole file
  const char* to;
  const char* place;   // how the message begins
  const char* remedy;  // words it must hold
};

std::ostream& operator<<(std::ostream& out, const Bad& bad) {
  return out << bad.name;
}

class BadInput : public ::testing::TestWithParam<Bad> {};

std::map<std::string, std::string> all_files(const std::filesystem::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) files[entry.path().string()] = read_text(entry.path());
  }
  return files;
}

TEST_P(BadInput, IsAProblemWithPlaceAndRemedyAndChangesNothing) {
  const Bad& bad = GetParam();
  FreshFolder folder("northern");
  const auto file = folder.path() / bad.file;
  std::string text = read_text(file);
  if (*bad.from == '\0') {
    text = bad.to;
  } else {
    const std::size_t at = text.find(bad.from);
    ASSERT_NE(at, std::string::npos) << "the demo book no longer holds: " << bad.from;
    text.replace(at, std::string(bad.from).size(), bad.to);
  }
  write_text(file, text);
  const auto before = all_files(folder.path());
  for (const char* command : {"check", "outlook --as-of 2026-08-20",
                              "result 26-draws-08 cp=7 dm=92 adf=41 ndf=65 --as-of 2026-09-05"}) {
    const Ran ran = run_in(folder.path(), command);
    EXPECT_EQ(ran.exit, 3) << command << "\n" << ran.output;
    EXPECT_NE(ran.output.find(bad.place), std::string::npos) << command << "\n" << ran.output;
    EXPECT_NE(ran.output.find(bad.remedy), std::string::npos) << command << "\n" << ran.output;
  }
  EXPECT_EQ(all_files(folder.path()), before);
}

INSTANTIATE_TEST_SUITE_P(
    Book, BadInput,
    ::testing::Values(Bad{"unknown_key", "feeds.yaml", "freight: 12 USD/ton", "fright: 12 USD/ton",
                          "feeds.yaml:", "did you mean 'freight'?"},
                      Bad{"duplicate_id", "feeds.yaml", "- id: cube-38", "- id: cube-20",
                          "feeds.yaml:", "cube-20"},
                      Bad{"impossible_date", "grazing.yaml", "2026-07-02", "2026-06-31",
                          "grazing.yaml:", "no such day"},
                      Bad{"negative_price", "feeds.yaml", "price: 355 USD/ton",
                          "price: -355 USD/ton", "feeds.yaml:", "price"},
                      Bad{"not_a_number", "feeds.yaml", "waste: 5", "waste: .nan",
                          "feeds.yaml:", "number"},
                      Bad{"feed_without_protein", "feeds.yaml", "  like: soybean hulls\n", "",
                          "feeds.yaml:", "like"},
                      Bad{"empty_file", "book.yaml", "", "", "book.yaml", "the file is empty"},
                      Bad{"binary_file", "herds.yaml", "",
                          "\x7f"
                          "ELF\x02\x01\x01\x03\xff\xfe",
                          "herds.yaml:", "text"}),
    [](const auto& param) { return std::string(param.param.name); });

TEST(BadResult, CpOf84IsRefusedAndTheBookUntouched) {
  FreshFolder folder("northern");
  const auto before = all_files(folder.path());
  const Ran ran =
      run_in(folder.path(), "result 26-draws-08 dm=91 cp=84 adf=41 ndf=66 --as-of 2026-09-05");
  EXPECT_EQ(ran.exit, 3) << ran.output;
  EXPECT_NE(ran.output.find("84"), std::string::npos) << ran.output;
  EXPECT_EQ(all_files(folder.path()), before);
}

TEST(BadResult, AdfAboveNdfIsRefusedAndTheBookUntouched) {
  FreshFolder folder("northern");
  const auto before = all_files(folder.path());
  const Ran ran =
      run_in(folder.path(), "result 26-draws-08 dm=91 cp=8 adf=66 ndf=41 --as-of 2026-09-05");
  EXPECT_EQ(ran.exit, 3) << ran.output;
  EXPECT_NE(ran.output.find("NDF"), std::string::npos) << ran.output;
  EXPECT_EQ(all_files(folder.path()), before);
}

TEST(BadHerd, OnNoPastureIsSaidWithWhatToWrite) {
  FreshFolder folder("northern");
  write_text(folder.path() / "grazing.yaml", "# nothing yet\n");
  const Ran ran = run_in(folder.path(), "outlook spring-cows --as-of 2026-08-20");
  EXPECT_EQ(ran.exit, 3) << ran.output;
  EXPECT_NE(ran.output.find("on no pasture"), std::string::npos) << ran.output;
  EXPECT_NE(ran.output.find("pluckbook move spring-cows"), std::string::npos) << ran.output;
}

TEST(BadCommandLine, SuggestsTheNearestWordAndExitsTwo) {
  FreshFolder folder("northern");
  const std::vector<std::pair<const char*, const char*>> slips = {
      {"outlok", "did you mean 'outlook'?"},
      {"outlook --as-off 2026-08-20", "did you mean '--as-of'?"},
      {"outlook spring-cow --as-of 2026-08-20", "did you mean 'spring-cows'?"},
      {"outlook --as-of 8/20/2026", "2026-07-06"},
      {"price", "name one: spring-cows, first-calf"},
      {"price spring-cows --cover 40", "50 to 99"},
      {"need --weight 1200 --month 13", "1 to 12"},
  };
  for (const auto& [words, remedy] : slips) {
    const Ran ran = run_in(folder.path(), words);
    EXPECT_EQ(ran.exit, 2) << words << "\n" << ran.output;
    EXPECT_NE(ran.output.find(remedy), std::string::npos) << words << "\n" << ran.output;
  }
}

}  // namespace
}  // namespace pluckbook::testing
