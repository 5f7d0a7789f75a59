// feeds.yaml: what can be bought, at whose price, and how it may be fed.
#include <algorithm>

#include "book/market_unit.h"
#include "book/read_parts.h"
#include "published/feeds.h"

namespace pluckbook {
namespace {

// ---- prices ------------------------------------------------------------------------------------

/// Money for a unit, as written: "355 USD/ton".
struct WrittenPrice {
  double amount = 0;
  std::string unit;  // "ton", "50 lb", "mile"
};

Result<WrittenPrice> parse_price(const Dialect& dialect, std::string_view name,
                                 std::string_view text) {
  const Result<WrittenQuantity> written = written_quantity(name, text);
  if (!written) return written.problems();
  if (written->number < 0) {
    return input_problem(fmt::format("{} {} is below 0", name, said(written->number)),
                         "write what is paid, 0 or more");
  }
  const std::string own_unit = dialect.units == UnitSystem::us ? "ton" : "tonne";
  if (written->unit.empty()) return WrittenPrice{written->number, own_unit};
  const std::size_t slash = written->unit.find('/');
  const std::string_view money = trimmed(std::string_view(written->unit).substr(0, slash));
  const std::string example =
      fmt::format("write it as  {} {}/{}", said(written->number), dialect.currency, own_unit);
  if (slash == std::string::npos) {
    return input_problem(fmt::format("{} '{}' does not say for how much feed", name, shown(text)),
                         example);
  }
  if (money != dialect.currency) {
    return input_problem(
        fmt::format("{} is in '{}', but the book counts in {}", name, shown(money),
                    dialect.currency),
        fmt::format("convert it to {}, or change currency in book.yaml", dialect.currency));
  }
  return WrittenPrice{written->number,
                      std::string(trimmed(std::string_view(written->unit).substr(slash + 1)))};
}

Value<WrittenPrice> price_value(std::string_view example) {
  return {"price", example, parse_price};
}

// ---- a quote -----------------------------------------------------------------------------------

struct WrittenQuote {
  WrittenPrice price;
  std::optional<WrittenPrice> freight;
  std::optional<Date> date;
  std::optional<double> miles, km, load_kg;
};

const Keys<WrittenQuote>& quote_keys() {
  static const Keys<WrittenQuote> table = {
      "quote",
      {
          key("price", Need::required, price_value("355 USD/ton"), &WrittenQuote::price),
          key("date", Need::optional, date_value("2026-08-01"), &WrittenQuote::date),
          key("freight", Need::optional, price_value("12 USD/ton"), &WrittenQuote::freight),
          key("miles", Need::optional, number_value("60", 0, 5000), &WrittenQuote::miles),
          key("km", Need::optional, number_value("100", 0, 8000), &WrittenQuote::km),
          key("load", Need::optional, load_value("24 ton"), &WrittenQuote::load_kg),
      }};
  return table;
}

void note_unit(FileReading& reading, const YamlNode& node, const std::string& unit) {
  if (const std::string container = container_in(unit); !container.empty()) {
    reading.error(node, fmt::format("'{}' does not say what a {} weighs", shown(unit), container),
                  "write its weight before it: 56 lb bushel, 50 lb bag, 700 lb bale");
    return;
  }
  reading.error(node, fmt::format("'{}' is no unit feed is sold by", shown(unit)),
                "write ton, cwt, lb, tonne, kg, or a stated weight: 50 lb bag, 56 lb bushel");
}

struct Freight {
  MoneyPerKgAsFed per_kg;
  double a_truck = 0;
};

// Loaded miles are shared out over the load.
std::optional<Freight> freight_of(FileReading& reading, const YamlNode& node,
                                  const WrittenQuote& quote) {
  if (!quote.freight) return Freight{};
  const YamlNode& at = at_key(node, "freight");
  const bool by_mile = quote.freight->unit == "mile" || quote.freight->unit == "miles";
  if (by_mile || quote.freight->unit == "km") {
    const std::optional<double>& way = by_mile ? quote.miles : quote.km;
    if (way && quote.load_kg) {
      const double a_truck = quote.freight->amount * *way;
      return Freight{MoneyPerKgAsFed(a_truck / *quote.load_kg), a_truck};
    }
    reading.error(at,
                  fmt::format("freight by the {} needs '{}' and 'load'", by_mile ? "mile" : "km",
                              by_mile ? "miles" : "km"),
                  fmt::format("add  {}: 60, load: 24 ton", by_mile ? "miles" : "km"));
    return std::nullopt;
  }
  const auto unit = market_unit(quote.freight->unit);
  if (!unit) note_unit(reading, at, quote.freight->unit);
  if (!unit) return std::nullopt;
  return Freight{MoneyPerKgAsFed(quote.freight->amount / unit->kg)};
}

void read_quote(FileReading& reading, const YamlNode& node, Feed& feed) {
  WrittenQuote written;
  const std::size_t before = reading.problem_count();
  read_record(reading, node, quote_keys(), written);
  if (reading.problem_count() != before) return;
  const auto freight = freight_of(reading, node, written);
  const auto unit = market_unit(written.price.unit);
  if (!unit) note_unit(reading, at_key(node, "price"), written.price.unit);
  if (!unit || !freight) return;
  Quote quote;
  quote.amount = written.price.amount;
  quote.unit = written.price.unit;
  quote.kg_per_unit = unit->kg;
  quote.price = MoneyPerKgAsFed(written.price.amount / unit->kg);
  quote.freight = freight->per_kg;
  quote.a_truck = freight->a_truck;
  quote.date = written.date;
  quote.load_kg = written.load_kg;
  feed.quotes.push_back(std::move(quote));
}

void read_quotes(FileReading& reading, const YamlNode::Entry& entry, Feed& feed) {
  if (entry.value.kind != YamlNode::Kind::list) return read_quote(reading, entry.value, feed);
  for (const YamlNode& node : entry.value.items) read_quote(reading, node, feed);
}

// ---- the analysis ------------------------------------------------------------------------------

struct FeedFigureKey {
  std::string_view name, example;
  double low, high;  // outside is a slip in any feed (assumed: pure urea 287 % CP bounds cp)
};

// On dry matter, in percent; rup is a share of CP.
constexpr FeedFigureKey feed_figures[] = {
    {"cp", "22.2", 0, 300},   {"tdn", "76", 0, 130},   {"rup", "40", 0, 100},
    {"npn_cpe", "8", 0, 300}, {"ndf", "30", 0, 95},    {"adf", "15", 0, 80},
    {"fat", "4", 0, 100},     {"ca", "0.8", 0, 40},    {"p", "0.6", 0, 30},
    {"s", "0.3", 0, 30},      {"starch", "20", 0, 95}, {"k", "1.1", 0, 40},
    {"mg", "0.3", 0, 60},
};

// On dry matter, in parts per million; a mineral mix holds thousands (assumed bounds).
constexpr FeedFigureKey feed_traces[] = {{"cu", "1200", 0, 50000}, {"se", "26", 0, 5000}};

Key<FeedAnalysis> figure_key(const FeedFigureKey& figure, std::string_view kind,
                             Value<double> value) {
  return {figure.name, Need::optional, kind, figure.example,
          [&figure, value = std::move(value)](FileReading& reading, const YamlNode::Entry& entry,
                                              FeedAnalysis& to) {
            const auto share = read_value(reading, figure.name, entry.value, value);
            if (share) to.nutrients[std::string(figure.name)] = Share(*share);
          }};
}

const Keys<FeedAnalysis>& analysis_keys() {
  static const Keys<FeedAnalysis> table = [] {
    Keys<FeedAnalysis> keys = {"analysis", {}};
    keys.keys.push_back({"dm", Need::optional, "percent", "90",
                         [](FileReading& reading, const YamlNode::Entry& entry, FeedAnalysis& to) {
                           const auto share =
                               read_value(reading, "dm", entry.value, share_value("90", 5, 100));
                           if (share) to.dm = DmShare(*share);
                         }});
    for (const FeedFigureKey& figure : feed_figures)
      keys.keys.push_back(
          figure_key(figure, "percent", share_value(figure.example, figure.low, figure.high)));
    for (const FeedFigureKey& figure : feed_traces)
      keys.keys.push_back(
          figure_key(figure, "ppm", ppm_share_value(figure.example, figure.low, figure.high)));
    return keys;
  }();
  return table;
}

// ---- a feed ------------------------------------------------------------------------------------

Value<std::string> like_value() {
  return {"published feed", "range cube 20",
          [](const Dialect&, std::string_view, std::string_view text) -> Result<std::string> {
            if (const PublishedFeed* known = find_published_feed(text)) return known->id;
            return input_problem(fmt::format("no published feed is called '{}'", shown(text)),
                                 feed_suggestion(text));
          }};
}

void read_feedings(FileReading& reading, const YamlNode::Entry& entry, Feed& feed) {
  if (entry.value.kind == YamlNode::Kind::scalar && as_id(entry.value.text) == "self") {
    feed.self_fed = true;
    return;
  }
  if (entry.value.kind == YamlNode::Kind::scalar && !parse_number(entry.value.text)) {
    return reading.error(
        entry.value,
        fmt::format("feedings_per_week '{}' is no number of times", shown(entry.value.text)),
        "write 7 for every day, [7, 3] where either will do, or self where they feed themselves");
  }
  const Value<int> times = whole_value("7", 1, 14);
  std::vector<int> ways;
  if (entry.value.kind == YamlNode::Kind::list) {
    for (const YamlNode& node : entry.value.items) {
      if (const auto way = read_value(reading, entry.key.text, node, times)) ways.push_back(*way);
    }
  } else if (const auto way = read_value(reading, entry.key.text, entry.value, times)) {
    ways.push_back(*way);
  }
  if (!ways.empty()) feed.feedings_per_week = std::move(ways);
}

const Keys<Feed>& feed_keys() {
  static const Keys<Feed> table = {
      "feed",
      {
          key("id", Need::required, id_value("cube-20"), &Feed::id),
          key("name", Need::optional, text_value("20 % range cube"), &Feed::name),
          key("like", Need::optional, like_value(), &Feed::like),
          {"analysis",
           Need::optional,
           "analysis",
           "{dm: 90, cp: 22.2, tdn: 76}",
           [](FileReading& reading, const YamlNode::Entry& entry, Feed& feed) {
             read_record(reading, entry.value, analysis_keys(), feed.analysis);
           },
           {},
           facts_of(analysis_keys())},
          {"quote",
           Need::optional,
           "quote",
           "{price: 355 USD/ton, date: 2026-08-01}",
           read_quotes,
           {},
           facts_of(quote_keys())},
          key("waste", Need::optional, share_value("5", 0, 90), &Feed::waste),
          key("shrink", Need::optional, share_value("3", 0, 90), &Feed::shrink),
          {"feedings_per_week", Need::optional, "times a week", "[7, 3]", read_feedings},
          key("least", Need::optional, as_fed_value("1 lb/day"), &Feed::least),
          key("most", Need::optional, as_fed_value("6 lb/day"), &Feed::most),
      }};
  return table;
}

void check_feed(FileReading& reading, const YamlNode& node, const Feed& feed) {
  if (node.find("like") == nullptr && !feed.analysis.nutrients.contains("cp")) {
    reading.error(at_key(node, "id"),
                  fmt::format("nothing says how much protein {} holds", feed.id),
                  "add  like: range cube 20  or  analysis: {dm: 90, cp: 22.2, tdn: 76}");
  }
  const auto figure = [&](const char* name) {
    const auto found = feed.analysis.nutrients.find(name);
    return found == feed.analysis.nutrients.end() ? std::nullopt : std::optional(found->second);
  };
  if (figure("adf") && figure("ndf") && *figure("adf") >= *figure("ndf")) {
    reading.error(at_key(at_key(node, "analysis"), "adf"), "ADF is not below NDF",
                  "ADF is a part of NDF: check whether they changed places");
  }
  if (figure("npn_cpe") && figure("cp") && *figure("npn_cpe") > *figure("cp")) {
    reading.error(at_key(at_key(node, "analysis"), "npn_cpe"),
                  "protein from non-protein nitrogen is more than all the protein",
                  "npn_cpe is a part of cp, in percent of dry matter");
  }
  if (feed.least && feed.most && *feed.least > *feed.most) {
    reading.error(at_key(node, "least"), "'least' is above 'most'", "check the label");
  }
}

}  // namespace

std::vector<KeyFact> feed_facts() {
  return facts_of(feed_keys());
}

std::vector<Quote> read_quotes_of(FileReading& reading, const YamlNode::Entry& entry) {
  Feed feed;
  read_quotes(reading, entry, feed);
  return std::move(feed.quotes);
}

void read_feeds(FileReading& reading, const YamlNode& root, Book& book) {
  UsedIds used;
  for (const YamlNode& node : items_of(reading, root, "feed")) {
    Feed feed;
    feed.origin = reading.origin(node);
    const std::size_t before = reading.problem_count();
    read_record(reading, node, feed_keys(), feed);
    note_used_id(reading, node, used, feed, "feed");
    if (reading.problem_count() == before) check_feed(reading, node, feed);
    if (feed.name.empty()) feed.name = feed.id;
    book.feeds.push_back(std::move(feed));
  }
}

}  // namespace pluckbook
