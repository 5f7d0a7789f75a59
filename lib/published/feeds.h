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
};

const std::vector<PublishedFeed>& published_feeds();

/// By id; '-', '_' and spaces count alike ("range cube 20"). nullptr when there is none.
const PublishedFeed* find_published_feed(std::string_view name);

/// All ids, with spaces, for suggestions.
std::vector<std::string> published_feed_names();

}  // namespace pluckbook
