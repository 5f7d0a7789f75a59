#include "published/feeds.h"

#include <set>

#include "published/chain.h"
#include "published/rules.h"
#include "published/tsv.h"

namespace pluckbook::test {
namespace {

TEST(PublishedFeeds, EveryFigureIsTheCollectedOneWithItsStanding) {
  const auto copies = read_tsv("feeds");
  std::size_t figures = 0;
  for (const PublishedFeed& feed : published_feeds()) figures += feed.values.size();
  EXPECT_EQ(published_feeds().size(), 70U);
  EXPECT_EQ(figures, 818U);
  ASSERT_EQ(copies.size(), 818U);
  for (const TsvRow& copy : copies) {
    SCOPED_TRACE(copy.at("id") + " " + copy.at("key"));
    const PublishedFeed* feed = find_published_feed(copy.at("id"));
    ASSERT_NE(feed, nullptr);
    ASSERT_TRUE(feed->values.contains(copy.at("key")));
    const PublishedFigure& figure = feed->values.at(copy.at("key"));
    EXPECT_EQ(figure.value, number(copy, "value"));
    EXPECT_EQ(figure.status, copy.at("status"));
    EXPECT_GT(figure.source.size(), 15U);  // the publication, not a key
  }
}

TEST(PublishedFeeds, DerivedNetEnergyFollowsFromTdn) {
  int checked = 0;
  for (const PublishedFeed& feed : published_feeds()) {
    const auto nem = feed.values.find("nem_kg");
    if (nem == feed.values.end() || nem->second.status != "derived") continue;
    if (feed.values.at("nem_lb").status != "derived") continue;  // then it comes from a read NEm
    const double me = 0.82 * 4.409 * feed.values.at("tdn").value / 100;
    EXPECT_NEAR(nem->second.value, nem_of_me(me), 0.0051) << feed.id;
    EXPECT_NEAR(feed.values.at("nem_lb").value, nem_of_me(me) * lb, 0.0051) << feed.id;
    ++checked;
  }
  EXPECT_GT(checked, 40);
}

TEST(PublishedFeeds, FiguresAreSharesThatCanBe) {
  for (const PublishedFeed& feed : published_feeds()) {
    SCOPED_TRACE(feed.id);
    EXPECT_TRUE(feed.values.contains("dm") && feed.values.contains("cp") &&
                feed.values.contains("tdn"));
    for (const auto& [key, figure] : feed.values) {
      EXPECT_GE(figure.value, 0) << key;
      EXPECT_LE(figure.value, feed.id == "urea" ? 290 : 100) << key;
    }
    EXPECT_GT(feed.values.at("dm").value, 25);
    const auto of = [&](const char* key, double missing) {
      return feed.values.contains(key) ? feed.values.at(key).value : missing;
    };
    EXPECT_LE(of("adf", 0), of("ndf", 100));
    EXPECT_LE(of("npn_cpe", 0), of("cp", 0));
  }
}

TEST(PublishedFeeds, AreFoundWithSpacesHyphensOrCapitals) {
  const PublishedFeed* feed = find_published_feed("range_cube_20");
  ASSERT_NE(feed, nullptr);
  EXPECT_EQ(find_published_feed("range cube 20"), feed);
  EXPECT_EQ(find_published_feed("Range-Cube 20"), feed);
  EXPECT_EQ(find_published_feed("range cube"), nullptr);
}

TEST(PublishedFeeds, NamesForSuggestionsLeadBackToTheFeeds) {
  const auto names = published_feed_names();
  EXPECT_EQ(std::set<std::string>(names.begin(), names.end()).size(), 70U);
  for (const std::string& name : names) {
    EXPECT_EQ(name.find('_'), std::string::npos);
    EXPECT_NE(find_published_feed(name), nullptr) << name;
  }
}

TEST(PublishedFeeds, EveryClassHasItsDisplacementAndEveryCeilingItsFeed) {
  std::set<std::string> known;
  for (const PublishedFeed& feed : published_feeds()) {
    known.insert(feed.id);
    known.insert(feed.feed_class);
    const Displacement& k = displacement(feed.feed_class);
    EXPECT_LE(k.low, k.usual);
    EXPECT_LE(k.usual, k.high);
    EXPECT_LE(k.deficit, k.usual);
    EXPECT_LE(k.high, 1);
  }
  for (const FeedCeiling& ceiling : feed_ceilings())
    EXPECT_TRUE(known.contains(ceiling.feed)) << ceiling.feed;
}

}  // namespace
}  // namespace pluckbook::test
