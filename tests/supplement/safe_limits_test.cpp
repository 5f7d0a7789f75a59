// For each limit of safe use: a day on which the cheapest mix would break it, does not, and the
// answer names the limit. Limits and their sources: reference/safe_use.yaml; the figures here are
// written out by hand so that a change there is seen.
#include "supplement/kept_and_named.h"
#include "supplement/model_draft.h"

namespace pluckbook {
namespace {

TEST(SafeLimits, hold_grain_to_a_quarter_percent_of_body_weight) {
  const auto corn = own("corn", 150, {{"cp", 9}, {"tdn", 90}, {"starch", 72}});
  expect_kept_and_named({"grain at most 0.25 % of body weight",
                         dormant_day(0.5, 6.7),
                         {corn, dear_cube()},
                         [](const Fed& f) { return f.x[0] - 0.0025 * 550; }});
}

TEST(SafeLimits, hold_all_grains_together_to_one_ceiling) {
  const auto corn = own("corn", 150, {{"cp", 9}, {"tdn", 90}, {"starch", 72}});
  const auto milo = own("milo", 151, {{"cp", 11}, {"tdn", 89}, {"starch", 72}});
  expect_kept_and_named({"grain at most 0.25 % of body weight",
                         dormant_day(0.5, 6.7),
                         {corn, milo, dear_cube()},
                         [](const Fed& f) { return f.x[0] + f.x[1] - 0.0025 * 550; }});
}

TEST(SafeLimits, hold_the_tdn_of_a_supplement_under_what_displaces_forage) {
  const auto fibre = own("fibre pellet", 150, {{"cp", 12}, {"tdn", 75}, {"starch", 3}});
  expect_kept_and_named({"TDN of the supplement at most 0.7 % of body weight",
                         dormant_day(0.5, 8.5),
                         {fibre},
                         [](const Fed& f) { return 0.75 * f.x[0] - 0.007 * 550; }});
}

GrazingDay poor_protein_day(double tdn, double need_crude_protein) {
  GrazingDay day = dormant_day(need_crude_protein, 5.4);
  day.crude_protein = Share(0.04);
  day.tdn = Share(tdn);
  return day;
}

FeedOffer urea_mix() {
  return own("urea mix", 100, {{"cp", 100}, {"tdn", 40}, {"npn_cpe", 80}});
}

TEST(SafeLimits, hold_urea_to_a_third_of_the_protein) {
  expect_kept_and_named({"protein from urea at most a third of all crude protein",
                         poor_protein_day(0.53, 0.85),
                         {urea_mix(), dear_cube()},
                         [](const Fed& f) {
                           return 0.80 * f.x[0] - (0.04 * f.forage + f.x[0] + 0.42 * f.x[1]) / 3;
                         }});
}

TEST(SafeLimits, hold_urea_to_one_percent_of_all_she_eats) {
  expect_kept_and_named(
      {"urea at most 1 % of all she eats",
       poor_protein_day(0.53, 1.4),
       {urea_mix(), dear_cube()},
       [](const Fed& f) { return 0.80 / 2.81 * f.x[0] - 0.01 * (f.forage + f.x[0] + f.x[1]); }});
}

TEST(SafeLimits, hold_urea_to_fifteen_hundredths_of_a_pound_on_poor_forage) {
  expect_kept_and_named({"urea at most 0.15 lb (0.068 kg) a day on poor forage",
                         poor_protein_day(0.50, 1.3),
                         {urea_mix(), dear_cube()},
                         [](const Fed& f) { return 0.80 / 2.81 * f.x[0] - 0.15 * kg_per_lb; }});
}

TEST(SafeLimits, are_never_said_above_themselves_in_kilograms) {
  EXPECT_EQ(in_both_units(0.15), "0.15 lb (0.068 kg)");  // 0.06804
  EXPECT_EQ(in_both_units(5), "5 lb (2.26 kg)");         // 2.26796
  EXPECT_EQ(in_both_units(8), "8 lb (3.62 kg)");         // 3.62874
}

TEST(SafeLimits, hold_fat_to_six_percent_of_all_she_eats) {
  const auto oily = own("oily seed", 150, {{"cp", 25}, {"tdn", 100}, {"fat", 40}, {"s", 0.2}});
  expect_kept_and_named({"fat at most 6 % of all she eats",
                         dormant_day(1.0, 5.5),
                         {oily, dear_cube()},
                         [](const Fed& f) {
                           return 0.025 * f.forage + 0.40 * f.x[0] + 0.025 * f.x[1] -
                                  0.06 * (f.forage + f.x[0] + f.x[1]);
                         }});
}

TEST(SafeLimits, hold_sulfur_to_half_a_percent_of_all_she_eats) {
  const auto sour = own("sour grains", 100, {{"cp", 30}, {"tdn", 85}, {"fat", 5}, {"s", 4}});
  expect_kept_and_named({"sulfur at most 0.5 % of all she eats",
                         dormant_day(1.1, 5.5),
                         {sour, dear_cube()},
                         [](const Fed& f) {
                           return 0.0015 * f.forage + 0.04 * f.x[0] + 0.003 * f.x[1] -
                                  0.005 * (f.forage + f.x[0] + f.x[1]);
                         }});
}

TEST(SafeLimits, keep_calcium_over_one_and_a_half_times_phosphorus) {
  GrazingDay day = dormant_day(1.0, 5.5);
  day.calcium = Share(0.0030);
  day.phosphorus = Share(0.0018);
  const auto midds = own("midds", 150, {{"cp", 30}, {"tdn", 70}, {"ca", 0.1}, {"p", 1.0}});
  const auto limed = own("limed cube", 600, {{"cp", 30}, {"tdn", 70}, {"ca", 2}, {"p", 0.8}});
  expect_kept_and_named(
      {"calcium at least 1.5 times phosphorus", day, {midds, limed}, [](const Fed& f) {
         return 1.5 * (0.0018 * f.forage + 0.010 * f.x[0] + 0.008 * f.x[1]) -
                (0.0030 * f.forage + 0.001 * f.x[0] + 0.02 * f.x[1]);
       }});
}

TEST(SafeLimits, hold_a_feed_to_its_published_share_of_body_weight) {
  const auto hulls = offer(feed_like("soybean hulls", 150));
  expect_kept_and_named({"soybean hulls at most 0.5 % of body weight",
                         dormant_day(0.5, 7.6),
                         {hulls, dear_cube()},
                         [](const Fed& f) { return f.x[0] - 0.005 * 550; }});
}

TEST(SafeLimits, hold_a_feed_to_its_published_share_of_dry_matter) {
  const auto canola = offer(feed_like("canola meal", 150));
  expect_kept_and_named(
      {"canola meal at most 15 % of all she eats",
       dormant_day(1.6, 5.5),
       {canola, dear_cube()},
       [](const Fed& f) { return f.x[0] - 0.15 * (f.forage + f.x[0] + f.x[1]); }});
}

TEST(SafeLimits, hold_a_class_of_feeds_to_one_ceiling) {
  const auto dry = offer(feed_like("ddgs", 150)), wet = offer(feed_like("wdgs", 52));
  GrazingDay day = dormant_day(1.45, 5.5);
  day.weight = KgBody(650);  // half a percent of her weight is more than 20 % of what she eats
  expect_kept_and_named({"ddgs and wdgs at most 20 % of all she eats",
                         day,
                         {dry, wet, dear_cube()},
                         [](const Fed& f) {
                           return f.x[0] + f.x[1] - 0.20 * (f.forage + f.x[0] + f.x[1] + f.x[2]);
                         }});
}

TEST(SafeLimits, give_young_cattle_less_cottonseed_and_bulls_less_and_young_bulls_none) {
  const std::vector<FeedOffer> offers{offer(feed_like("whole cottonseed", 100)), dear_cube()};
  GrazingDay day = dormant_day(1.2, 5.5);
  day.young = true;
  expect_kept_and_named({"whole cottonseed at most 0.33 % of body weight", day, offers,
                         [](const Fed& f) { return f.x[0] - 0.0033 * 550; }});
  day.bull = true;
  expect_kept_and_named({"whole cottonseed at most 0 % of body weight", day, offers,
                         [](const Fed& f) { return f.x[0]; }});
  day.young = false;
  expect_kept_and_named(
      {"whole cottonseed at most 10 % of all she eats", day, offers,
       [](const Fed& f) { return f.x[0] - 0.10 * (f.forage + f.x[0] + f.x[1]); }});
}

TEST(SafeLimits, push_forage_out_when_she_can_eat_no_more) {
  GrazingDay day = dormant_day(0.9, 6.9);
  day.forage_intake = KgDmPerDay(0.025 * 550);
  expect_kept_and_named({"all the dry matter she can eat", day, {dear_cube()}, [](const Fed& f) {
                           return f.forage + f.x[0] - 0.025 * 550;
                         }});
  EXPECT_EQ(cheapest_mix(day, {dear_cube()}).status, MixStatus::optimal);
}

TEST(SafeLimits, push_forage_out_when_her_gut_is_full) {
  GrazingDay day = dormant_day(0.9, 5.0);
  day.ndf = Share(0.70);
  day.forage_intake = KgDmPerDay(0.012 * 550 / 0.70);
  const auto cube = own("cube", 400, {{"cp", 42}, {"tdn", 78}, {"ndf", 35}});
  expect_kept_and_named(
      {"room in the gut: NDF at most 1.2 % of body weight", day, {cube}, [](const Fed& f) {
         return 0.70 * f.forage + 0.35 * f.x[0] - 0.012 * 550;
       }});
  EXPECT_EQ(cheapest_mix(day, {cube}).status, MixStatus::optimal);
}

TEST(SafeLimits, do_not_forbid_feed_because_forage_alone_is_past_one) {
  GrazingDay day = dormant_day(0.8, 5.5);
  day.sulfur = Share(0.006);  // over 0.5 % by itself: feed may not add to the excess
  const auto clean = own("clean cube", 900, {{"cp", 42}, {"tdn", 78}, {"s", 0.2}});
  const Mix mix = cheapest_mix(day, {clean});
  EXPECT_EQ(mix.status, MixStatus::optimal);
  EXPECT_TRUE(names(mix.unchecked, "sulfur at most 0.5 % of all she eats: the forage alone"));
  const auto sour = own("sour cube", 100, {{"cp", 42}, {"tdn", 78}, {"s", 0.7}});
  EXPECT_EQ(cheapest_mix(day, {sour}).status, MixStatus::out_of_reach);
}

// Energy is plenty here, so leaving sulfurous forage ungrazed would make room for sulfurous feed:
// nobody can tell a cow to.
TEST(SafeLimits, do_not_count_on_a_cow_leaving_bad_forage) {
  GrazingDay day = dormant_day(0.6, 3.0);
  day.sulfur = Share(0.006);
  const auto sour = own("sour cube", 100, {{"cp", 42}, {"tdn", 78}, {"s", 0.7}});
  EXPECT_EQ(cheapest_mix(day, {sour}).status, MixStatus::out_of_reach);
}

TEST(SafeLimits, hold_the_label_and_name_it) {
  Feed cube = own_feed("cube", 300, {{"cp", 42}, {"tdn", 78}});
  cube.most = KgAsFedPerDay(0.5);
  const Mix mix = cheapest_mix(dormant_day(0.9, 5.5), {offer(cube), dear_cube()});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  EXPECT_NEAR(mix.parts[0].as_fed.value(), 0.5, 1e-9);
  EXPECT_TRUE(names(mix.binding, "the most that the label of cube allows"));
  const Mix alone = cheapest_mix(dormant_day(0.9, 5.5), {offer(cube)});
  ASSERT_EQ(alone.status, MixStatus::out_of_reach);
  EXPECT_EQ(alone.unmet[0].in_the_way, "the most that the label of cube allows");
}

// A ceiling is for one day's rumen: a feeding for 7/3 days may hold no more than it.
TEST(SafeLimits, hold_grain_at_each_feeding) {
  Feed corn = own_feed("corn", 150, {{"cp", 9}, {"tdn", 90}, {"starch", 72}});
  corn.feedings_per_week = {3};
  const Mix mix = cheapest_mix(dormant_day(0.5, 6.7), {offer(corn)});
  ASSERT_EQ(mix.status, MixStatus::out_of_reach);
  EXPECT_NEAR(amount(mix, 0) * 7 / 3, 0.0025 * 550, 1e-6);
}

TEST(SafeLimits, hold_the_label_at_each_feeding) {
  Feed cube = own_feed("cube", 300, {{"cp", 42}, {"tdn", 78}});
  cube.feedings_per_week = {2};
  cube.most = KgAsFedPerDay(1.4);
  const Mix mix = cheapest_mix(dormant_day(0.9, 5.5), {offer(cube)});
  ASSERT_EQ(mix.status, MixStatus::out_of_reach);
  EXPECT_NEAR(mix.parts[0].as_fed.value() * 7 / 2, 1.4, 1e-6);
}

TEST(SafeLimits, feed_urea_every_day_whatever_the_trips_cost) {
  Feed urea = own_feed("urea cube", 300, {{"cp", 42}, {"tdn", 78}, {"npn_cpe", 8}});
  urea.feedings_per_week = {7, 3};
  GrazingDay day = dormant_day(0.8, 5.5);
  day.trip_cost_per_head = 5;
  const Mix mix = cheapest_mix(day, {offer(urea)});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  EXPECT_EQ(mix.feedings_per_week, 7);
  urea.feedings_per_week = {3};
  EXPECT_EQ(cheapest_mix(day, {offer(urea)}).status, MixStatus::out_of_reach);
  urea.self_fed = true;
  EXPECT_EQ(cheapest_mix(day, {offer(urea)}).feedings_per_week, 0);
}

TEST(SafeLimits, are_named_as_unchecked_where_a_figure_is_missing) {
  GrazingDay day = dormant_day(0.9, 5.5);
  day.fat.reset();
  const Mix mix = cheapest_mix(day, {own("cube", 300, {{"cp", 42}, {"tdn", 78}})});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  EXPECT_TRUE(
      names(mix.unchecked, "fat at most 6 % of all she eats: the forage has no figure, 3 %"));
  EXPECT_TRUE(names(mix.unchecked, "sulfur at most 0.5 % of all she eats: cube has no figure"));
  EXPECT_TRUE(names(mix.unchecked, "urea: cube has no figure; taken as none: read its tag"));
  EXPECT_TRUE(names(mix.unchecked, "ceiling by feed: cube is like no published feed"));
  EXPECT_TRUE(names(mix.unchecked, "grain: cube has no starch figure"));
  EXPECT_TRUE(names(mix.unchecked, "room in the gut"));
  EXPECT_TRUE(names(mix.unchecked, "calcium at least 1.5 times phosphorus"));
}

}  // namespace
}  // namespace pluckbook
