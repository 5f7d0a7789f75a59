#include "published/bundled.h"
#include "published/rules.h"

namespace pluckbook {

namespace {

// Sources are named by a key in the rows and spelled out once in the file.
std::string source_in(const Bundled& file, const Bundled& entry) {
  return file.at("sources").text(entry.text("source"));
}

std::vector<SafeUse> read_limits() {
  const Bundled file = Bundled::topic("safe_use");
  std::vector<SafeUse> limits;
  for (const Bundled& entry : file.at("limits").items())
    limits.push_back({entry.text("id"), entry.number("value"), entry.text("unit"),
                      entry.text("caution"), source_in(file, entry), entry.text("status")});
  return limits;
}

std::vector<FeedCeiling> read_ceilings() {
  const Bundled file = Bundled::topic("safe_use");
  std::vector<FeedCeiling> ceilings;
  for (const Bundled& entry : file.at("feed_ceilings").items()) {
    FeedCeiling ceiling;
    ceiling.feed = entry.text("feed");
    if (entry.has("percent_bw")) ceiling.percent_bw = entry.number("percent_bw");
    if (entry.has("percent_dm")) ceiling.percent_dm = entry.number("percent_dm");
    ceiling.caution = entry.text("caution");
    ceiling.source = source_in(file, entry);
    ceiling.status = entry.text("status");
    ceilings.push_back(std::move(ceiling));
  }
  return ceilings;
}

std::vector<Displacement> read_displacements() {
  const Bundled file = Bundled::topic("safe_use");
  std::vector<Displacement> all;
  for (const Bundled& entry : file.at("displacement").items())
    all.push_back({entry.text("class"), entry.number("deficit"), entry.number("usual"),
                   entry.number("low"), entry.number("high"), source_in(file, entry),
                   entry.text("status")});
  return all;
}

}  // namespace

const std::vector<SafeUse>& safe_use() {
  static const auto limits = read_limits();
  return limits;
}

const SafeUse& safe_use(std::string_view id) {
  for (const SafeUse& limit : safe_use())
    if (limit.id == id) return limit;
  Bundled::topic("safe_use").fail("no limit " + std::string(id));
}

const std::vector<FeedCeiling>& feed_ceilings() {
  static const auto ceilings = read_ceilings();
  return ceilings;
}

const Displacement& displacement(std::string_view feed_class) {
  static const auto all = read_displacements();
  for (const Displacement& one : all)
    if (one.feed_class == feed_class) return one;
  Bundled::topic("safe_use").fail("no displacement for class " + std::string(feed_class));
}

}  // namespace pluckbook
