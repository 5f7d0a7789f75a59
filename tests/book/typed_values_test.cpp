// Quantities as they are typed, and feeds from a file of their own.
#include <gtest/gtest.h>

#include <tuple>

#include "base/text.h"
#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

TEST(Typed, APlainNumberIsInTheReadersOwnUnit) {
  EXPECT_DOUBLE_EQ(parse_weight("1250", UnitSystem::us)->value(), 1250 * 0.45359237);
  EXPECT_DOUBLE_EQ(parse_weight("565", UnitSystem::metric)->value(), 565);
  EXPECT_DOUBLE_EQ(parse_weight("565 kg", UnitSystem::us)->value(), 565);
  EXPECT_DOUBLE_EQ(parse_milk("22 lb/day", UnitSystem::metric)->value(), 22 * 0.45359237);
  EXPECT_DOUBLE_EQ(parse_gain("1", UnitSystem::metric)->value(), 1);
  // The international mile, foot and yard are exact by definition.
  EXPECT_DOUBLE_EQ(*parse_metres("1", UnitSystem::us), 1609.344);
  EXPECT_DOUBLE_EQ(*parse_metres("2", UnitSystem::metric), 2000);
  EXPECT_DOUBLE_EQ(*parse_metres("100 yd", UnitSystem::metric), 91.44);
  EXPECT_DOUBLE_EQ(*parse_metres("1000 ft", UnitSystem::metric), 304.8);
  EXPECT_DOUBLE_EQ(*parse_metres("250 m", UnitSystem::us), 250);
}

TEST(Typed, WhatCannotBeIsTheCommandLinesFault) {
  for (const auto& problems : {parse_weight("heavy", UnitSystem::us).problems(),
                               parse_weight("5", UnitSystem::us).problems(),
                               parse_milk("99", UnitSystem::metric).problems(),
                               parse_gain("1 mile", UnitSystem::us).problems(),
                               parse_metres("5 m", UnitSystem::us).problems(),
                               parse_metres("5 leagues", UnitSystem::us).problems()}) {
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].fault, Fault::usage) << problems[0].what;
    EXPECT_FALSE(problems[0].remedy.empty()) << problems[0].what;
  }
  EXPECT_EQ(parse_metres("5 leagues", UnitSystem::us).problems()[0].what,
            "walk cannot be in 'leagues'");
  EXPECT_EQ(parse_metres("5 m", UnitSystem::us).problems()[0].what,
            "walk 5 m is outside 10 to 100000 m");
}

TEST(FeedsFile, GivesItsFeedsOrSaysWhyNot) {
  const BookFolder folder;
  const Result<Book> feeds = read_feeds_file(folder.path() / "feeds.yaml", UnitSystem::us, "USD");
  ASSERT_TRUE(feeds);
  ASSERT_EQ(feeds->feeds.size(), 1U);
  EXPECT_EQ(feeds->feeds[0].id, "cube");
  EXPECT_EQ(feeds->currency, "USD");
  const Result<Book> pesos = read_feeds_file(folder.path() / "feeds.yaml", UnitSystem::us, "MXN");
  ASSERT_FALSE(pesos);
  EXPECT_EQ(pesos.problems()[0].what, "price is in 'USD', but the book counts in MXN");
  folder.write("none.yaml", "# nothing yet\n");
  EXPECT_EQ(read_feeds_file(folder.path() / "none.yaml", UnitSystem::us, "USD").problems()[0].what,
            "no feeds are written here");
  EXPECT_EQ(read_feeds_file(folder.path() / "no.yaml", UnitSystem::us, "USD").problems()[0].what,
            "there is no such file");
}

TEST(FeedsFile, SaysHowOftenAFeedMayBeFed) {
  const BookFolder folder;
  const auto feed_with = [&](const std::string& feedings) {
    folder.write("feeds.yaml",
                 "- {id: cube, like: range cube 20, feedings_per_week: " + feedings + "}\n");
    return read_feeds_file(folder.path() / "feeds.yaml", UnitSystem::us, "USD")->feeds.at(0);
  };
  EXPECT_EQ(feed_with("3").feedings_per_week, std::vector<int>{3});
  EXPECT_FALSE(feed_with("3").self_fed);
  EXPECT_EQ(feed_with("[7, 3]").feedings_per_week, (std::vector<int>{7, 3}));
  EXPECT_FALSE(feed_with("[7, 3]").self_fed);
  EXPECT_TRUE(feed_with("self").self_fed);
  EXPECT_TRUE(feed_with("Self").self_fed);
}

// The limits are assumed: outside lies a slip in any feed.
TEST(FeedsFile, AFigureIsTakenAtItsLimitAndNotBeyond) {
  const BookFolder folder;
  const auto taken = [&](const std::string& name, double value) {
    folder.write("feeds.yaml", "- {id: cube, like: range cube 20, analysis: {" + name + ": " +
                                   shortest(value) + "}}\n");
    return read_feeds_file(folder.path() / "feeds.yaml", UnitSystem::us, "USD").ok();
  };
  const std::vector<std::tuple<std::string, double, double>> limits = {
      {"dm", 5, 100}, {"cp", 0, 300},  {"tdn", 0, 130},   {"rup", 0, 100},  {"ndf", 0, 95},
      {"adf", 0, 80}, {"fat", 0, 100}, {"ca", 0, 40},     {"p", 0, 30},     {"s", 0, 30},
      {"k", 0, 40},   {"mg", 0, 60},   {"starch", 0, 95}, {"cu", 0, 50000}, {"se", 0, 5000}};
  for (const auto& [name, low, high] : limits) {
    EXPECT_TRUE(taken(name, low)) << name;
    EXPECT_TRUE(taken(name, high)) << name;
    EXPECT_FALSE(taken(name, high + 0.01)) << name;
    EXPECT_FALSE(taken(name, low - 0.01)) << name;
  }
}

}  // namespace
}  // namespace pluckbook
