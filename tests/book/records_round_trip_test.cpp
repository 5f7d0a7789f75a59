// A record written and read is the same record: ten thousand of them, and a million when
// PLUCKBOOK_LONG is set. The seed is fixed and shown.
#include <gtest/gtest.h>

#include <cstdlib>
#include <tuple>

#include "book/append.h"
#include "book/edit.h"
#include "book/parts.h"
#include "book/random_records.h"

namespace pluckbook {
namespace {

Book small_book() {
  Book book = book_with_labs();
  for (const char* id : {"north", "meadow"}) {
    book.pastures.push_back({});
    book.pastures.back().id = id;
    book.pastures.back().forage = "northern_mixed_grass";
  }
  for (const char* id : {"cows", "heifers"}) {
    book.herds.push_back({});
    book.herds.back().id = id;
  }
  return book;
}

// What stands in a text, by the reader of its file.
Book read_back(const std::string& file, const std::string& text) {
  const Result<YamlDocument> document = read_yaml(file, text);
  EXPECT_TRUE(document) << text;
  if (!document) return {};
  Book book = small_book();
  Problems problems;
  FileReading reading(*document, {}, problems);
  read_part(reading, document->root, file, book);
  for (const Problem& problem : problems) {
    EXPECT_EQ(problem.severity, Severity::warning) << to_text(problem);
  }
  return book;
}

std::string written(const Result<Spliced>& spliced) {
  EXPECT_TRUE(spliced) << (spliced ? "" : to_text(spliced.problems()[0]));
  return spliced ? spliced->text : "";
}

auto facts(const LabResult& result) {
  return std::tie(result.received, result.lab, result.basis, result.values, result.supersedes,
                  result.tdn_by, result.note);
}

auto facts(const Bag& bag) {
  return std::tie(bag.id, bag.plucked, bag.method, bag.stops, bag.fill, bag.dried, bag.received,
                  bag.spoiled, bag.lost, bag.note);
}

// A bag, its mark and its result: how many records they are.
int bag_comes_back(Chance& chance) {
  const Book book = small_book();
  Bag bag = random_bag(chance, chance.below(900));
  bag.dried.reset(), bag.lost.reset(), bag.sent.reset(), bag.results.clear();
  const LabResult result = random_result(chance, chance.below(25));
  const Mark dried = {Mark::What::dried, chance.day(2026, 7), ""};
  std::string text = written(with_bag(book, "f.yaml", "", bag));
  text = written(with_mark(book, "f.yaml", text, bag.id, dried));
  text = written(with_result(book, "f.yaml", text, bag.id, result));
  bag.dried = dried.date;
  const std::vector<Bag> read = read_back("f.yaml", text).bags;
  EXPECT_EQ(read.size(), 1U);
  if (read.size() != 1 || read[0].results.size() != 1) return 0;
  EXPECT_TRUE(facts(read[0]) == facts(bag)) << text;
  EXPECT_TRUE(facts(read[0].results[0]) == facts(result)) << text;
  return 3;
}

int move_comes_back(Chance& chance) {
  const Move move = {chance.day(2026, 5),
                     chance.one_in(2) ? "cows" : "heifers",
                     chance.one_in(2) ? "north" : "meadow",
                     chance.one_in(3),
                     {}};
  WrittenKeys keys = {{"date", to_iso(move.date)}, {"herd", move.herd}, {"pasture", move.pasture}};
  if (move.bare) keys.emplace_back("bare", "yes");
  const std::string text = written(with_record(small_book(), "grazing.yaml", "", keys));
  const std::vector<Move> read = read_back("grazing.yaml", text).moves;
  EXPECT_EQ(read.size(), 1U);
  if (read.size() != 1) return 0;
  EXPECT_TRUE(std::tie(read[0].date, read[0].herd, read[0].pasture, read[0].bare) ==
              std::tie(move.date, move.herd, move.pasture, move.bare))
      << text;
  return 1;
}

int score_comes_back(Chance& chance) {
  const double condition = std::round(chance.between(1, 9) * 10) / 10;
  const double pounds = std::round(chance.between(700, 1800));
  const int head = 1 + chance.below(400);
  const std::string text = written(with_record(small_book(), "condition.yaml", "",
                                               {{"date", to_iso(chance.day(2026, 8))},
                                                {"herd", "cows"},
                                                {"condition", shortest(condition)},
                                                {"weight", shortest(pounds) + " lb"},
                                                {"head", std::to_string(head)}}));
  const std::vector<ConditionScore> read = read_back("condition.yaml", text).scores;
  EXPECT_EQ(read.size(), 1U);
  if (read.size() != 1) return 0;
  EXPECT_EQ(read[0].condition, condition) << text;
  EXPECT_EQ(read[0].weight, KgBody(pounds * kg_per_lb)) << text;
  EXPECT_EQ(read[0].head, head) << text;
  return 1;
}

int event_comes_back(Chance& chance) {
  const Event event = {chance.day(2026, 4),
                       "north",
                       chance.of(event_words()).second,
                       "it was " + chance.words(),
                       {}};
  const std::string text = written(with_record(small_book(), "events.yaml", "",
                                               {{"date", to_iso(event.date)},
                                                {"pasture", event.pasture},
                                                {"event", word_of(event.kind)},
                                                {"note", event.note}}));
  const std::vector<Event> read = read_back("events.yaml", text).events;
  EXPECT_EQ(read.size(), 1U);
  if (read.size() != 1) return 0;
  EXPECT_TRUE(std::tie(read[0].date, read[0].kind, read[0].note) ==
              std::tie(event.date, event.kind, event.note))
      << text;
  return 1;
}

int quote_comes_back(Chance& chance) {
  const double price = std::round(chance.between(50, 900) * 100) / 100;
  const Date day = chance.day(2026, 8);
  const std::string text =
      written(with_quote(small_book(), "feeds.yaml", "- id: cube\n  like: range cube 20\n", "cube",
                         {{"price", shortest(price) + " USD/ton"}, {"date", to_iso(day)}}));
  const std::vector<Feed> read = read_back("feeds.yaml", text).feeds;
  EXPECT_EQ(read.size(), 1U);
  if (read.size() != 1 || read[0].quotes.size() != 1) return 0;
  EXPECT_EQ(read[0].quotes[0].amount, price) << text;
  EXPECT_EQ(read[0].quotes[0].unit, "ton") << text;
  EXPECT_EQ(read[0].quotes[0].date, day) << text;
  return 1;
}

TEST(RoundTrip, EveryRandomRecordIsReadAsItWasWritten) {
  const unsigned seed = 20261126;
  SCOPED_TRACE("seed " + std::to_string(seed));
  Chance chance(seed);
  const int wanted = std::getenv("PLUCKBOOK_LONG") != nullptr ? 1'000'000 : 10'000;
  int records = 0;
  while (records < wanted && !::testing::Test::HasFailure()) {
    records += bag_comes_back(chance) + move_comes_back(chance) + score_comes_back(chance) +
               event_comes_back(chance) + quote_comes_back(chance);
  }
  RecordProperty("records", records);
}

}  // namespace
}  // namespace pluckbook
