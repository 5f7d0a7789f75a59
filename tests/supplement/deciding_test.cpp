// deciding_test.cpp - an answer says on which figures it rests, and how each is known.
#include "supplement/deciding.h"

#include <gtest/gtest.h>

#include "supplement/a_feed.h"

namespace pluckbook {
namespace {

std::string standing_of(const Mix& mix, std::size_t offer, const std::string& nutrient) {
  for (const DecidingFigure& one : mix.deciding)
    if (one.offer == offer && one.nutrient == nutrient) return one.figure.standing;
  return "not named";
}

/// Like a published cube, with protein from its own tag.
FeedOffer tested_cube() {
  Feed feed = feed_like("range_cube_38", 475);
  feed.analysis.nutrients["cp"] = Share(0.41);
  return offer(std::move(feed));
}

TEST(DecidingFigures, AreThoseOfTheFeedsFedThatALimitWithAPriceCounts) {
  const FeedOffer cube = tested_cube();
  const Mix mix = cheapest_mix(bare_gap(KgPerDay(0.3), KgPerDay(0)),
                               {cube, offer(feed_like("corn_cracked", 900))});
  ASSERT_EQ(mix.parts.size(), 1U);
  EXPECT_EQ(standing_of(mix, 0, "cp"), "own");
  EXPECT_EQ(standing_of(mix, 0, "dm"), cube.dm_standing);
  EXPECT_NE(cube.dm_standing, "own") << "it is the published one";
  EXPECT_EQ(standing_of(mix, 0, "tdn"), "not named") << "energy is not short";
  EXPECT_EQ(standing_of(mix, 1, "cp"), "not named") << "corn is not fed";
}

TEST(DecidingFigures, TakeInWhatACeilingCounts) {
  const FeedOffer cheap_fat =
      offer(own_feed("fat-cake", 100, {{"cp", 30}, {"tdn", 90}, {"fat", 30}}));
  const FeedOffer dear = offer(own_feed("cake", 900, {{"cp", 30}, {"tdn", 90}, {"fat", 3}}));
  const Mix mix = cheapest_mix(dormant_day(1.2, 5.5), {cheap_fat, dear});
  ASSERT_EQ(mix.parts.size(), 2U);
  EXPECT_TRUE(names(mix.binding, "fat at most 6 % of all she eats (recalled)"));
  EXPECT_EQ(standing_of(mix, 0, "fat"), "own");
}

TEST(DecidingFigures, OfAnAssumedDryMatterSaySo) {
  Feed feed = own_feed("meal", 300, {{"cp", 40}, {"tdn", 75}});
  feed.analysis.dm.reset();
  const Mix mix = cheapest_mix(bare_gap(KgPerDay(0.3), KgPerDay(0)), {offer(std::move(feed))});
  EXPECT_EQ(standing_of(mix, 0, "dm"), "assumed");
}

}  // namespace
}  // namespace pluckbook
