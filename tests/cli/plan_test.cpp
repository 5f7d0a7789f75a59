// A plan's printed figures, read back from the page as a banker would with a pencil.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

const std::string northern_plan = "plan spring-cows --as-of 2026-08-20";
const std::string southern_plan = "plan fall-cows --as-of 2026-11-20";

std::vector<std::string> words_of(const std::string& line) {
  std::istringstream in(line);
  std::vector<std::string> words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

/// The lines from one that begins with `head` to the next empty one.
std::vector<std::string> block_from(const std::string& text, const std::string& head) {
  std::istringstream in(text);
  std::vector<std::string> block;
  for (std::string line; std::getline(in, line);) {
    if (!block.empty() && line.empty()) break;
    if (!block.empty() || line.rfind(head, 0) == 0) block.push_back(line);
  }
  return block;
}

long cents(const std::string& printed) {
  return std::lround(std::stod(printed) * 100);
}

/// What the program says; asked once of the same words, since it writes nothing.
const std::string& planned(const std::string& scenario, const std::string& words) {
  static std::map<std::string, std::string> said;
  std::string& output = said[scenario + " " + words];
  if (output.empty()) output = run_in(FreshFolder(scenario).path(), words).output;
  return output;
}

/// Tons x price of every feed, trips x cost of every pasture, and the total: all as printed.
struct AddedUp {
  long lines = 0, total = 0;
  int feeds = 0;
};

AddedUp added_up(const std::string& text) {
  AddedUp sum;
  static const std::regex trips(R"((\d+) trips to \S+ at ([\d.]+) +([\d.]+))");
  for (const std::string& line : block_from(text, "to buy")) {
    std::smatch match;
    const std::vector<std::string> words = words_of(line);
    if (words[0] == "to") continue;
    if (words[0] == "total") {
      sum.total = cents(words[1]);
      break;  // what follows is said beyond the bill
    } else if (std::regex_match(line, match, trips)) {
      EXPECT_EQ(std::stol(match[1]) * cents(match[2]), cents(match[3])) << line;
      sum.lines += cents(match[3]);
    } else {
      const double tons = std::stod(words[1]), price = std::stod(words[words.size() - 2]);
      EXPECT_EQ(std::lround(tons * price * 100), cents(words.back())) << line;
      sum.lines += cents(words.back());
      ++sum.feeds;
    }
  }
  return sum;
}

TEST(Plan, TonsTimesPriceAndTripsAddUpToTheTotalToTheCent) {
  for (const auto& [scenario, words] : std::map<std::string, std::string>{
           {"northern", northern_plan}, {"southern", southern_plan}}) {
    const std::string& text = planned(scenario, words);
    const AddedUp sum = added_up(text);
    EXPECT_GE(sum.feeds, 1) << text;
    EXPECT_GT(sum.total, 0);
    EXPECT_EQ(sum.lines, sum.total) << text;
  }
}

TEST(Plan, TheSentenceOnCostHoldsTheSameTotal) {
  const std::string& text = planned("northern", northern_plan);
  std::smatch match;
  ASSERT_TRUE(std::regex_search(text, match, std::regex(R"(It costs ([\d.]+) USD)"))) << text;
  EXPECT_EQ(cents(match[1]), added_up(text).total);
}

TEST(Plan, MonthsAddUpToTheTotalAndTheTons) {
  const auto plan = nlohmann::json::parse(planned("northern", northern_plan + " --json"));
  long months = 0;
  std::map<std::string, long> tons;
  for (const auto& month : plan["months"]) {
    months += std::lround(month["cost"]["value"].get<double>() * 100);
    for (const auto& feed : month["feeds"])
      tons[feed["feed"]] += std::lround(feed["amount"]["value"].get<double>() * 100);
  }
  EXPECT_EQ(months, std::lround(plan["cost"]["value"].get<double>() * 100));
  ASSERT_FALSE(plan["buy"].empty());
  for (const auto& line : plan["buy"])
    EXPECT_EQ(tons[line["feed"]], std::lround(line["amount"]["value"].get<double>() * 100));
}

TEST(Plan, MoreOutcomesNeverAskForLess) {
  for (const auto& [scenario, words] : std::map<std::string, std::string>{
           {"northern", northern_plan}, {"southern", southern_plan}}) {
    const auto plan = nlohmann::json::parse(planned(scenario, words + " --json"));
    const auto& columns = plan["outcomes"];
    ASSERT_EQ(columns.size(), 3U);
    for (std::size_t i = 1; i < columns.size(); ++i) {
      EXPECT_GT(columns[i]["cost"]["value"], columns[i - 1]["cost"]["value"]);
      EXPECT_GE(columns[i]["trips"], columns[i - 1]["trips"]);
      for (std::size_t feed = 0; feed < columns[i]["feeds"].size(); ++feed)
        EXPECT_GE(columns[i]["feeds"][feed]["amount"]["value"],
                  columns[i - 1]["feeds"][feed]["amount"]["value"]);
    }
  }
}

TEST(Plan, DoingNothingLosesConditionThatThePlanKeeps) {
  const auto plan = nlohmann::json::parse(planned("northern", northern_plan + " --json"));
  const auto& condition = plan["condition"];
  EXPECT_LT(condition["unfed"]["value"], condition["now"]["value"]);
  EXPECT_GE(condition["fed"]["value"], condition["now"]["value"]);
  EXPECT_LE(condition["unfed_low"]["value"], condition["unfed"]["value"]);
}

TEST(Plan, CautionsStandBeforeAnyMoney) {
  const std::string& text = planned("northern", northern_plan);
  EXPECT_NE(text.find("cautions"), std::string::npos);
  EXPECT_LT(text.find("cautions"), text.find("USD"));
}

TEST(Plan, NoLineIsWiderThanEightyColumns) {
  for (const std::string& units : {"us", "metric"}) {
    std::istringstream lines(planned("southern", southern_plan + " --units " + units));
    for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
  }
}

// The widest names push columns below the table, and nothing off the page.
TEST(Plan, MoneyStandsInTheTableHoweverLongAFeedsName) {
  const FreshFolder folder("northern");
  const auto file = folder.path() / "feeds.yaml";
  const std::string feed = "soybean-hull-pellets-from-over-the-river";
  write_text(file, std::regex_replace(read_text(file), std::regex("hull-pellets"), feed));
  const std::string text = run_in(folder.path(), northern_plan).output;
  std::smatch match;
  ASSERT_TRUE(std::regex_search(text, match, std::regex(R"(It costs ([\d.]+) USD)"))) << text;
  const std::string total = match[1];
  const std::size_t bought = text.find("what that buys");
  ASSERT_NE(text.find(feed, bought), std::string::npos) << text;
  EXPECT_NE(text.find(" " + total + "\n", bought), std::string::npos) << text;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(Plan, AShortageWithoutAQuoteIsAProblem) {
  const FreshFolder folder("northern");
  const Ran ran = run_in(folder.path(), "plan spring-cows --as-of 2026-07-05");
  EXPECT_EQ(ran.exit, 3) << ran.output;
  EXPECT_NE(ran.output.find("no feed can be priced on 2026-07-05"), std::string::npos);
}

TEST(Plan, ADearShortageOrdersMore) {
  const auto ordered = [](const std::string& terms) {
    return nlohmann::json::parse(planned("northern", northern_plan + terms + " --json"))["order"];
  };
  const auto usual = ordered("");
  const auto dear = ordered(" --late-costs 90");
  EXPECT_EQ(usual["assumed"], true);
  EXPECT_EQ(dear["assumed"], false);
  EXPECT_NEAR(dear["cover"]["value"].get<double>(), 90, 1e-6);
  EXPECT_GT(dear["feeds"][0]["amount"]["value"], usual["feeds"][0]["amount"]["value"]);
}

// The northern book's distillers come 25 tons to the truck; its cubes are fetched.
TEST(Plan, TheOrderIsToldInTheLoadsOfTheQuote) {
  int by_the_load = 0, not_said = 0;
  const auto plan = nlohmann::json::parse(planned("northern", northern_plan + " --json"));
  for (const auto& feed : plan["order"]["feeds"]) {
    if (feed["feed"] == "distillers") {
      ++by_the_load;
      EXPECT_NEAR(feed["loads"]["value"].get<double>() * 25, feed["amount"]["value"], 0.01);
    }
    not_said += feed["loads"].is_null();
  }
  EXPECT_EQ(by_the_load, 1);
  EXPECT_GE(not_said, 1);
  EXPECT_NE(planned("northern", northern_plan).find("loads of 25 tons"), std::string::npos);
}

// 5.25 USD a mile over 146 miles for distillers, 25 tons to the truck.
TEST(Plan, SaysWhatATruckPartEmptyAddsToTheBill) {
  const auto plan = nlohmann::json::parse(planned("northern", northern_plan + " --json"));
  int by_the_mile = 0;
  for (const auto& line : plan["buy"]) {
    if (line["feed"] != "distillers") continue;
    ++by_the_mile;
    const double loads = line["amount"]["value"].get<double>() / 25;
    const double adds = line["part_load"]["adds"]["value"];
    EXPECT_NEAR(adds, 5.25 * 146 * (std::ceil(loads) - loads), 0.01);
    EXPECT_NE(planned("northern", northern_plan).find(fmt::format("{:.2f} USD", adds)),
              std::string::npos);
  }
  EXPECT_EQ(by_the_mile, 1);
}

TEST(Plan, OptionsOutOfTheirRangeAreRefused) {
  const FreshFolder folder("northern");
  for (const std::string& option : {"--cover 30", "--change-every 0", "--change-every 2.5",
                                    "--late-costs 0", "--left-loses 400", "--change-every soon"})
    EXPECT_EQ(run_in(folder.path(), northern_plan + " " + option).exit, 2) << option;
}

}  // namespace
}  // namespace pluckbook::testing
