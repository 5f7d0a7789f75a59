#include "published/feeds.h"

#include "published/bundled.h"

namespace pluckbook {

namespace {

PublishedFigure figure_of(const Bundled& cell, const Bundled& sources) {
  const auto parts = cell.items();
  if (parts.size() != 3) cell.fail("value, source and status are wanted");
  return {parts[0].number(), sources.text(parts[1].text()), parts[2].text()};
}

std::vector<PublishedFeed> read_feeds() {
  const Bundled file = Bundled::topic("feeds");
  const Bundled sources = file.at("sources");
  std::vector<PublishedFeed> feeds;
  for (const Bundled& entry : file.at("feeds").items()) {
    PublishedFeed feed{entry.text("id"), entry.text("name"), entry.text("class"), {}, {}};
    const Bundled values = entry.at("values");
    for (const std::string& key : values.keys())
      feed.values[key] = figure_of(values.at(key), sources);
    if (entry.has("notes"))
      for (const Bundled& note : entry.at("notes").items()) feed.notes.push_back(note.text());
    feeds.push_back(std::move(feed));
  }
  return feeds;
}

}  // namespace

const std::vector<PublishedFeed>& published_feeds() {
  static const auto feeds = read_feeds();
  return feeds;
}

const PublishedFeed* find_published_feed(std::string_view name) {
  const std::string wanted = folded_name(name);
  for (const PublishedFeed& feed : published_feeds())
    if (feed.id == wanted) return &feed;
  return nullptr;
}

std::vector<std::string> published_feed_names() {
  std::vector<std::string> names;
  for (const PublishedFeed& feed : published_feeds()) names.push_back(spaced_name(feed.id));
  return names;
}

}  // namespace pluckbook
