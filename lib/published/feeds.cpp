#include "published/feeds.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <utility>

#include "base/text.h"
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
    PublishedFeed feed{entry.text("id"), entry.text("name"), entry.text("class"), {}, {}, {}};
    const Bundled values = entry.at("values");
    for (const std::string& key : values.keys())
      feed.values[key] = figure_of(values.at(key), sources);
    if (entry.has("notes"))
      for (const Bundled& note : entry.at("notes").items()) feed.notes.push_back(note.text());
    if (entry.has("also"))
      for (const Bundled& name : entry.at("also").items()) feed.trade_names.push_back(name.text());
    feeds.push_back(std::move(feed));
  }
  return feeds;
}

// A word as it is compared: small letters, one of many.
std::string plain_word(std::string_view word) {
  std::string plain = folded_name(word);
  if (plain.size() > 3 && plain.ends_with('s')) plain.pop_back();
  return plain;
}

// "Soybean hulls (loose)" -> soybean, hull, loose
std::set<std::string> words_of(std::string_view text) {
  std::set<std::string> words;
  std::string word;
  for (const char c : std::string(text) + " ") {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
      word += c;
    } else if (!word.empty()) {
      words.insert(plain_word(std::exchange(word, "")));
    }
  }
  return words;
}

std::set<std::string> words_of(const PublishedFeed& feed) {
  std::string all = feed.id + " " + feed.name;
  std::replace(all.begin(), all.end(), '_', ' ');
  for (const std::string& name : feed.trade_names) all += " " + name;
  return words_of(all);
}

const PublishedFeed* feed_by_trade_name(std::string_view text) {
  const std::set<std::string> wanted = words_of(text);
  for (const PublishedFeed& feed : published_feeds()) {
    for (const std::string& name : feed.trade_names)
      if (words_of(name) == wanted) return &feed;
  }
  return nullptr;
}

// "'soybean meal 44', 'soybean meal 48'"
std::string quoted(const std::vector<const PublishedFeed*>& feeds) {
  std::string text;
  for (const PublishedFeed* feed : feeds)
    text += (text.empty() ? "'" : ", '") + spaced_name(feed->id) + "'";
  return text;
}

// Ids, and the trade's names for the same feeds, beside what they stand for.
std::optional<std::string> nearest_feed(std::string_view text) {
  std::vector<std::string> known, ids;
  for (const PublishedFeed& feed : published_feeds()) {
    known.push_back(spaced_name(feed.id));
    ids.push_back(known.back());
    for (const std::string& name : feed.trade_names) {
      known.push_back(name);
      ids.push_back(ids.back());
    }
  }
  const auto near = nearest_word(text, known);
  if (!near) return std::nullopt;
  const auto at = std::find(known.begin(), known.end(), *near) - known.begin();
  return ids[static_cast<std::size_t>(at)];
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

std::vector<const PublishedFeed*> feeds_called(std::string_view text) {
  const std::set<std::string> wanted = words_of(text);
  std::vector<const PublishedFeed*> called;
  for (const PublishedFeed& feed : published_feeds()) {
    const std::set<std::string> words = words_of(feed);
    if (std::includes(words.begin(), words.end(), wanted.begin(), wanted.end()))
      called.push_back(&feed);
  }
  return called;
}

std::string feed_suggestion(std::string_view text) {
  constexpr std::size_t few = 4;
  if (const PublishedFeed* feed = feed_by_trade_name(text))
    return "did you mean '" + spaced_name(feed->id) + "'?";
  if (const auto near = nearest_feed(text)) return "did you mean '" + *near + "'?";
  const std::vector<const PublishedFeed*> called = feeds_called(text);
  if (called.empty() || words_of(text).empty()) return "all of them:  pluckbook feeds";
  if (called.size() <= few) return "which of these: " + quoted(called) + "?";
  return "which of these: " + quoted({called.begin(), called.begin() + few}) +
         "?\nmore like it:  pluckbook feeds " + std::string(trimmed(text));
}

}  // namespace pluckbook
