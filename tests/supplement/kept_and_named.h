// kept_and_named.h - how a limit of safe use is tested: a day on which the cheapest mix would break
// it without the limit, does not, and the answer names it.
#pragma once

#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <map>
#include <string>
#include <vector>

#include "supplement/a_feed.h"
#include "supplement/least_cost.h"

namespace pluckbook {

using Amounts = std::vector<double>;  // kg DM of each offer

struct Fed {
  Amounts x;
  double forage = 0;
};

struct Case {
  std::string words;  // of the limit
  GrazingDay day;
  std::vector<FeedOffer> offers;
  std::function<double(const Fed&)> over;  // level minus limit, by hand
};

/// The cheapest amounts when one limit is taken away.
inline Fed without_limit(const Case& c) {
  constexpr double none = std::numeric_limits<double>::infinity();
  SupplementModel model = build_model(c.day, c.offers, 7);
  bool found = false;
  for (std::size_t i = 0; i < model.limits.size(); ++i) {
    if (model.limits[i].words != c.words) continue;
    found = true;
    model.program.row_lower[static_cast<int>(i)] = -none;
    model.program.row_upper[static_cast<int>(i)] = none;
  }
  EXPECT_TRUE(found) << c.words;
  const LpAnswer answer = solve(model.program);
  EXPECT_EQ(answer.status, LpStatus::optimal);
  if (answer.status != LpStatus::optimal) return {Amounts(c.offers.size(), 0), 0};
  Fed fed{{}, c.day.forage_intake.value() - answer.x[answer.x.size() - 1]};
  for (std::size_t j = 0; j < c.offers.size(); ++j) {
    fed.x.push_back(answer.x[static_cast<int>(j)]);
    fed.forage -= model.displacement[j] * fed.x[j];
  }
  return fed;
}

inline Fed fed_by(const Mix& mix, std::size_t offers) {
  Fed fed{Amounts(offers, 0), mix.forage_left.value()};
  for (const MixPart& part : mix.parts) fed.x[part.offer] = part.dry_matter.value();
  return fed;
}

inline void expect_kept_and_named(const Case& c) {
  SCOPED_TRACE(c.words);
  EXPECT_GT(c.over(without_limit(c)), 0.01) << "the limit does not matter on this day";
  const Mix mix = cheapest_mix(c.day, c.offers);
  ASSERT_NE(mix.status, MixStatus::not_trusted);
  ASSERT_FALSE(mix.parts.empty());
  EXPECT_LE(c.over(fed_by(mix, c.offers.size())), 1e-6);
  EXPECT_TRUE(names(mix.binding, c.words));
  for (const Unmet& unmet : mix.unmet) EXPECT_EQ(unmet.in_the_way, c.words);
}

inline FeedOffer own(const std::string& id, double price,
                     const std::map<std::string, double>& percent) {
  return offer(own_feed(id, price, percent));
}

inline FeedOffer dear_cube() {
  return own("dear cube", 2000,
             {{"cp", 42}, {"tdn", 78}, {"fat", 2.5}, {"s", 0.3}, {"npn_cpe", 0}, {"starch", 5}});
}

}  // namespace pluckbook
