// A break-even quote is proven by asking again: a cent a ton under it the feed is in the mix, a
// cent over it is not.
#include <gtest/gtest.h>

#include "supplement/a_feed.h"
#include "supplement/least_cost.h"

namespace pluckbook {
namespace {

double amount_at(const GrazingDay& day, std::vector<Feed> feeds, std::size_t j, double per_unit) {
  Quote& quote = feeds[j].quotes.back();
  quote.price = MoneyPerKgAsFed(per_unit / quote.kg_per_unit);
  return amount(cheapest_mix(day, offers_of(feeds)), j);
}

/// Returns how many of the feeds have a break-even.
int expect_break_evens_hold(const GrazingDay& day, const std::vector<Feed>& feeds) {
  const auto offers = offers_of(feeds);
  const Mix best = cheapest_mix(day, offers);
  EXPECT_EQ(best.status, MixStatus::optimal);
  int proven = 0;
  for (const Option& option : all_options(day, offers, best)) {
    if (!option.break_even_quote) continue;
    SCOPED_TRACE(feeds[option.offer].id);
    const double cent_a_ton = 0.01 * feeds[option.offer].quotes.back().kg_per_unit / kg_per_us_ton;
    EXPECT_GT(amount_at(day, feeds, option.offer, *option.break_even_quote - cent_a_ton), 1e-6);
    EXPECT_EQ(amount_at(day, feeds, option.offer, *option.break_even_quote + cent_a_ton), 0);
    ++proven;
  }
  return proven;
}

// School text on feed arithmetic (feeding_practice X10): A 37 % at 673 a ton; B 27 % is worth
// 673 x 27 / 37 = 491.11 a ton (printed 24.555 per cwt, that is 491).
TEST(BreakEven, is_the_printed_worth_of_a_leaner_protein_feed) {
  const std::vector<Feed> feeds{own_feed("a", 673, {{"cp", 37}, {"tdn", 70}}),
                                own_feed("b", 600, {{"cp", 27}, {"tdn", 70}})};
  const GrazingDay day = bare_gap(KgPerDay(0.3), KgPerDay(0));
  const auto offers = offers_of(feeds);
  const auto options = all_options(day, offers, cheapest_mix(day, offers));
  ASSERT_TRUE(options[1].break_even_quote);
  EXPECT_NEAR(*options[1].break_even_quote, 673.0 * 27 / 37, 1e-5);
  EXPECT_NEAR(*options[1].break_even_quote / 20, 24.555, 1e-3);
  // and A, which is in the mix, stays up to what B costs for the same protein
  EXPECT_NEAR(*options[0].break_even_quote, 600.0 * 37 / 27, 1e-5);
}

TEST(BreakEven, holds_when_two_needs_are_short) {
  const std::vector<Feed> feeds{own_feed("cube 38", 475, {{"cp", 42.2}, {"tdn", 77.8}}),
                                own_feed("cube 20", 350, {{"cp", 22.2}, {"tdn", 77.8}}),
                                own_feed("hulls", 300, {{"cp", 12}, {"tdn", 75}}),
                                own_feed("meal", 500, {{"cp", 45}, {"tdn", 78}})};
  EXPECT_EQ(expect_break_evens_hold(dormant_day(0.85, 5.9), feeds), 4);
}

TEST(BreakEven, is_told_before_losses_and_without_freight_in_the_sellers_unit) {
  Feed cube = own_feed("cube", 475, {{"cp", 42.2}, {"tdn", 77.8}});
  Feed sacks = own_feed("sacks", 0, {{"cp", 22.2}, {"tdn", 77.8}});
  const double kg = 50 * kg_per_lb;
  sacks.quotes = {{MoneyPerKgAsFed(14.20 / kg), 14.20, "50 lb", kg, Date(2026, 8, 1),
                   MoneyPerKgAsFed(12 / kg_per_us_ton)}};
  sacks.waste = 0.05;
  sacks.shrink = 0.03;
  const GrazingDay day = dormant_day(0.85, 5.9);
  EXPECT_EQ(expect_break_evens_hold(day, {cube, sacks}), 2);
  const std::vector<Feed> feeds{cube, sacks};
  const auto offers = offers_of(feeds);
  const auto option = all_options(day, offers, cheapest_mix(day, offers))[1];
  DeliveredCost back = *offers[1].cost;
  back.quote = MoneyPerKgAsFed(*option.break_even_quote / kg);
  EXPECT_NEAR(back.fed().value(), option.break_even_fed->value(), 1e-12);
}

TEST(BreakEven, holds_where_a_label_asks_for_a_least_amount) {
  Feed cheap = own_feed("cheap", 300, {{"cp", 42}, {"tdn", 70}});
  cheap.least = KgAsFedPerDay(2);
  const Feed dear = own_feed("dear", 600, {{"cp", 42}, {"tdn", 70}});
  EXPECT_EQ(expect_break_evens_hold(bare_gap(KgPerDay(0.2), KgPerDay(0)), {cheap, dear}), 2);
}

TEST(BreakEven, holds_where_a_feed_changes_how_often_one_feeds) {
  const Feed daily = own_feed("daily", 300, {{"cp", 42}, {"tdn", 77}});
  Feed weekly = own_feed("weekly", 600, {{"cp", 42}, {"tdn", 77}});
  weekly.feedings_per_week = {1};
  Feed tub = own_feed("tub", 900, {{"cp", 35}, {"tdn", 77}});
  tub.self_fed = true;
  GrazingDay day = bare_gap(KgPerDay(0.4), KgPerDay(0));
  day.trip_cost_per_head = 0.08;
  EXPECT_EQ(expect_break_evens_hold(day, {daily, weekly, tub}), 3);
}

TEST(BreakEven, is_not_there_where_no_price_would_bring_a_feed_in) {
  const Feed cube = own_feed("cube", 475, {{"cp", 42}, {"tdn", 78}});
  // 1 % protein, and 0.3 kg of forage with 5 % is left ungrazed for each kilogram: a loss.
  const Feed chaff = own_feed("chaff", 10, {{"cp", 1}, {"tdn", 30}});
  const GrazingDay day = dormant_day(0.8, 5.5);
  const std::vector<Feed> feeds{cube, chaff};
  const auto offers = offers_of(feeds);
  const auto options = all_options(day, offers, cheapest_mix(day, offers));
  EXPECT_FALSE(options[1].break_even_fed);
  EXPECT_FALSE(options[0].break_even_fed);  // nothing else can do it: it stays at any price
}

}  // namespace
}  // namespace pluckbook
