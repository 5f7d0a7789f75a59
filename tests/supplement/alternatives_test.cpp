// What one would feed else, and between which quotes nothing changes: proven by asking again.
#include <gtest/gtest.h>

#include "supplement/a_feed.h"
#include "supplement/labels.h"
#include "supplement/least_cost.h"
#include "supplement/mix_protein.h"

namespace pluckbook {
namespace {

std::vector<Feed> three_feeds() {
  return {own_feed("cube 38", 475, {{"cp", 42.2}, {"tdn", 77.8}}),
          own_feed("cube 20", 350, {{"cp", 22.2}, {"tdn", 77.8}}),
          own_feed("meal", 520, {{"cp", 45}, {"tdn", 78}})};
}

std::vector<double> amounts_at(const GrazingDay& day, std::vector<Feed> feeds, std::size_t j,
                               double per_ton) {
  feeds[j].quotes.back().price = MoneyPerKgAsFed(per_ton / kg_per_us_ton);
  const Mix mix = cheapest_mix(day, offers_of(feeds));
  std::vector<double> all;
  for (std::size_t k = 0; k < feeds.size(); ++k) all.push_back(amount(mix, k));
  return all;
}

double apart(const std::vector<double>& a, const std::vector<double>& b) {
  double most = 0;
  for (std::size_t k = 0; k < a.size(); ++k) most = std::max(most, std::abs(a[k] - b[k]));
  return most;
}

TEST(Stays, holds_a_cent_inside_its_ends_and_no_longer_outside) {
  const GrazingDay day = dormant_day(0.85, 6.2);  // both cubes are fed
  const auto feeds = three_feeds();
  const auto offers = offers_of(feeds);
  const Mix best = cheapest_mix(day, offers);
  std::vector<double> now;
  for (std::size_t k = 0; k < feeds.size(); ++k) now.push_back(amount(best, k));
  int ends = 0;
  for (const Option& option : all_options(day, offers, best)) {
    EXPECT_EQ(option.stays.has_value(), now[option.offer] > 0);
    if (!option.stays) continue;
    SCOPED_TRACE(feeds[option.offer].id);
    const auto at = [&](double per_ton) {
      return apart(amounts_at(day, feeds, option.offer, per_ton), now);
    };
    if (option.stays->low > 0) {
      EXPECT_LT(at(option.stays->low + 0.01), 1e-6);
      EXPECT_GT(at(option.stays->low - 0.01), 1e-3);
      ++ends;
    }
    if (option.stays->high) {
      EXPECT_LT(at(*option.stays->high - 0.01), 1e-6);
      EXPECT_GT(at(*option.stays->high + 0.01), 1e-3);
      ++ends;
    }
  }
  EXPECT_EQ(ends, 4);
}

TEST(RunnerUp, is_the_best_of_the_mixes_that_do_without_a_feed_of_the_cheapest) {
  const GrazingDay day = bare_gap(KgPerDay(0.3), KgPerDay(0));
  const std::vector<Feed> feeds = three_feeds();
  const auto offers = offers_of(feeds);
  const Mix best = cheapest_mix(day, offers);
  ASSERT_EQ(best.parts.size(), 1U);
  EXPECT_EQ(best.parts[0].offer, 0U);
  const auto second = runner_up(day, offers, best);
  ASSERT_TRUE(second);
  EXPECT_GT(amount(*second, 2), 0);  // 520 / 0.45 is under 350 / 0.222
  EXPECT_EQ(amount(*second, 0), 0);
  EXPECT_GT(second->cost(), best.cost());
}

TEST(RunnerUp, is_none_where_nothing_else_does_it_or_nothing_is_needed) {
  const std::vector<Feed> cubes = {three_feeds()[0]};
  const auto one = offers_of(cubes);
  const GrazingDay day = bare_gap(KgPerDay(0.3), KgPerDay(0));
  EXPECT_FALSE(runner_up(day, one, cheapest_mix(day, one)));
  const GrazingDay fine = bare_gap(KgPerDay(0), KgPerDay(0));
  EXPECT_FALSE(runner_up(fine, one, cheapest_mix(fine, one)));
}

// By hand: 11 kg of grass of 5 % CP, 50 % TDN, 1.94 % of dry matter undegraded, and 1 kg of a meal
// of 45 % CP, 40 % of it undegraded, 78 % TDN. NRC 2000 as in protein_supply.h.
TEST(MixProtein, counts_what_microbes_make_and_what_escapes_them) {
  const GrazingDay day = dormant_day(0.9, 0);
  const auto offers = offers_of({own_feed("meal", 400, {{"cp", 45}, {"tdn", 78}, {"rup", 40}})});
  Mix mix;
  mix.forage_left = KgDmPerDay(11);
  mix.parts.push_back({0, KgDmPerDay(1), KgAsFedPerDay(1), MoneyPerDay(0)});
  const MixProtein supply = mix_protein(day, offers, mix);
  EXPECT_NEAR(supply.degradable.value(), 11 * 0.0306 + 0.27, 1e-9);
  EXPECT_NEAR(supply.degradable_wanted.value(), 0.13 * (5.5 + 0.78), 1e-9);
  EXPECT_NEAR(supply.metabolizable.value(), 0.64 * (0.3366 + 0.27) + 0.80 * (0.2134 + 0.18), 1e-9);
  EXPECT_NEAR(supply.metabolizable_needed.value(), 0.67 * 0.9, 1e-9);
  EXPECT_TRUE(supply.forage_by_class);
  EXPECT_TRUE(supply.feeds_known);
}

TEST(Labels, over_a_published_ceiling_are_named) {
  Feed hulls = feed_like("soybean hulls", 200);
  hulls.most = KgAsFedPerDay(4);  // 3.6 kg of dry matter; half a percent of 550 kg is 2.75
  const GrazingDay day = dormant_day(0.5, 5.5);
  EXPECT_TRUE(names(labels_over_ceilings(day, {offer(hulls)}),
                    "allows more than the published ceiling, 0.5 % of body weight"));
  hulls.least = KgAsFedPerDay(3.5);
  EXPECT_TRUE(names(labels_over_ceilings(day, {offer(hulls)}), "it cannot be fed"));
  hulls.least.reset();
  hulls.most = KgAsFedPerDay(3);
  EXPECT_TRUE(labels_over_ceilings(day, {offer(hulls)}).empty());
}

}  // namespace
}  // namespace pluckbook
