#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "supplement/a_feed.h"
#include "supplement/least_cost.h"

namespace pluckbook {
namespace {

std::vector<std::string> cautions(const std::vector<std::string>& like) {
  std::vector<FeedOffer> offers;
  std::vector<std::size_t> which;
  for (const std::string& id : like) {
    which.push_back(offers.size());
    offers.push_back(offer(feed_like(id, 300)));
  }
  return cautions_for(dormant_day(0.9, 6), offers, which);
}

TEST(Cautions, come_with_the_feeds_that_call_for_them) {
  const std::vector<std::pair<std::string, std::string>> cases{
      {"range cube 37 npn8", "Urea and other non-protein nitrogen can poison"},
      {"liquid supplement 32", "Urea and other non-protein nitrogen can poison"},
      {"range cube 20", "horses, mules and dogs die of it"},
      {"tub low moisture 16", "Selenium over 5 ppm"},
      {"tub low moisture 16", "Sheep die of cattle mineral"},
      {"ddgs", "polioencephalomalacia"},
      {"ddgs", "Too much fat"},
      {"whole cottonseed", "Gossypol"},
      {"cottonseed meal", "gossypol"},
      {"corn cracked", "acidosis"},
      {"alfalfa hay good", "bloat"},
      {"molasses cane", "Molasses"},
  };
  for (const auto& [feed, part] : cases) {
    SCOPED_TRACE(feed + ": " + part);
    EXPECT_TRUE(names(cautions({feed}), part));
  }
}

TEST(Cautions, are_not_given_for_feeds_that_do_not_call_for_them) {
  const auto grass = cautions({"grass hay good"});
  EXPECT_FALSE(names(grass, "Urea"));
  EXPECT_FALSE(names(grass, "Gossypol"));
  EXPECT_FALSE(names(grass, "acidosis"));
  EXPECT_FALSE(names(grass, "horses"));
}

TEST(Cautions, put_the_deadliest_first_each_once_and_defer_at_the_end) {
  const auto all = cautions({"corn cracked", "ddgs", "wdgs", "range cube 37 npn8"});
  EXPECT_EQ(all.front().find("Urea"), 0u);
  EXPECT_EQ(std::set<std::string>(all.begin(), all.end()).size(), all.size());
  EXPECT_NE(all.back().find("veterinarian or a qualified nutritionist"), std::string::npos);
  EXPECT_NE(all.back().find("label"), std::string::npos);
}

TEST(Cautions, tell_bulls_from_cows) {
  GrazingDay day = dormant_day(0.9, 6);
  day.bull = true;
  const std::vector<FeedOffer> offers{offer(feed_like("whole cottonseed", 300))};
  EXPECT_TRUE(names(cautions_for(day, offers, {0}), "These are bulls"));
}

TEST(Cautions, still_defer_when_nothing_is_fed) {
  EXPECT_EQ(cautions_for(dormant_day(0.9, 6), {}, {}).size(), 1u);
}

}  // namespace
}  // namespace pluckbook
