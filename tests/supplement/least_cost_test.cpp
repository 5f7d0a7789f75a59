#include "supplement/least_cost.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "supplement/a_feed.h"

namespace pluckbook {
namespace {

// The cubes of Oklahoma State (feeding_practice X1), dry matter 90 %.
FeedOffer cube38() {
  return offer(own_feed("cube-38", 475, {{"cp", 38 / 0.9}, {"tdn", 70 / 0.9}}));
}
FeedOffer cube20() {
  return offer(own_feed("cube-20", 350, {{"cp", 20 / 0.9}, {"tdn", 70 / 0.9}}));
}
KgPerDay lb(double pounds) {
  return from_lb<KgPerDay>(pounds);
}

// X12, made by hand: 0.6 lb CP short: 0.6 / 0.38 = 1.579 lb of the 38 % cube, 0.375 a day.
TEST(CheapestMix, picks_the_dearer_cube_when_only_protein_is_short) {
  const Mix mix = cheapest_mix(bare_gap(lb(0.6), lb(0)), {cube38(), cube20()});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  ASSERT_EQ(mix.parts.size(), 1u);
  EXPECT_EQ(mix.parts[0].offer, 0u);
  EXPECT_NEAR(in_lb(mix.parts[0].as_fed), 0.6 / 0.38, 1e-6);
  EXPECT_NEAR(mix.cost().value(), 0.6 / 0.38 * 475 / 2000, 1e-6);
}

// X12: with 1.5 lb TDN short as well: x + y = 1.5 / 0.7, 0.38 x + 0.20 y = 0.6
// -> 20/21 = 0.952 lb and 25/21 = 1.190 lb, 0.434 a day (cut off), both needs binding.
TEST(CheapestMix, mixes_two_cubes_when_protein_and_energy_are_short) {
  const Mix mix = cheapest_mix(bare_gap(lb(0.6), lb(1.5)), {cube38(), cube20()});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  ASSERT_EQ(mix.parts.size(), 2u);
  EXPECT_NEAR(in_lb(mix.parts[0].as_fed), 20.0 / 21, 1e-6);
  EXPECT_NEAR(in_lb(mix.parts[1].as_fed), 25.0 / 21, 1e-6);
  EXPECT_NEAR(mix.cost().value(), (20 * 475 + 25 * 350) / 21.0 / 2000, 1e-6);
  EXPECT_EQ(mix.binding,
            (std::vector<std::string>{"crude protein the cow needs", "TDN the cow needs"}));
  EXPECT_LE(mix.certificate.primal_infeasibility, 1e-7);
  EXPECT_LE(mix.certificate.dual_infeasibility, 1e-7);
  EXPECT_LE(mix.certificate.gap, 1e-7);
}

// The same by hand: 475 = 2000 (0.38 p + 0.70 t), 350 = 2000 (0.20 p + 0.70 t)
// -> p = 125 / 360 = 0.3472 per lb CP, t = (0.175 - 0.2 p) / 0.7 = 0.1508 per lb TDN.
TEST(CheapestMix, says_what_one_more_unit_of_each_need_costs) {
  const Mix mix = cheapest_mix(bare_gap(lb(0.6), lb(1.5)), {cube38(), cube20()});
  ASSERT_EQ(mix.marginal_costs.size(), 2u);
  EXPECT_EQ(mix.marginal_costs[0].limit, "crude_protein");
  EXPECT_NEAR(mix.marginal_costs[0].money * kg_per_lb, 125.0 / 360, 1e-6);
  EXPECT_EQ(mix.marginal_costs[1].limit, "tdn");
  EXPECT_NEAR(mix.marginal_costs[1].money * kg_per_lb, (0.175 - 0.2 * 125 / 360) / 0.7, 1e-6);
}

// X12: 38 % alone needs 2.143 lb, 0.509 a day; 20 % alone 3.0 lb, 0.525 a day.
TEST(AllOptions, price_each_cube_alone) {
  const GrazingDay day = bare_gap(lb(0.6), lb(1.5));
  const std::vector<FeedOffer> offers{cube38(), cube20()};
  const auto options = all_options(day, offers, cheapest_mix(day, offers));
  ASSERT_EQ(options.size(), 2u);
  EXPECT_NEAR(in_lb(options[0].alone.parts[0].as_fed), 2.143, 5e-4);
  EXPECT_NEAR(options[0].alone.cost().value(), 0.509, 5e-4);
  EXPECT_EQ(options[1].alone.parts[0].offer, 1u);
  EXPECT_NEAR(in_lb(options[1].alone.parts[0].as_fed), 3.0, 5e-4);
  EXPECT_NEAR(options[1].alone.cost().value(), 0.525, 5e-4);
  EXPECT_EQ(options[0].why_not + options[1].why_not, "");
}

TEST(CheapestMix, is_nothing_when_the_forage_is_enough) {
  const Mix mix = cheapest_mix(dormant_day(0.55, 5.5), {cube38()});
  EXPECT_EQ(mix.status, MixStatus::none_needed);
  EXPECT_TRUE(mix.parts.empty());
  EXPECT_EQ(mix.cost().value(), 0);
  EXPECT_EQ(mix.forage_left.value(), 11);
}

TEST(CheapestMix, is_something_when_only_the_rumen_is_short) {
  GrazingDay day = dormant_day(0.50, 5.0);
  day.rumen_floor = Share(0.07);  // 5 % forage against 7 % of all she eats
  const FeedOffer meal = offer(feed_like("cottonseed meal", 350));
  const Mix mix = cheapest_mix(day, {meal});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  // Cottonseed meal 45 % (Alabama Extension, read), displaces none: 0.55 + 0.45 x = 0.07 (11 + x).
  EXPECT_NEAR(amount(mix, 0), 0.22 / 0.38, 1e-6);
  EXPECT_TRUE(names(mix.binding, "the rumen needs (7 % of all she eats)"));
}

TEST(CheapestMix, takes_the_protein_and_energy_of_displaced_forage_along) {
  // Corn on forage with enough protein: displaces 0.5. x (0.90 - 0.5 0.55) = 6.5 - 6.05.
  GrazingDay day = dormant_day(0.5, 6.5);
  day.crude_protein = Share(0.10);
  day.tdn = Share(0.55);
  Feed corn = feed_like("corn cracked", 200);
  corn.analysis.nutrients["tdn"] = Share(0.90);
  const Mix mix = cheapest_mix(day, {offer(corn)});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  const double x = 0.45 / (0.90 - 0.275);
  EXPECT_NEAR(amount(mix, 0), x, 1e-6);
  EXPECT_NEAR(mix.forage_left.value(), 11 - 0.5 * x, 1e-6);
}

TEST(CheapestMix, tells_which_need_is_out_of_reach_and_what_stands_in_the_way) {
  const GrazingDay day = dormant_day(0.55, 7.5);
  const FeedOffer corn = offer(feed_like("corn cracked", 200));
  const Mix mix = cheapest_mix(day, {corn});
  ASSERT_EQ(mix.status, MixStatus::out_of_reach);
  ASSERT_FALSE(mix.unmet.empty());
  const auto tdn = std::find_if(mix.unmet.begin(), mix.unmet.end(),
                                [](const Unmet& u) { return u.limit == "tdn"; });
  ASSERT_NE(tdn, mix.unmet.end());
  EXPECT_EQ(tdn->asked, 7.5);
  const double x = amount(mix, 0);
  EXPECT_NEAR(tdn->reached, 0.5 * (11 - 0.5 * x) + x * corn.figure_or("tdn", 0), 1e-6);
  EXPECT_LE(x, 0.0025 * 550 + 1e-7);
  EXPECT_NEAR(mix.forage_left.value(), 11 - 0.5 * x, 1e-6);
}

TEST(AllOptions, say_in_plain_words_why_a_feed_cannot_do_it_alone) {
  GrazingDay day = dormant_day(0.5, 7.0);
  day.crude_protein = Share(0.10);
  Feed corn = own_feed("corn", 200, {{"cp", 12}, {"tdn", 90}, {"starch", 70}});
  const std::vector<FeedOffer> offers{offer(corn), offer(feed_like("soybean hulls", 180))};
  const auto options = all_options(day, offers, cheapest_mix(day, offers));
  EXPECT_EQ(
      options[0].why_not,
      "cannot reach the TDN the cow needs: grain at most 0.25 % of body weight stands in the way");
}

TEST(CheapestMix, has_nothing_to_offer_without_feeds) {
  const Mix mix = cheapest_mix(dormant_day(0.9, 6), {});
  ASSERT_EQ(mix.status, MixStatus::out_of_reach);
  EXPECT_TRUE(mix.parts.empty());
  ASSERT_EQ(mix.unmet.size(), 2u);
  EXPECT_NEAR(mix.unmet[0].asked, 0.9, 1e-9);
  EXPECT_NEAR(mix.unmet[0].reached, 0.55, 1e-6);
  EXPECT_EQ(mix.unmet[0].in_the_way, "");
  EXPECT_EQ(mix.unmet[0].what_helps, "a feed that holds more of what is short");
  EXPECT_EQ(mix.forage_left, KgDmPerDay(11)) << "nothing is fed that could push grass out";
}

TEST(CheapestMix, leaves_out_a_feed_without_a_quote_and_says_so) {
  Feed unquoted = feed_like("cottonseed meal", 300);
  unquoted.quotes.clear();
  const GrazingDay day = dormant_day(0.9, 5.5);
  const std::vector<FeedOffer> offers{offer(unquoted), offer(feed_like("soybean meal 48", 600))};
  const Mix mix = cheapest_mix(day, offers);
  ASSERT_EQ(mix.status, MixStatus::optimal);
  EXPECT_EQ(amount(mix, 0), 0);
  const auto options = all_options(day, offers, mix);
  EXPECT_EQ(options[0].why_not, "cottonseed meal has no quote on or before the day");
  EXPECT_TRUE(options[0].break_even_fed);
  EXPECT_FALSE(options[0].break_even_quote);
}

TEST(CheapestMix, gives_none_or_the_least_amount_of_the_label) {
  // 0.2 kg CP short; the cheap cube would need 0.474 kg of dry matter, its label says 2.
  Feed cheap = own_feed("cheap", 300, {{"cp", 38 / 0.9}, {"tdn", 70}});
  cheap.least = KgAsFedPerDay(2);
  const Feed dear = own_feed("dear", 600, {{"cp", 38 / 0.9}, {"tdn", 70}});
  const GrazingDay day = bare_gap(KgPerDay(0.2), KgPerDay(0));
  const Mix mix = cheapest_mix(day, {offer(cheap), offer(dear)});
  // 2 kg at 300 a ton against 0.2 / 0.38 kg at 600 a ton
  ASSERT_EQ(mix.parts.size(), 1u);
  EXPECT_EQ(mix.parts[0].offer, 1u);
  const Mix only = cheapest_mix(day, {offer(cheap)});
  ASSERT_EQ(only.status, MixStatus::optimal);
  EXPECT_NEAR(only.parts[0].as_fed.value(), 2, 1e-9);
}

TEST(CheapestMix, says_when_a_ceiling_forbids_the_least_amount_of_a_label) {
  Feed corn = own_feed("corn", 200, {{"cp", 9}, {"tdn", 90}, {"starch", 70}});
  corn.least = KgAsFedPerDay(3);  // 2.7 kg DM, over a quarter percent of 550 kg
  const Mix mix = cheapest_mix(dormant_day(0.5, 5.8), {offer(corn)});
  ASSERT_EQ(mix.status, MixStatus::out_of_reach);
  EXPECT_TRUE(mix.parts.empty());
  EXPECT_EQ(mix.unmet[0].in_the_way, "grain at most 0.25 % of body weight");
  EXPECT_NE(mix.unmet[0].what_helps.find("little starch"), std::string::npos);
}

// Up to 0.3 % of 550 kg = 1.65 kg cottonseed meal leaves the forage alone; beyond, 0.3 kg for each:
// 0.55 + 0.45 x - 0.05 0.3 (x - 1.65) = 1.5.
TEST(CheapestMix, lets_protein_feed_beyond_a_small_amount_displace_forage) {
  const FeedOffer meal = offer(feed_like("cottonseed meal", 350));
  const Mix mix = cheapest_mix(dormant_day(1.5, 5.5), {meal});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  const double x = (1.5 - 0.55 - 0.015 * 1.65) / (0.45 - 0.015);
  EXPECT_NEAR(amount(mix, 0), x, 1e-6);
  EXPECT_NEAR(mix.forage_left.value(), 11 - 0.3 * (x - 1.65), 1e-6);
}

TEST(AllOptions, say_that_a_feed_with_urea_cannot_be_fed_now_and_then) {
  Feed urea = own_feed("urea cube", 300, {{"cp", 42}, {"tdn", 78}, {"npn_cpe", 8}});
  urea.feedings_per_week = {3};
  const GrazingDay day = dormant_day(0.8, 5.5);
  const std::vector<FeedOffer> offers{offer(urea)};
  EXPECT_EQ(all_options(day, offers, cheapest_mix(day, offers))[0].why_not,
            "urea cube carries urea: fed every day or self-fed only");
}

TEST(CheapestMix, feeds_as_seldom_as_pays) {
  Feed cube = own_feed("cube", 475, {{"cp", 42}, {"tdn", 77}});
  cube.feedings_per_week = {7, 3, 1};
  GrazingDay day = bare_gap(KgPerDay(0.3), KgPerDay(0));
  day.trip_cost_per_head = 0.10;
  const Mix mix = cheapest_mix(day, {offer(cube)});
  EXPECT_EQ(mix.feedings_per_week, 1);
  EXPECT_NEAR(mix.trip_cost.value(), 0.10 / 7, 1e-12);
}

TEST(CheapestMix, feeds_daily_when_that_saves_more_than_the_trips) {
  // A cheap feed for daily feeding beside a dear one for weekly feeding.
  Feed daily = own_feed("daily", 300, {{"cp", 42}, {"tdn", 77}});
  Feed weekly = own_feed("weekly", 600, {{"cp", 42}, {"tdn", 77}});
  weekly.feedings_per_week = {1};
  GrazingDay day = bare_gap(KgPerDay(0.4), KgPerDay(0));
  const double saved = 0.4 / 0.42 / 0.9 * 300 / kg_per_us_ton;  // per head and day
  day.trip_cost_per_head = saved * 7 / 6 * 0.99;
  EXPECT_EQ(cheapest_mix(day, {offer(daily), offer(weekly)}).feedings_per_week, 7);
  day.trip_cost_per_head = saved * 7 / 6 * 1.01;
  EXPECT_EQ(cheapest_mix(day, {offer(daily), offer(weekly)}).feedings_per_week, 1);
}

TEST(CheapestMix, fills_a_feed_that_feeds_itself_once_a_week) {
  Feed tub = own_feed("tub", 900, {{"cp", 42}, {"tdn", 77}});
  tub.self_fed = true;
  GrazingDay day = bare_gap(KgPerDay(0.3), KgPerDay(0));
  day.trip_cost_per_head = 0.14;
  const Mix mix = cheapest_mix(day, {offer(tub)});
  EXPECT_EQ(mix.feedings_per_week, 0);
  EXPECT_NEAR(mix.trip_cost.value(), 0.02, 1e-12);
}

}  // namespace
}  // namespace pluckbook
