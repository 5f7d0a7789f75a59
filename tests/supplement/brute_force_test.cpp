// The least-cost model against plain arithmetic over a grid of amounts: no grid point that keeps
// every need and limit is cheaper than the mix, and the mix keeps them too.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "supplement/a_feed.h"
#include "supplement/least_cost.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

struct Figures {
  double cp, tdn, ndf, fat, s, npn;
};

struct Day {
  GrazingDay day;
  std::vector<FeedOffer> offers;
  std::vector<Figures> figures;
  std::vector<double> s, usual, price, least;
};

Day random_day(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Day d;
  GrazingDay& g = d.day;
  g.weight = KgBody(between(450, 650));
  g.milking = between(0, 1) < 0.5;
  g.forage_intake = KgDmPerDay(between(8, 15));
  g.crude_protein = Share(between(0.045, 0.10));
  g.tdn = Share(between(0.46, 0.58));
  g.ndf = Share(between(0.58, 0.70));
  g.forage_intake =
      std::min(g.forage_intake, KgDmPerDay(0.012 * g.weight.value() / g.ndf->value()));
  g.fat = Share(between(0.02, 0.035));
  g.sulfur = Share(between(0.001, 0.0025));
  g.need_crude_protein = g.forage_intake * g.crude_protein + KgPerDay(between(-0.1, 0.5));
  g.need_tdn = g.forage_intake * g.tdn + KgPerDay(between(-0.5, 1.2));
  g.rumen_floor = Share(between(0, 1) < 0.5 ? 0.07 : 0);
  for (int j = 0; j < 3; ++j) {
    Feed feed = own_feed("feed " + std::to_string(j), between(150, 600),
                         {{"cp", between(8, 50)},
                          {"tdn", between(60, 90)},
                          {"ndf", between(15, 50)},
                          {"fat", between(2, 20)},
                          {"s", between(0.2, 1.2)},
                          {"starch", j == 0 ? 65.0 : 10.0}});
    feed.analysis.nutrients["npn_cpe"] =
        j == 1 ? Share(feed.analysis.nutrients["cp"].value() * 0.6) : Share(0);
    if (between(0, 1) < 0.4) feed.least = KgAsFedPerDay(between(0.3, 1.5));
    d.offers.push_back(offer(feed));
    const auto of = [&](const char* name) { return feed.analysis.nutrients.at(name).value(); };
    d.figures.push_back({of("cp"), of("tdn"), of("ndf"), of("fat"), of("s"), of("npn_cpe")});
    d.s.push_back(displacement_on(d.offers.back(), g));
    d.usual.push_back(j == 0 ? 0.5 : 0.3);  // a grain and two cubes: reference/safe_use.yaml
    d.price.push_back(d.offers.back().cost_per_kg_dm().value());
    d.least.push_back(feed.least ? feed.least->value() * 0.9 : 0);
  }
  return d;
}

struct Eaten {
  double all = 0, natural_cp = 0, tdn = 0, fat = 0, sulfur = 0, npn = 0, feed_tdn = 0, feed_cp = 0;
  double counted_npn = 0;  // as far as the rumen can use it on this forage
  double cp() const { return natural_cp + counted_npn; }
};

/// What she eats of forage and feed: forage falls by displacement, then by want of room.
Eaten eaten(const Day& d, const std::vector<double>& x, double& forage) {
  const GrazingDay& g = d.day;
  const double w = g.weight.value();
  double feed = 0, feed_ndf = 0, spared = 0;  // spared: of usual displacement, protein feeds
  forage = g.forage_intake.value();
  for (std::size_t j = 0; j < x.size(); ++j) {
    feed += x[j];
    feed_ndf += x[j] * d.figures[j].ndf;
    forage -= d.s[j] * x[j];
    spared += (d.usual[j] - d.s[j]) * x[j];
  }
  if (spared > 0) forage -= std::max(0.0, spared - 0.3 * 0.003 * w);
  const double full = std::max((g.milking ? 0.027 : 0.025) * w, g.forage_intake.value());
  forage = std::min({forage, full - feed, (0.012 * w - feed_ndf) / g.ndf->value()});
  const double cp = g.crude_protein.value();
  Eaten e;
  e.all = forage + feed;
  e.natural_cp = forage * cp;
  e.tdn = forage * g.tdn.value();
  e.fat = forage * g.fat->value();
  e.sulfur = forage * g.sulfur->value();
  for (std::size_t j = 0; j < x.size(); ++j) {
    const Figures& o = d.figures[j];
    e.natural_cp += x[j] * (o.cp - o.npn);
    e.npn += x[j] * o.npn;
    e.feed_cp += x[j] * o.cp;
    e.tdn += x[j] * o.tdn;
    e.fat += x[j] * o.fat;
    e.sulfur += x[j] * o.s;
    e.feed_tdn += x[j] * o.tdn;
  }
  // Microbes make 0.13 of TDN; 1.94 % of dry matter of grass escapes them (reference/rumen.yaml).
  const double room = std::max(0.0, 0.13 * g.tdn.value() - (cp - std::min(cp, 0.0194)));
  e.counted_npn = std::min(e.npn, room * forage);
  return e;
}

/// The rumen's share counts forage that was pushed out for want of room as eaten, where that is the
/// careful side.
double rumen_margin(const Day& d, const std::vector<double>& x, const Eaten& e, double forage) {
  const double floor = d.day.rumen_floor.value(), cp = d.day.crude_protein.value();
  if (floor <= 0) return 1;
  double displaced = d.day.forage_intake.value();
  for (std::size_t j = 0; j < x.size(); ++j) displaced -= d.s[j] * x[j];
  const double counted = cp < floor ? displaced - forage : 0;
  return e.cp() + counted * cp - floor * (e.all + counted);
}

bool all_kept(const Day& d, const std::vector<double>& x, double slack) {
  double forage = 0;
  const Eaten e = eaten(d, x, forage);
  const double w = d.day.weight.value();
  for (std::size_t j = 0; j < x.size(); ++j)
    if (x[j] > 1e-7 && x[j] < d.least[j] - 1e-7) return false;
  return forage >= -slack && e.cp() >= d.day.need_crude_protein.value() - slack &&
         e.tdn >= d.day.need_tdn.value() - slack && rumen_margin(d, x, e, forage) >= -slack &&
         e.fat <= 0.06 * e.all + slack && e.sulfur <= 0.005 * e.all + slack &&
         e.npn <= 0.3333 * (e.natural_cp + e.npn) + slack && e.npn / 2.81 <= 0.01 * e.all + slack &&
         (d.day.tdn.value() >= 0.52 ||
          (e.npn / 2.81 <= 0.15 * kg_per_lb + slack && e.npn <= 0.40 * 0.70 * e.feed_cp + slack)) &&
         x[0] <= 0.0025 * w + slack && e.feed_tdn <= 0.007 * w + slack;
}

TEST(CheapestMix, is_never_dearer_than_any_point_of_a_grid) {
  int days_with_a_feasible_point = 0, days_needing_feed = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Day d = random_day(seed);
    const Mix mix = cheapest_mix(d.day, d.offers);
    ASSERT_NE(mix.status, MixStatus::not_trusted);
    const std::vector<double> best{amount(mix, 0), amount(mix, 1), amount(mix, 2)};
    EXPECT_TRUE(mix.status == MixStatus::out_of_reach || all_kept(d, best, 1e-6));
    days_needing_feed += mix.status == MixStatus::optimal;
    bool feasible = false;
    constexpr double step = 0.1;
    for (int i = 0; i <= 20; ++i)  // 2 kg of grain is more than its ceiling
      for (int j = 0; j <= 40; ++j)
        for (int k = 0; k <= 40; ++k) {
          const std::vector<double> x{i * step, j * step, k * step};
          if (!all_kept(d, x, 0)) continue;
          feasible = true;
          const double cost = x[0] * d.price[0] + x[1] * d.price[1] + x[2] * d.price[2];
          ASSERT_GE(cost, mix.feed_cost.value() - 1e-9) << x[0] << " " << x[1] << " " << x[2];
        }
    days_with_a_feasible_point += feasible;
    EXPECT_FALSE(feasible && mix.status == MixStatus::out_of_reach);
  }
  EXPECT_GE(days_with_a_feasible_point, 80);
  EXPECT_GE(days_needing_feed, 80);
}

}  // namespace
}  // namespace pluckbook
