#include "advice/compare.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "advice/a_book.h"
#include "advice/alternative.h"

namespace pluckbook {
namespace {

using testing::a_quote;
using testing::day;
using testing::with_feeds;

/// A third feed and another pasture, so that there is something to choose.
Book with_feeds_and_a_meadow() {
  Book book = with_feeds();
  book.feeds.push_back(a_quote("light-cube", "range_cube_20", 350));
  Pasture green = book.pastures[0];
  green.id = "green";
  green.forage = "subirrigated_meadow";
  book.pastures.push_back(green);
  return book;
}

ScheduleSettings settings() {
  ScheduleSettings settings;
  settings.windows.as_of = day("2026-08-25");
  settings.windows.until = day("2026-12-01");
  return settings;
}

WhatIf named(const std::string& name) {
  WhatIf what_if;
  what_if.name = name;
  return what_if;
}

WhatIfs asked(std::vector<WhatIf> what_ifs) {
  WhatIfs all;
  all.herd = "cows";
  all.what_ifs = std::move(what_ifs);
  return all;
}

Comparison compared(const Book& book, const WhatIfs& all) {
  Result<Comparison> comparison = compare(book, all, settings());
  EXPECT_TRUE(comparison.ok()) << (comparison.ok() ? "" : comparison.problems().front().what);
  return std::move(*comparison);
}

const Alternative& find(const Comparison& comparison, const std::string& name) {
  return *std::find_if(comparison.ranked.begin(), comparison.ranked.end(),
                       [&](const Alternative& one) { return one.what_if->name == name; });
}

TEST(Compare, WhatChangesNothingIsThePlanItself) {
  const Book book = with_feeds_and_a_meadow();
  const WhatIfs all = asked({named("as now"), named("again")});
  const Comparison comparison = compared(book, all);
  const auto plan = schedule_for(book, book.herds[0], settings());
  EXPECT_DOUBLE_EQ(find(comparison, "as now").cost(), plan->cost());
  EXPECT_DOUBLE_EQ(find(comparison, "again").cost(), plan->cost());
}

TEST(Compare, WeanedEarlierTheyAskForLessFeed) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf wean = named("wean");
  wean.wean = day("2026-09-01");
  const WhatIfs all = asked({named("as now"), wean});
  const Comparison comparison = compared(book, all);
  EXPECT_LT(find(comparison, "wean").cost(), find(comparison, "as now").cost());
  EXPECT_EQ(comparison.ranked.front().what_if->name, "wean");
  EXPECT_EQ(book.herds[0].weaning, day("2026-10-10")) << "the book itself stays as it is";
}

TEST(Compare, AMoveChangesTheDietFromItsDayOn) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf move = named("move");
  move.move = MoveAhead{day("2026-10-06"), "green"};
  const WhatIfs all = asked({named("as now"), move});
  const Comparison comparison = compared(book, all);
  const auto& windows = find(comparison, "move").groups.front().schedule.windows;
  EXPECT_EQ(windows.front().window.pasture->id, "north");
  EXPECT_EQ(windows.back().window.pasture->id, "green");
}

TEST(Compare, DoingNothingCostsNothingAndStandsBehindWhatCovers) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf nothing = named("nothing");
  nothing.feed_nothing = true;
  const WhatIfs all = asked({nothing, named("as now")});
  const Comparison comparison = compared(book, all);
  EXPECT_EQ(comparison.ranked.front().what_if->name, "as now");
  const Alternative& last = comparison.ranked.back();
  EXPECT_EQ(last.cost(), 0);
  EXPECT_FALSE(last.covers());
  EXPECT_LT(*last.score_at_end(), *comparison.ranked.front().score_at_end());
  EXPECT_TRUE(comparison.swaps.empty());
}

TEST(Compare, FewerFeedsNeverCostLess) {
  const Book book = with_feeds_and_a_meadow();
  std::vector<WhatIf> what_ifs{named("as now")};
  for (const Feed& feed : book.feeds) {
    what_ifs.push_back(named("only " + feed.id));
    what_ifs.back().only = {feed.id};
  }
  const WhatIfs all = asked(what_ifs);
  const Comparison comparison = compared(book, all);
  const double free = find(comparison, "as now").cost();
  for (const Alternative& one : comparison.ranked) {
    if (!one.covers()) continue;
    EXPECT_GE(one.cost(), free - 1e-6) << one.what_if->name;
  }
}

TEST(Compare, ALaterQuoteHoldsFromItsDayOn) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf later = named("later");
  later.buy = QuoteAhead{"cube", a_quote("cube", "range_cube_38", 600).quotes};
  later.buy->quotes.front().date = day("2026-10-06");
  const Book changed = book_of(book, "cows", later, day("2026-08-25"));
  const auto schedule = schedule_for(changed, changed.herds[0], settings());
  ASSERT_TRUE(schedule.ok());
  const auto price_in = [](const FedWindow& fed) {
    for (const FeedOffer& offer : fed.offers)
      if (offer.id == "cube") return offer.cost->quote.value() * kg_per_us_ton;
    return 0.0;
  };
  EXPECT_NEAR(price_in(schedule->windows[2]), 475, 1e-9);  // from 22 September
  EXPECT_NEAR(price_in(schedule->windows[3]), 600, 1e-9);  // from 6 October
}

TEST(Compare, WhatIsSplitOffIsFedToItsOwnNeed) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf split = named("split");
  Herd young = book.herds[0];
  young.id = "young";
  young.head = 20;
  young.cow_class = CowClass::first_calf_heifer;
  young.mature_weight = young.weight;
  young.weight = from_lb<KgBody>(1010);
  split.split = young;
  split.split_pasture = "green";
  const WhatIfs all = asked({named("as now"), split});
  const Comparison comparison = compared(book, all);
  const Alternative& apart = find(comparison, "split");
  ASSERT_EQ(apart.groups.size(), 2U);
  EXPECT_EQ(apart.groups[0].schedule.herd->head, 80);
  EXPECT_EQ(apart.groups[1].schedule.herd->head, 20);
  EXPECT_EQ(apart.groups[0].schedule.windows[0].window.pasture->id, "north");
  EXPECT_EQ(apart.groups[1].schedule.windows[0].window.pasture->id, "green");
  EXPECT_TRUE(apart.split_fed_alike.has_value());
}

// Like cows split off to worse grass: had they stayed, they would end as the others do.
TEST(Compare, FedAlikeMeansAmongTheOthers) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf split = named("split");
  split.split = book.herds[0];
  split.split->id = "some";
  split.split->head = 20;
  split.split_pasture = "green";
  const WhatIfs all = asked({named("as now"), split});
  const Comparison comparison = compared(book, all);
  const Alternative& apart = find(comparison, "split");
  EXPECT_NEAR(*apart.split_fed_alike, apart.groups[0].condition->fed, 1e-9);
}

// The proof of a swap is the plan itself, made anew a little to each side of the quote.
TEST(Compare, AtTheSwapTheTwoChangePlaces) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf one = named("cube"), other = named("light cube");
  one.only = {"cube", "hulls"};
  other.only = {"light-cube"};
  const WhatIfs all = asked({one, other});
  const Comparison comparison = compared(book, all);
  ASSERT_FALSE(comparison.swaps.empty());
  for (const Swap& swap : comparison.swaps) {
    std::string first;
    for (const double aside : {-0.01, 0.01}) {
      Book at = book;
      for (Feed& feed : at.feeds)
        if (feed.id == swap.feed)
          feed.quotes[0].price =
              MoneyPerKgAsFed((swap.amount + aside * swap.quote->amount) / swap.quote->kg_per_unit);
      const std::string now = compared(at, all).ranked.front().what_if->name;
      EXPECT_NE(now, first) << swap.feed;
      first = now;
    }
  }
}

// Proven like a swap of quotes: planned anew on that day, and on the day before it.
TEST(Compare, OnTheDayOfTheSwapTheTwoChangePlaces) {
  const Book book = with_feeds_and_a_meadow();
  WhatIf wean = named("wean"), move = named("move");
  wean.wean = day("2026-09-05");
  move.move = MoveAhead{day("2026-11-10"), "green"};
  const auto first_with = [&](const WhatIf& a, const WhatIf& b) {
    const WhatIfs all = asked({a, b});
    return compared(book, all).ranked.front().what_if->name;
  };
  const WhatIfs all = asked({wean, move});
  const Comparison comparison = compared(book, all);
  ASSERT_FALSE(comparison.date_swaps.empty());
  for (const DateSwap& swap : comparison.date_swaps) {
    const bool later = swap.then > swap.now;
    const auto put = [&](Date to) {
      WhatIf a = wean, b = move;
      (swap.of == DateSwap::Of::weaning ? *a.wean : b.move->date) = to;
      return first_with(a, b);
    };
    const std::string now = comparison.ranked.front().what_if->name;
    EXPECT_NE(put(swap.then), now);
    EXPECT_EQ(put(swap.then + Days(later ? -1 : 1)), now);
  }
}

}  // namespace
}  // namespace pluckbook
