// Energy as NEm, protein as MP and RDP, and urea counted only as far as grass can use it.
#include <gtest/gtest.h>

#include "cow/intake.h"
#include "supplement/a_feed.h"
#include "supplement/least_cost.h"

namespace pluckbook {
namespace {

GrazingDay nem_day(double need_nem) {
  GrazingDay day = dormant_day(0.3, 0);
  day.energy = EnergyMeasure::nem;
  day.need_nem = McalPerDay(need_nem);
  return day;
}

// The chain at TDN 50 %: NEm 0.968 Mcal/kg (facts of the collection, computed); 11 kg give 10.65.
TEST(EnergyAsNem, meets_the_need_in_megacalories) {
  const FeedOffer fibre = offer(own_feed("fibre", 200, {{"cp", 12}, {"tdn", 75}}));
  EXPECT_EQ(cheapest_mix(nem_day(10.6), {fibre}).status, MixStatus::none_needed);
  const Mix mix = cheapest_mix(nem_day(11.5), {fibre});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  const double nem = mix.forage_left.value() * nem_of(Share(0.50)).value() +
                     amount(mix, 0) * nem_of(Share(0.75)).value();
  EXPECT_NEAR(nem, 11.5, 1e-6);
  EXPECT_TRUE(names(mix.binding, "NEm the cow needs"));
}

TEST(EnergyAsNem, takes_the_published_figure_of_a_feed_before_the_chain) {
  const FeedOffer corn = offer(feed_like("corn cracked", 200));
  const Mix mix = cheapest_mix(nem_day(11.0), {corn});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  const double nem = mix.forage_left.value() * nem_of(Share(0.50)).value() +
                     amount(mix, 0) * corn.figure_or("nem", 0);
  EXPECT_NEAR(nem, 11.0, 1e-6);
}

GrazingDay metabolizable_day(double need_crude_protein) {
  GrazingDay day = dormant_day(need_crude_protein, 0);
  day.protein = ProteinMeasure::metabolizable;
  return day;
}

// By hand, 11 kg of 5 % CP, 50 % TDN, 1.94 % of dry matter undegraded (class value, read):
//   RDP wanted 0.13 x 5.5 = 0.715 kg, there 0.0306 x 11 = 0.337; MP 0.64 x 0.715 + 0.80 x 0.213 =
//   0.628
// A meal of 45 % CP, 40 % of it undegraded, 78 % TDN brings 0.27 RDP and wants 0.1014 a kg.
TEST(MetabolizableProtein, gives_the_rumen_the_degradable_protein_its_energy_can_use) {
  const FeedOffer meal = offer(own_feed("meal", 400, {{"cp", 45}, {"tdn", 78}, {"rup", 40}}));
  const Mix mix = cheapest_mix(metabolizable_day(0.5), {meal});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  EXPECT_NEAR(amount(mix, 0), (0.715 - 11 * 0.0306) / (0.45 * 0.60 - 0.13 * 0.78), 1e-3);
  EXPECT_TRUE(names(mix.binding, "degradable protein the rumen wants"));
  EXPECT_TRUE(names(mix.unchecked, "undegraded protein is a class value (1.94 % of dry matter)"));
}

// Where degradable protein is plenty the cow's own MP binds: 0.67 of table CP (Arkansas, read).
TEST(MetabolizableProtein, meets_what_the_cow_herself_needs) {
  GrazingDay day = metabolizable_day(1.3);
  day.crude_protein = Share(0.09);
  const FeedOffer meal = offer(own_feed("meal", 400, {{"cp", 45}, {"tdn", 78}, {"rup", 40}}));
  const Mix mix = cheapest_mix(day, {meal});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  const double x = amount(mix, 0), f = mix.forage_left.value();
  const double mp = 0.64 * 0.13 * (0.50 * f + 0.78 * x) + 0.80 * (0.0194 * f + 0.45 * 0.40 * x);
  EXPECT_NEAR(mp, 0.67 * 1.3, 1e-6);
  EXPECT_TRUE(names(mix.binding, "metabolizable protein the cow needs"));
}

TEST(MetabolizableProtein, takes_the_laboratorys_undegraded_protein_before_the_class_value) {
  GrazingDay day = metabolizable_day(0.5);
  day.undegraded = Share(0.01);  // more of it degradable: less to buy
  const FeedOffer meal = offer(own_feed("meal", 400, {{"cp", 45}, {"tdn", 78}, {"rup", 40}}));
  const Mix mix = cheapest_mix(day, {meal});
  EXPECT_LT(amount(mix, 0), amount(cheapest_mix(metabolizable_day(0.5), {meal}), 0) - 0.1);
  EXPECT_FALSE(names(mix.unchecked, "class value"));
}

TEST(MetabolizableProtein, counts_nothing_for_a_feed_that_does_not_say) {
  const FeedOffer meal = offer(own_feed("meal", 400, {{"cp", 45}, {"tdn", 78}}));
  const Mix mix = cheapest_mix(metabolizable_day(0.5), {meal});
  EXPECT_EQ(mix.status, MixStatus::out_of_reach);
  EXPECT_EQ(mix.unmet.front().limit, "rdp");
}

/// A quarter of its protein from urea, so that no ceiling on urea is met first.
FeedOffer urea_cube() {
  return offer(own_feed("urea cube", 200, {{"cp", 40}, {"tdn", 78}, {"npn_cpe", 9}, {"rup", 30}}));
}

// Poor grass: microbes could use 0.13 x 50 = 6.5 % of dry matter and find 5 - 1.94 = 3.06 %.
TEST(UreaProtein, counts_in_full_where_the_rumen_has_energy_for_it) {
  const Mix mix = cheapest_mix(dormant_day(0.8, 0), {urea_cube()});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  EXPECT_NEAR(amount(mix, 0), (0.8 - 0.55) / 0.40, 1e-6);
}

// Better grass: 0.13 x 54 = 7.02 % can be used and 8.96 - 1.94 = 7.02 % is there: urea is wasted.
TEST(UreaProtein, counts_for_nothing_where_grass_already_gives_the_rumen_all_it_can_use) {
  GrazingDay day = dormant_day(1.2, 0);
  day.crude_protein = Share(0.0896);
  day.tdn = Share(0.54);
  const Mix mix = cheapest_mix(day, {urea_cube()});
  ASSERT_EQ(mix.status, MixStatus::optimal);
  const double natural = mix.forage_left.value() * 0.0896 + amount(mix, 0) * (0.40 - 0.09);
  EXPECT_NEAR(natural, 1.2, 1e-6);
  EXPECT_TRUE(names(mix.binding, "protein from urea that the rumen can use on this forage"));
}

}  // namespace
}  // namespace pluckbook
