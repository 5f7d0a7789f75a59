#include "advice/price.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "advice/a_book.h"

namespace pluckbook {
namespace {

using testing::a_book;
using testing::a_quote;
using testing::bag_of;
using testing::day;

Book with_feed() {
  Book book = a_book();
  book.feeds.push_back(a_quote("cube", "range_cube_38", 475));
  return book;
}

PriceAnswer priced(const Book& book, const PriceSettings& settings) {
  Result<PriceAnswer> answer = price_for(book, book.herds[0], settings);
  EXPECT_TRUE(answer.ok()) << (answer.ok() ? "" : answer.problems().front().what);
  return std::move(*answer);
}

TEST(Price, NothingIsNeededOnGoodGrass) {
  const Book book = with_feed();
  const PriceAnswer answer = priced(book, {day("2026-07-02"), 0.8, false});
  EXPECT_EQ(answer.mix.status, MixStatus::none_needed);
  EXPECT_TRUE(answer.mix.parts.empty());
}

TEST(Price, MoreCoverNeverCostsLess) {
  Book book = with_feed();
  book.bags.push_back(bag_of("n4", "2026-08-20", 7.0, 56));
  double before = 0;
  for (const double cover : {0.5, 0.75, 0.8, 0.9}) {
    const PriceAnswer answer = priced(book, {day("2026-08-25"), cover, false});
    ASSERT_EQ(answer.mix.status, MixStatus::optimal) << cover;
    EXPECT_GE(answer.mix.cost().value(), before) << cover;
    before = answer.mix.cost().value();
  }
}

TEST(Price, TheMixClosesTheGapItNames) {
  Book book = with_feed();
  book.bags.push_back(bag_of("n4", "2026-08-20", 7.0, 56));
  const PriceAnswer answer = priced(book, {day("2026-08-25"), 0.8, false});
  ASSERT_EQ(answer.mix.status, MixStatus::optimal);
  double protein = (answer.mix.forage_left * answer.gaps[0].diet).value();
  for (const MixPart& part : answer.mix.parts) {
    protein += part.dry_matter.value() * answer.offers[part.offer].figures.at("cp").value;
  }
  EXPECT_GE(protein, answer.gaps[0].balance.need.value() - 1e-9);
}

TEST(Price, RecoveredIntakeIsMoreForageAndNoDearer) {
  Book book = with_feed();
  book.bags.push_back(bag_of("n4", "2026-10-15", 4.6, 50));
  const PriceAnswer held = priced(book, {day("2026-10-20"), 0.5, false});
  const PriceAnswer recovered = priced(book, {day("2026-10-20"), 0.5, true});
  EXPECT_TRUE(held.intake.protein_limits);
  EXPECT_GT(recovered.intake.amount, held.intake.amount);
  EXPECT_DOUBLE_EQ(recovered.intake.amount.value(), held.intake_recovered.value());
}

TEST(Price, AFeedWithoutAQuoteIsNamedAsLeftOut) {
  Book book = with_feed();
  Feed unquoted;
  unquoted.id = unquoted.name = "hay";
  unquoted.like = "grass_hay_good";
  book.feeds.push_back(unquoted);
  const PriceAnswer answer = priced(book, {day("2026-08-25"), 0.8, false});
  EXPECT_EQ(answer.offers.size(), 1U);
  const auto names_hay = [](const std::string& note) { return note.find("hay") != note.npos; };
  EXPECT_EQ(std::ranges::count_if(answer.notes, names_hay), 1);
}

TEST(Price, NoFeedsAtAllIsAProblem) {
  const Book book = a_book();
  EXPECT_FALSE(price_for(book, book.herds[0], {day("2026-08-25"), 0.8, false}));
}

TEST(Price, EachStepOfCertaintyIsPricedAsIfItWereAskedFor) {
  Book book = with_feed();
  book.bags.push_back(bag_of("n4", "2026-08-20", 7.0, 56));
  const PriceAnswer answer = priced(book, {day("2026-08-25"), 0.8, false});
  ASSERT_EQ(answer.certainty.size(), 4U);
  for (const CoverStep& step : answer.certainty) {
    const PriceAnswer asked = priced(book, {day("2026-08-25"), step.cover, false});
    EXPECT_DOUBLE_EQ(step.mix.cost().value(), asked.mix.cost().value()) << step.cover;
  }
}

TEST(Price, CountsTheSulfateOfThePasturesWater) {
  Book book = with_feed();
  book.bags.push_back(bag_of("n4", "2026-08-20", 7.0, 56));
  book.pastures[0].water_sulfate_ppm = 1200;
  const PriceAnswer answer = priced(book, {day("2026-08-25"), 0.8, false});
  EXPECT_EQ(answer.day.water_sulfate_ppm, 1200);
  ASSERT_FALSE(answer.cautions.empty());
  EXPECT_EQ(answer.cautions[0].rfind("The water holds sulfate of 1200 ppm", 0), 0U)
      << answer.cautions[0];
}

TEST(Price, OldQuotesAreNamedInOneLine) {
  Book book = with_feed();
  const PriceAnswer answer = priced(book, {day("2026-09-15"), 0.8, false});
  EXPECT_EQ(answer.notes.back(), "quotes over 60 days old, ask again: cube (76 days)");
}

LoneDay lone_day(double cp, double tdn) {
  LoneDay lone;
  lone.animal.weight = from_lb<KgBody>(1200);
  lone.animal.peak_milk = from_lb<KgPerDay>(20);
  lone.animal.days_since_calving = 244;
  lone.animal.milking = false;
  lone.forage.crude_protein = FootedValue{from_percent(cp), "as printed", "", 0, "laboratory"};
  lone.forage.tdn = FootedValue{from_percent(tdn), "as printed", "", 0, "laboratory"};
  return lone;
}

// The same forage, animal and feed give the same price, with a book or without.
TEST(PriceAlone, IsWhatTheModelSaysOfTheDayItself) {
  const Book book = with_feed();
  const LoneDay lone = lone_day(5.5, 51);
  const Herd herd = herd_of(lone);
  const auto answer = price_alone(lone, herd, book, {day("2026-08-01"), 0.5, false});
  ASSERT_TRUE(answer.ok());
  EXPECT_EQ(answer->mix.status, MixStatus::optimal);
  EXPECT_DOUBLE_EQ(answer->mix.cost().value(),
                   cheapest_mix(answer->day, answer->offers).cost().value());
  EXPECT_TRUE(answer->certainty.empty());
  EXPECT_EQ(answer->pasture, nullptr);
}

TEST(PriceAlone, TakesIntakeAndNeedAsGiven) {
  const Book book = with_feed();
  LoneDay lone = lone_day(5, 50);
  lone.intake = from_lb<KgDmPerDay>(20);
  lone.need_crude_protein = from_lb<KgPerDay>(1.6);
  lone.need_tdn = from_lb<KgPerDay>(9);
  const Herd herd = herd_of(lone);
  const auto answer = price_alone(lone, herd, book, {day("2026-08-01"), 0.5, false});
  ASSERT_TRUE(answer.ok());
  EXPECT_NEAR(in_lb(answer->gaps[0].balance.need), 1.6, 1e-9);
  EXPECT_NEAR(in_lb(answer->gaps[0].balance.supply), 1.0, 1e-9);
  EXPECT_NEAR(in_lb(answer->gaps[1].balance.need), 9, 1e-9);
}

}  // namespace
}  // namespace pluckbook
