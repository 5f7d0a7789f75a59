// The published feeds a feed of the book may be like, for `feeds`.
#include "published/feeds.h"

#include "base/text.h"
#include "report/json.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

constexpr std::size_t name_shown = 33;  // the table then fits 80 columns

const PublishedFigure* figure_of(const PublishedFeed& feed, const char* key) {
  const auto found = feed.values.find(key);
  return found == feed.values.end() ? nullptr : &found->second;
}

std::string cell(const PublishedFeed& feed, const char* key) {
  const PublishedFigure* figure = figure_of(feed, key);
  return figure == nullptr ? "-" : fixed(figure->value, 1);
}

Json figure_json(const PublishedFeed& feed, const char* key, const char* unit) {
  const PublishedFigure* figure = figure_of(feed, key);
  if (figure == nullptr) return nullptr;
  return {{"value", figure->value}, {"unit", unit}};
}

std::string spaced(std::string id) {
  for (char& c : id)
    if (c == '_') c = ' ';
  return id;
}

}  // namespace

Page feeds_page(const std::vector<const PublishedFeed*>& feeds) {
  Page page;
  page.sentence(
      "What a feed of yours may be like: write the name in its line of feeds.yaml, and what your "
      "own "
      "tag or laboratory says beside it. CP and TDN are percent of dry matter; most are means of "
      "many lots, and lots differ.");
  Table table({{"like", Align::left}, {"DM %"}, {"CP %"}, {"TDN %"}, {"what it is", Align::left}});
  for (const PublishedFeed* feed : feeds) {
    table.add({spaced(feed->id), cell(*feed, "dm"), cell(*feed, "cp"), cell(*feed, "tdn"),
               shown(feed->name, name_shown)});
  }
  page.space().add(std::move(table));
  return page;
}

Json feeds_json(const std::vector<const PublishedFeed*>& feeds) {
  Json json = document("feeds");
  json["feeds"] = Json::array();
  for (const PublishedFeed* feed : feeds) {
    json["feeds"].push_back({{"like", spaced(feed->id)},
                             {"name", feed->name},
                             {"kind", spaced(feed->feed_class)},
                             {"dry_matter", figure_json(*feed, "dm", "% as fed")},
                             {"crude_protein", figure_json(*feed, "cp", "% of DM")},
                             {"tdn", figure_json(*feed, "tdn", "% of DM")}});
  }
  return json;
}

}  // namespace pluckbook
