// feeds.h - published composition of feeds, each figure with its source and standing.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace pluckbook {

struct PublishedFigure {
  double value = 0;    // percent of DM (dm: of as fed; rup: of CP), Mcal where the key says so
  std::string source;  // full text of the source
  std::string status;  // read | derived | recalled | label | assumed
};

struct PublishedFeed {
  std::string id, name, feed_class;               // "range_cube_20", ..., "mixed_cube"
  std::map<std::string, PublishedFigure> values;  // dm, cp, tdn, rup, npn_cpe, ndf, fat, ca, ...
  std::vector<std::string> notes;                 // what to know before using a figure
  std::vector<std::string> trade_names;           // "cattle cake": as it is called where it is sold
};

const std::vector<PublishedFeed>& published_feeds();

/// By id; '-', '_' and spaces count alike ("range cube 20"). nullptr when there is none.
const PublishedFeed* find_published_feed(std::string_view name);

/// All ids, with spaces.
std::vector<std::string> published_feed_names();

/// Those whose id, name or trade names hold every word of the text ("soybean meal", "hay"), one or
/// many of them alike, in their published order.
std::vector<const PublishedFeed*> feeds_called(std::string_view text);

/// What to write for a feed that is not known by this name: the id nearest to it, those it is the
/// trade's word for, or how to see all.
std::string feed_suggestion(std::string_view text);

}  // namespace pluckbook
