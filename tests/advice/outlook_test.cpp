#include "advice/outlook.h"

#include <gtest/gtest.h>

#include "advice/a_book.h"

namespace pluckbook {
namespace {

using testing::a_book;
using testing::bag_of;
using testing::day;

OutlookSettings on(const char* as_of, int days_ahead = 120) {
  OutlookSettings settings;
  settings.as_of = day(as_of);
  settings.until = settings.as_of + Days(days_ahead);
  settings.paths = 300;
  return settings;
}

const NutrientOutlook& protein(const HerdOutlook& outlook) {
  return outlook.nutrients[0];
}

HerdOutlook asked(const Book& book, const OutlookSettings& settings) {
  Result<HerdOutlook> outlook = outlook_of(book, book.herds[0], settings);
  EXPECT_TRUE(outlook.ok()) << (outlook.ok() ? "" : outlook.problems().front().what);
  return std::move(*outlook);
}

TEST(Outlook, ProteinAboveNeedInJulyFallsBelowItLater) {
  const Book book = a_book();
  const HerdOutlook outlook = asked(book, on("2026-07-20"));
  const NutrientOutlook& cp = protein(outlook);
  EXPECT_FALSE(cp.below_now);
  ASSERT_TRUE(cp.falls_below.low && cp.falls_below.median);
  EXPECT_LE(*cp.falls_below.low, *cp.falls_below.median);
  EXPECT_GT(*cp.falls_below.median, day("2026-07-25"));
  EXPECT_LT(*cp.falls_below.median, day("2026-09-30"));
  // Weaning in October lowers the need, so a path that stayed above until then may never fall.
  EXPECT_GT(cp.falls_below.probability_by_horizon, 0.7);
}

TEST(Outlook, APoorBagBringsTheDateForwardAndARichOnePushesItBack) {
  Book poor = a_book();
  Book rich = a_book();
  poor.bags.push_back(bag_of("n4", "2026-07-28", 9.0, 58));
  rich.bags.push_back(bag_of("n4", "2026-07-28", 11.5, 62));
  const auto plain = protein(asked(a_book(), on("2026-08-01"))).probability_below_now;
  EXPECT_GT(protein(asked(poor, on("2026-08-01"))).probability_below_now, plain);
  EXPECT_LT(protein(asked(rich, on("2026-08-01"))).probability_below_now, plain);
}

TEST(Outlook, MoreMilkFallsShortNoLater) {
  Book thirsty = a_book();
  thirsty.herds[0].peak_milk = from_lb<KgPerDay>(28);
  const auto usual = protein(asked(a_book(), on("2026-07-20"))).falls_below.median;
  const auto more = protein(asked(thirsty, on("2026-07-20"))).falls_below.median;
  ASSERT_TRUE(usual && more);
  EXPECT_LE(*more, *usual);
}

TEST(Outlook, AlreadyBelowSaysSinceWhen) {
  Book book = a_book();
  book.bags.push_back(bag_of("n4", "2026-08-20", 6.5, 53));
  const HerdOutlook outlook = asked(book, on("2026-09-01"));
  const NutrientOutlook& cp = protein(outlook);
  EXPECT_TRUE(cp.below_now);
  ASSERT_TRUE(cp.below_since);
  EXPECT_GT(*cp.below_since, day("2026-07-15"));
  EXPECT_LT(*cp.below_since, day("2026-08-20"));
}

TEST(Outlook, BelowSinceDoesNotReachBehindTheDayTheHerdCame) {
  Book book = a_book();
  book.bags.push_back(bag_of("n4", "2026-08-20", 6.5, 53));
  book.moves[0].date = day("2026-08-25");
  EXPECT_EQ(*protein(asked(book, on("2026-09-01"))).below_since, day("2026-08-25"));
}

/// The herd goes to a green meadow on a day.
Book with_meadow_from(const char* date) {
  Book book = a_book();
  Pasture meadow;
  meadow.id = "meadow";
  meadow.name = "Meadow";
  meadow.forage = "subirrigated_meadow";
  book.pastures.push_back(meadow);
  book.moves.push_back({day(date), "cows", "meadow", false, {}});
  return book;
}

TEST(Outlook, FollowsAMoveAheadFromItsDay) {
  const HerdOutlook stays = asked(a_book(), on("2026-07-20"));
  const Book book = with_meadow_from("2026-08-03");
  const HerdOutlook moves = asked(book, on("2026-07-20"));
  EXPECT_EQ(moves.pasture->id, "north");
  ASSERT_EQ(moves.moves_ahead.size(), 1U);
  EXPECT_EQ(moves.moves_ahead[0].pasture->id, "meadow");
  // Until the move, two weeks off, the two are one; from it on the meadow holds the date back.
  EXPECT_EQ(protein(moves).probability_below_now, protein(stays).probability_below_now);
  EXPECT_EQ(protein(moves).waiting.probability, protein(stays).waiting.probability);
  ASSERT_TRUE(protein(stays).falls_below.median);
  EXPECT_LT(protein(moves).falls_below.probability_by_horizon,
            protein(stays).falls_below.probability_by_horizon - 0.2);
}

TEST(Outlook, AMoveAfterTheHorizonChangesNothing) {
  const HerdOutlook stays = asked(a_book(), on("2026-07-20", 60));
  const Book book = with_meadow_from("2026-12-01");
  const HerdOutlook moves = asked(book, on("2026-07-20", 60));
  EXPECT_TRUE(moves.moves_ahead.empty());
  EXPECT_EQ(protein(moves).falls_below.probability_by_horizon,
            protein(stays).falls_below.probability_by_horizon);
}

TEST(Outlook, EarlyWeaningBringsMoreDietsBackAboveNeed) {
  Book early = a_book();
  early.bags.push_back(bag_of("n4", "2026-08-20", 8.2, 56));
  Book late = early;
  early.herds[0].weaning = day("2026-09-15");
  late.herds[0].weaning = day("2026-12-15");
  const NutrientOutlook weaned = protein(asked(early, on("2026-09-01")));
  const NutrientOutlook milking = protein(asked(late, on("2026-09-01")));
  ASSERT_TRUE(weaned.below_now && milking.below_now);
  ASSERT_TRUE(weaned.recovers.low);
  EXPECT_LE(*weaned.recovers.low, day("2026-09-15"));
  EXPECT_GT(weaned.recovers.probability_by_horizon, milking.recovers.probability_by_horizon + 0.1);
}

TEST(Outlook, AWeekOfWaitingLacksSevenOfTodaysGapsOrALittleMore) {
  Book book = a_book();
  book.bags.push_back(bag_of("n4", "2026-08-20", 6.5, 53));
  const NutrientOutlook cp = protein(asked(book, on("2026-09-01")));
  const Kg seven_days(7 * cp.balance.gap().value());
  EXPECT_GT(cp.waiting.probability, 0.99);
  EXPECT_GT(cp.waiting.lacking, seven_days);
  EXPECT_LT(cp.waiting.lacking, 1.15 * seven_days);
  EXPECT_GT(cp.waiting.lacking_at_worst, cp.waiting.lacking);
}

TEST(Outlook, AWeekOfWaitingInJuneLacksNothing) {
  const NutrientOutlook cp = protein(asked(a_book(), on("2026-06-05")));
  EXPECT_LT(cp.waiting.probability, 0.05);
  EXPECT_EQ(cp.waiting.lacking, Kg(0));
}

// Microbes can use 0.13 of the TDN eaten (NRC 2000, read): supply and need by hand from the day's
// own balances.
TEST(Outlook, DegradableProteinIsToldWhereThePageHasIt) {
  Book book = a_book();
  EXPECT_FALSE(asked(book, on("2026-07-20")).degradable);
  book.bags[2].results[0].values["rdp_of_cp"] = 60;
  const HerdOutlook outlook = asked(book, on("2026-07-20"));
  ASSERT_TRUE(outlook.degradable);
  const Balance& rdp = outlook.degradable->balance;
  EXPECT_NEAR(rdp.supply.value(), 0.60 * outlook.nutrients[0].balance.supply.value(), 1e-9);
  EXPECT_NEAR(rdp.need.value(), 0.13 * outlook.nutrients[1].balance.supply.value(), 1e-9);
}

TEST(Outlook, DegradableProteinIsReadOnlyAsFarAsAPastureTellsIt) {
  Book book = with_meadow_from("2026-07-23");
  book.bags[2].results[0].values["rdp_of_cp"] = 90;
  const HerdOutlook outlook = asked(book, on("2026-07-20"));
  ASSERT_TRUE(outlook.degradable);
  EXPECT_LT(outlook.degradable->falls_below.probability_by_horizon, 0.05);
  book.moves.pop_back();  // it stays where the share is known
  EXPECT_GT(asked(book, on("2026-07-20")).degradable->falls_below.probability_by_horizon, 0.5);
}

TEST(Outlook, TheSameSeedGivesTheSameDigits) {
  const Book book = a_book();
  const NutrientOutlook a = protein(asked(book, on("2026-07-20")));
  const NutrientOutlook b = protein(asked(book, on("2026-07-20")));
  EXPECT_EQ(a.falls_below.median, b.falls_below.median);
  EXPECT_EQ(a.falls_below.probability_by_horizon, b.falls_below.probability_by_horizon);
  EXPECT_EQ(a.probability_below_now, b.probability_below_now);
}

TEST(Outlook, TheSupplyRangeHoldsTheLeadingSupply) {
  for (const NutrientOutlook& n : asked(a_book(), on("2026-07-20")).nutrients) {
    EXPECT_LE(n.supply_low, n.balance.supply);
    EXPECT_GE(n.supply_high, n.balance.supply);
    EXPECT_LT(n.supply_low, n.supply_high);
  }
}

TEST(Outlook, HighNdfHoldsIntakeDownAndIsSaid) {
  Book book = a_book();
  book.bags[2].results[0].values["ndf"] = 68;
  const HerdOutlook full = asked(book, on("2026-07-20"));
  EXPECT_TRUE(full.intake.gut_limits);
  // 1.2 % of 544.3 kg as NDF at 68 %: 6.532 / 0.68 = 9.606 kg (Missouri extension; by hand).
  EXPECT_NEAR(full.intake.amount.value(), 9.606, 0.001);
  ASSERT_FALSE(full.notes.empty());
  EXPECT_NE(full.notes[0].find("NDF"), std::string::npos);
}

TEST(Outlook, AHerdOnNoPastureIsAProblem) {
  Book book = a_book();
  book.moves.clear();
  const Result<HerdOutlook> outlook = outlook_of(book, book.herds[0], on("2026-07-20"));
  ASSERT_FALSE(outlook);
  EXPECT_NE(outlook.problems().front().what.find("on no pasture"), std::string::npos);
}

TEST(Outlook, AGrazedOutPastureIsEnergyFirst) {
  Book book = a_book();
  book.moves[0].bare = true;
  EXPECT_NE(asked(book, on("2026-07-20")).first_short.find("energy first"), std::string::npos);
}

TEST(NextSample, IsOfThePastureTheDateFallsIn) {
  const Book book = with_meadow_from("2026-07-22");
  OutlookSettings settings = on("2026-07-20", 200);
  const std::vector<HerdOutlook> outlooks = {asked(book, settings)};
  ASSERT_TRUE(protein(outlooks[0]).falls_below.median);
  const auto next = next_sample(book, outlooks, settings);
  ASSERT_TRUE(next);
  EXPECT_EQ(next->pasture->id, "meadow");
}

TEST(NextSample, IsADayBeforeTheDateItWouldNarrow) {
  const Book book = a_book();
  const OutlookSettings settings = on("2026-07-20");
  const std::vector<HerdOutlook> outlooks = {asked(book, settings)};
  const auto next = next_sample(book, outlooks, settings);
  ASSERT_TRUE(next);
  EXPECT_EQ(next->pasture->id, "north");
  EXPECT_GE(next->date, settings.as_of);
  EXPECT_LE(next->date, *protein(outlooks[0]).falls_below.median);
  EXPECT_FALSE(next->why.empty());
}

}  // namespace
}  // namespace pluckbook
