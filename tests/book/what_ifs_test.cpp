#include "book/what_ifs.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"
#include "book/read.h"

namespace pluckbook {
namespace {

const Book& northern() {
  static const Book book =
      *read_book(std::filesystem::path(PLUCKBOOK_SOURCE) / "scenarios/northern");
  return book;
}

/// A file for the cows with one what-if more than 'as now'.
Result<WhatIfs> read_with(const std::string& keys) {
  return read_what_ifs(
      "w.yaml", "herd: spring-cows\nwhat_ifs:\n  - name: as now\n  - " + keys + "\n", northern());
}

std::string problems_of(const Result<WhatIfs>& read) {
  if (read.ok()) return "";
  std::string text;
  for (const Problem& problem : read.problems()) text += to_text(problem);
  return text;
}

TEST(WhatIfs, EveryKindOfChangeIsRead) {
  const auto read = read_with(
      "{name: all, wean: 2026-09-10, move: {date: 2026-09-11, pasture: meadow}, only: [corn, "
      "cube-20], buy: {feed: corn, quote: {price: 5 USD/56 lb, date: 2026-11-01}}, split: {id: "
      "young, head: 20, class: first-calf heifer, weight: 1015 lb, calving: 2026-03-01}, "
      "split_pasture: stovepipe, feed_nothing: yes}");
  ASSERT_TRUE(read) << problems_of(read);
  const WhatIf& all = read->what_ifs.at(1);
  EXPECT_EQ(all.wean, parse_date("2026-09-10"));
  EXPECT_EQ(all.move->pasture, "meadow");
  EXPECT_EQ(all.only, (std::vector<std::string>{"corn", "cube-20"}));
  EXPECT_EQ(all.buy->feed, "corn");
  EXPECT_DOUBLE_EQ(all.buy->quotes.at(0).amount, 5);
  EXPECT_EQ(all.split->head, 20);
  EXPECT_EQ(all.split->cow_class, CowClass::first_calf_heifer);
  EXPECT_EQ(all.split_pasture, "stovepipe");
  EXPECT_TRUE(all.feed_nothing);
}

TEST(WhatIfs, OneFeedNeedsNoList) {
  const auto read = read_with("{name: corn, only: corn}");
  ASSERT_TRUE(read) << problems_of(read);
  EXPECT_EQ(read->what_ifs.at(1).only, std::vector<std::string>{"corn"});
}

TEST(WhatIfs, ASlipIsShownWhereItStandsWithTheNearestKnownWord) {
  struct Slip {
    std::string written, what, remedy;
  };
  const std::vector<Slip> slips = {
      {"{name: w, waen: 2026-09-10}", "w.yaml:4:", "did you mean 'wean'"},
      {"{name: w, move: {date: 2026-09-10, pasture: medow}}", "no pasture 'medow'",
       "did you mean 'meadow'"},
      {"{name: w, only: corm}", "no feed 'corm'", "did you mean 'corn'"},
      {"{name: w, buy: {feed: corm, quote: {price: 5 USD/56 lb}}}", "no feed 'corm'",
       "did you mean 'corn'"},
      {"{name: w, buy: {feed: corn, quote: {price: 5 USD/heap}}}", "'heap' is no unit", "ton"},
      {"{name: w, buy: {feed: corn}}", "this purchase has no 'quote'", "add  quote"},
      {"{name: w, wean: 2026-01-10}", "is before calving", "calves born"},
      {"{name: as now}", "'as now' is already on line 3", "a name of its own"},
      {"{wean: 2026-09-10}", "this what-if has no 'name'", "add  name"},
      {"{name: w, split: {id: y, head: 140, class: bull, weight: 1800 lb}}", "140 head split",
       "leave some"},
      {"{name: w, split: {id: first-calf, head: 2, class: bull, weight: 1800 lb}}",
       "has a herd 'first-calf' already", "another id"},
      {"{name: w, feed_nothing: maybe}", "maybe", "yes"},
  };
  for (const Slip& slip : slips) {
    const std::string text = problems_of(read_with(slip.written));
    EXPECT_NE(text.find(slip.what), std::string::npos) << slip.written << "\n" << text;
    EXPECT_NE(text.find(slip.remedy), std::string::npos) << slip.written << "\n" << text;
  }
}

TEST(WhatIfs, OneAloneOrAnUnknownHerdIsAProblem) {
  const auto one =
      read_what_ifs("w.yaml", "herd: spring-cows\nwhat_ifs:\n  - name: as now\n", northern());
  EXPECT_NE(problems_of(one).find("fewer than two"), std::string::npos);
  const auto herd =
      read_what_ifs("w.yaml", "herd: spring-cow\nwhat_ifs: [{name: a}, {name: b}]\n", northern());
  EXPECT_NE(problems_of(herd).find("did you mean 'spring-cows'"), std::string::npos);
  EXPECT_FALSE(read_what_ifs("w.yaml", "", northern()));
  EXPECT_FALSE(read_what_ifs("w.yaml", "herd: \"", northern()));
}

}  // namespace
}  // namespace pluckbook
