#include "supplement/feed_offer.h"

#include <gtest/gtest.h>

#include "published/feeds.h"
#include "supplement/a_feed.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

double per_lb(double per_kg) {
  return per_kg * kg_per_lb;
}
double per_us_ton(MoneyPerKgAsFed price) {
  return price.value() * kg_per_us_ton;
}

// Oklahoma State, M. Z. Johnson, cost of cubes (feeding_practice X1): 38 % CP, 70 % TDN as fed at
// 475 a ton: 0.625 per lb CP (printed), 0.339 per lb TDN (derived); 20 % at 350: 0.875 and 0.25.
TEST(FeedOffer, prices_a_pound_of_protein_in_a_cube_as_printed) {
  const FeedOffer cube38 = offer(own_feed("cube 38", 475, {{"cp", 38 / 0.9}, {"tdn", 70 / 0.9}}));
  EXPECT_NEAR(per_lb(*cube38.cost_per_kg_of("cp")), 0.625, 1e-9);
  EXPECT_NEAR(per_lb(*cube38.cost_per_kg_of("tdn")), 475.0 / 1400, 1e-9);
  const FeedOffer cube20 = offer(own_feed("cube 20", 350, {{"cp", 20 / 0.9}, {"tdn", 70 / 0.9}}));
  EXPECT_NEAR(per_lb(*cube20.cost_per_kg_of("cp")), 0.875, 1e-9);
  EXPECT_NEAR(per_lb(*cube20.cost_per_kg_of("tdn")), 0.25, 1e-9);
}

// LSU AgCenter 3951-D (X3): tub 105 for 225 lb at 5 % moisture: 213.75 lb DM, 0.49 per lb DM.
TEST(FeedOffer, prices_a_pound_of_dry_matter_in_a_tub_as_printed) {
  Feed tub = own_feed("tub", 0, {{"cp", 30}}, 95);
  tub.quotes = {{MoneyPerKgAsFed(105 / (225 * kg_per_lb)), 105, "225 lb", 225 * kg_per_lb,
                 Date(2026, 8, 1), MoneyPerKgAsFed(0)}};
  EXPECT_NEAR(per_lb(offer(tub).cost_per_kg_dm().value()), 105 / 213.75, 1e-9);
}

// Alabama Extension by-product guide (X4): soybean hulls at 180 a ton, 90 % DM, 75 % TDN, 12 % CP:
// 0.1333 per lb TDN (printed 0.13), 216 lb CP a ton: 0.8333 per lb CP (derived).
TEST(FeedOffer, prices_a_pound_of_tdn_in_hulls_as_printed) {
  const FeedOffer hulls = offer(own_feed("hulls", 180, {{"cp", 12}, {"tdn", 75}}));
  EXPECT_NEAR(per_lb(*hulls.cost_per_kg_of("tdn")), 180.0 / 1350, 1e-9);
  EXPECT_NEAR(per_lb(*hulls.cost_per_kg_of("cp")), 180.0 / 216, 1e-9);
}

// Iowa State, D. Loy (X7): silage at 60 a ton: 10 % loss makes it 66.67, 20 % loss 75.
TEST(DeliveredCost, carries_losses_as_printed) {
  DeliveredCost cost{MoneyPerKgAsFed(60 / kg_per_us_ton), MoneyPerKgAsFed(0), 0.10, 0, {}};
  EXPECT_NEAR(per_us_ton(cost.fed()), 66.6667, 1e-3);
  cost.shrink = 0;
  cost.waste = 0.20;
  EXPECT_NEAR(per_us_ton(cost.fed()), 75, 1e-9);
}

TEST(DeliveredCost, loses_of_what_is_left_after_the_first_loss) {
  const DeliveredCost cost{MoneyPerKgAsFed(0.30), MoneyPerKgAsFed(0.06), 0.10, 0.20, {}};
  EXPECT_NEAR(cost.fed().value(), 0.36 / 0.9 / 0.8, 1e-12);
}

TEST(FeedOffer, takes_the_published_analysis_and_says_so) {
  // Published: range cube 20, cp 22.2 % of DM (derived from 20 % as fed, Oklahoma State: read).
  const FeedOffer cube = offer(feed_like("range cube 20", 350));
  EXPECT_NEAR(cube.figure_or("cp", 0), 0.222, 1e-12);
  EXPECT_EQ(cube.figures.at("cp").standing, "derived");
  EXPECT_EQ(cube.figures.at("starch").standing, "assumed");
  EXPECT_EQ(cube.feed_class, "mixed_cube");
  EXPECT_NEAR(cube.dm.value(), 0.90, 1e-12);
  EXPECT_FALSE(cube.has("nem_lb"));
}

TEST(FeedOffer, lets_own_values_win_over_published_ones) {
  Feed feed = feed_like("range cube 20", 350);
  feed.analysis.dm = DmShare(0.88);
  feed.analysis.nutrients["cp"] = Share(0.24);
  const FeedOffer cube = offer(feed);
  EXPECT_EQ(cube.figures.at("cp").standing, "own");
  EXPECT_NEAR(cube.figure_or("cp", 0), 0.24, 1e-12);
  EXPECT_NEAR(cube.dm.value(), 0.88, 1e-12);
  EXPECT_NEAR(cube.figure_or("tdn", 0), 0.778, 1e-12);
}

TEST(FeedOffer, uses_the_newest_quote_that_was_known_on_the_day) {
  Feed feed = feed_like("range cube 20", 350);
  feed.quotes = {per_ton(340, Date(2026, 8, 1)), per_ton(300, Date(2026, 6, 1)),
                 per_ton(400, Date(2026, 8, 16))};
  const FeedOffer cube = offer(feed);
  EXPECT_NEAR(per_us_ton(cube.cost->quote), 340, 1e-9);
  EXPECT_EQ(cube.cost->quoted_on, Date(2026, 8, 1));
  EXPECT_TRUE(cube.notes.empty());
}

TEST(FeedOffer, says_when_a_quote_is_over_sixty_days_old) {
  Feed feed = feed_like("range cube 20", 350);
  feed.quotes = {per_ton(340, a_day - Days(60))};
  EXPECT_TRUE(offer(feed).notes.empty());
  feed.quotes = {per_ton(340, a_day - Days(61))};
  EXPECT_EQ(offer(feed).old_quote_days, 61);
}

TEST(FeedOffer, has_no_cost_before_its_first_quote) {
  Feed feed = feed_like("range cube 20", 350);
  feed.quotes = {per_ton(340, Date(2026, 9, 1))};
  const FeedOffer cube = offer(feed);
  EXPECT_FALSE(cube.cost);
  EXPECT_FALSE(cube.cost_per_kg_of("cp"));
  EXPECT_EQ(cube.notes, std::vector<std::string>{"no quote on or before 15 Aug 2026"});
}

TEST(FeedOffer, assumes_ninety_percent_dry_matter_aloud) {
  Feed feed = own_feed("pellet", 300, {{"cp", 20}});
  feed.analysis.dm.reset();
  const FeedOffer pellet = offer(feed);
  EXPECT_NEAR(pellet.dm.value(), 0.90, 1e-12);
  EXPECT_EQ(pellet.notes, std::vector<std::string>{"dry matter 90 % assumed"});
}

TEST(FeedOffer, is_refused_without_a_protein_figure) {
  const Feed feed = own_feed("mystery", 300, {{"tdn", 70}});
  const auto made = offer_of(feed, a_day);
  ASSERT_FALSE(made.ok());
  EXPECT_EQ(made.problems().front().what, "feed 'mystery' has no crude protein figure");
}

TEST(FeedOffer, is_refused_when_it_is_all_water) {
  const auto made = offer_of(own_feed("water", 300, {{"cp", 20}}, 0), a_day);
  ASSERT_FALSE(made.ok());
  EXPECT_EQ(made.problems().front().what, "feed 'water' has no dry matter at all");
}

GrazingDay grass(double cp_percent, double tdn_percent) {
  GrazingDay day;
  day.forage_intake = KgDmPerDay(10);
  day.crude_protein = from_percent(cp_percent);
  day.tdn = from_percent(tdn_percent);
  return day;
}

TEST(FeedOffer, can_be_made_and_displaces_something_known_for_every_published_feed) {
  for (const PublishedFeed& feed : published_feeds()) {
    SCOPED_TRACE(feed.id);
    const FeedOffer made = offer(feed_like(feed.id, 300));
    if (!feed.values.contains("cp")) continue;
    EXPECT_EQ(made.feed_class, feed.feed_class);
    const double s = displacement_on(made, grass(10, 60));
    EXPECT_GE(s, 0);
    EXPECT_LE(s, 1);
  }
}

TEST(FeedOffer, takes_a_published_nem_only_with_the_published_tdn) {
  Feed corn = feed_like("corn cracked", 200);
  EXPECT_TRUE(offer(corn).has("nem"));
  corn.analysis.nutrients["tdn"] = Share(0.80);
  EXPECT_FALSE(offer(corn).has("nem"));
}

// published/rules.h, displacement: forage TDN:CP over 7 is displaced by energy, not by protein.
TEST(Displacement, falls_for_protein_feeds_on_protein_short_forage_only) {
  const FeedOffer meal = offer(feed_like("cottonseed meal", 350));
  EXPECT_EQ(displacement_on(meal, grass(5, 50)), 0);
  EXPECT_EQ(displacement_on(meal, grass(10, 60)), 0.3);
  const FeedOffer corn = offer(feed_like("corn cracked", 200));
  EXPECT_EQ(displacement_on(corn, grass(5, 50)), 0.5);
  const FeedOffer cube20 = offer(feed_like("range cube 20", 350));
  EXPECT_EQ(displacement_on(cube20, grass(5, 50)), 0.3);  // under 25 % protein
}

// The published range: grain 0.3 to 0.7, protein feeds on protein-short grass none at either end.
TEST(Displacement, has_two_ends_where_a_range_is_published) {
  const FeedOffer corn = offer(feed_like("corn cracked", 200));
  const FeedOffer meal = offer(feed_like("cottonseed meal", 350));
  GrazingDay day = grass(5, 50);
  day.displaced = DisplacementEnd::low;
  EXPECT_EQ(displacement_on(corn, day), 0.3);
  EXPECT_EQ(displacement_on(meal, day), 0);
  day.displaced = DisplacementEnd::high;
  EXPECT_EQ(displacement_on(corn, day), 0.7);
  EXPECT_EQ(displacement_on(meal, day), 0);
  EXPECT_EQ(usual_displacement(meal, DisplacementEnd::high), 0.6);
}

TEST(Displacement, is_none_where_nothing_is_grazed) {
  GrazingDay day = grass(5, 50);
  day.forage_intake = KgDmPerDay(0);
  EXPECT_EQ(displacement_on(offer(feed_like("corn cracked", 200)), day), 0);
}

}  // namespace
}  // namespace pluckbook
