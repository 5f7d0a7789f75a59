// price through the program: bad feeds, break-evens a cent under and over, and what the text says.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include "cli/price_document.h"

namespace pluckbook::testing {
namespace {

const std::string cow = "--cp 5.5 --tdn 51 --weight 1200 --month 8 ";

Ran priced(const std::string& feeds, const std::string& words = cow) {
  const FreshFolder folder;
  write_text(folder.path() / "feeds.yaml", feeds);
  return run_in(folder.path(), "price --feeds feeds.yaml --as-of 2026-09-01 " + words);
}

void expect_refused(const std::string& feeds, const std::string& says) {
  const Ran ran = priced(feeds);
  EXPECT_EQ(ran.exit, 3) << ran.output;
  EXPECT_NE(ran.output.find(says), std::string::npos) << ran.output;
}

TEST(PriceOfBadFeeds, names_a_unit_nobody_sells_by) {
  expect_refused("- {id: a, like: range cube 20, quote: {price: 355 USD/scoop}}\n",
                 "'scoop' is no unit feed is sold by");
  expect_refused("- {id: a, like: alfalfa hay good, quote: {price: 60 USD/bale}}\n",
                 "'bale' does not say what a bale weighs");
}

TEST(PriceOfBadFeeds, refuses_a_feed_that_is_all_water) {
  expect_refused("- {id: a, analysis: {dm: 0, cp: 20}, quote: {price: 355 USD/ton}}\n", "dm");
}

TEST(PriceOfBadFeeds, refuses_more_protein_than_urea_has) {
  expect_refused("- {id: a, analysis: {dm: 90, cp: 301}, quote: {price: 355 USD/ton}}\n", "cp");
}

TEST(PriceOfBadFeeds, refuses_a_least_above_the_most) {
  expect_refused(
      "- {id: a, like: range cube 20, quote: {price: 355 USD/ton}, least: 3 lb/day, most: 2 lb/day}"
      "\n",
      "'least' is above 'most'");
}

TEST(PriceOfBadFeeds, asks_for_feeds_where_there_are_none) {
  expect_refused("# nothing yet\n", "no feeds are written here");
  EXPECT_EQ(run_in(FreshFolder().path(), "price --feeds nowhere.yaml " + cow).exit, 3);
  expect_refused("- {id: a, like: range cube 20}\n", "no feed can be priced on 2026-09-01");
}

TEST(PriceOfBadFeeds, holds_the_published_ceiling_over_a_label_and_says_so) {
  const Ran ran =
      priced("- {id: hulls, like: soybean hulls, quote: {price: 100 USD/ton}, most: 20 lb/day}\n",
             cow + "--need-tdn 20");
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.output.find("allows more than the published ceiling"), std::string::npos)
      << ran.output;
}

TEST(PriceWithoutABook, wants_what_it_cannot_do_without) {
  EXPECT_EQ(run_in(FreshFolder().path(), "price").exit, 2);
  for (const char* words : {"--tdn 51 --weight 1200 --month 8", "--cp 5.5 --weight 1200 --month 8",
                            "--cp 5.5 --tdn 51 --month 8", "--cp 5.5 --tdn 51 --weight 1200",
                            "--cp 5.5 --tdn 51 --weight 1200 --month 13",
                            "--cp 5.5 --tdn 51 --weight 1200 --month 8 --energy oats",
                            "--cp 5.5 --tdn 51 --weight 1200 --month 8 --head 0"})
    EXPECT_EQ(priced("- {id: a, like: range cube 38, quote: {price: 1 USD/ton}}\n", words).exit, 2)
        << words;
}

TEST(PriceWithoutABook, says_plainly_when_nothing_is_needed) {
  const Ran ran = priced("- {id: a, like: range cube 38, quote: {price: 475 USD/ton}}\n",
                         "--cp 12 --tdn 62 --weight 1200 --month 8");
  EXPECT_EQ(ran.exit, 0);
  EXPECT_EQ(ran.output.rfind("No supplement is needed for a mature cow of 1200 lb, dry", 0), 0U)
      << ran.output;
}

TEST(PriceWithoutABook, counts_energy_as_nem_and_protein_as_mp_when_asked) {
  const std::string feeds = "- {id: a, like: range cube 38, quote: {price: 475 USD/ton}}\n";
  EXPECT_NE(priced(feeds, cow + "--energy nem").output.find("counted as NEm: need"),
            std::string::npos);
  EXPECT_NE(priced(feeds, cow + "--protein mp").output.find("degradable protein the rumen wants"),
            std::string::npos);
}

/// The northern book with one feed at another quote; the units stay.
bool is_fed(const FreshFolder& book, const std::string& feeds, const std::string& feed,
            const std::string& was, double quote) {
  std::string text = feeds;
  const std::size_t at = text.find("price: " + was + " ", text.find("id: " + feed));
  text.replace(at + 7, was.size(), fmt::format("{:.4f}", quote));
  write_text(book.path() / "feeds.yaml", text);
  const Ran ran = run_in(
      book.path(), "price spring-cows --as-of 2026-10-25 --cover 50 --intake-recovers --json");
  return fed(nlohmann::json::parse(ran.output), feed) > 0;
}

TEST(BreakEvenQuote, is_true_to_the_cent_in_the_unit_the_feed_is_sold_by) {
  const FreshFolder book("northern");
  const std::string feeds = read_text(book.path() / "feeds.yaml");
  const Ran ran = run_in(
      book.path(), "price spring-cows --as-of 2026-10-25 --cover 50 --intake-recovers --json");
  const auto document = nlohmann::json::parse(ran.output);
  const std::pair<const char*, const char*> asked[] = {
      {"cube-38", "24.75"}, {"cottonseed-meal", "13.60"}, {"distillers", "214"}, {"alfalfa", "63"}};
  for (const auto& [feed, was] : asked) {
    SCOPED_TRACE(feed);
    const double quote = money(document, feed, "break_even_quote");
    EXPECT_TRUE(is_fed(book, feeds, feed, was, quote - 0.01));
    EXPECT_FALSE(is_fed(book, feeds, feed, was, quote + 0.01));
  }
}

}  // namespace
}  // namespace pluckbook::testing
