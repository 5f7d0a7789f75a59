#include "cow/herd.h"

#include <gtest/gtest.h>

#include <random>

namespace pluckbook::test {
namespace {

std::vector<Slice> slices(const Herd& herd, const char* iso) {
  const auto result = slices_on(herd, day(iso));
  EXPECT_TRUE(result.ok());
  return result.ok() ? *result : std::vector<Slice>{};
}

HerdNeed need(const Herd& herd, Date on) {
  const auto result = need_on(herd, on);
  EXPECT_TRUE(result.ok()) << (result.ok() ? "" : to_text(result.problems().front()));
  return result.ok() ? *result : HerdNeed{};
}

TEST(Stage, OneCalvingDateIsOneSliceThatComesRoundEachYear) {
  const auto now = slices(spring_cows(), "2026-05-10");
  ASSERT_EQ(now.size(), 1U);
  EXPECT_EQ(now[0].days_since_calving, 61);
  EXPECT_EQ(now[0].days_to_calving, 304);
  EXPECT_EQ(now[0].stage, Stage::milking);
  EXPECT_EQ(slices(spring_cows(), "2027-05-10")[0].days_since_calving, 61);
  EXPECT_EQ(slices(spring_cows(), "2026-03-09")[0].days_since_calving, 364);
  EXPECT_EQ(slices(spring_cows(), "2026-03-09")[0].stage, Stage::dry);
  EXPECT_EQ(slices(spring_cows(), "2026-03-10")[0].days_since_calving, 0);
}

TEST(Stage, CalvesComeOffOnTheHerdsDateOrAfterDay183) {
  Herd herd = spring_cows();
  EXPECT_EQ(slices(herd, "2026-09-09")[0].stage, Stage::milking);  // day 183
  EXPECT_EQ(slices(herd, "2026-09-10")[0].stage, Stage::dry);
  herd.weaning = day("2026-10-15");
  EXPECT_EQ(slices(herd, "2026-10-14")[0].stage, Stage::milking);
  EXPECT_EQ(slices(herd, "2026-10-15")[0].stage, Stage::dry);
  EXPECT_EQ(slices(herd, "2027-10-14")[0].stage, Stage::milking);  // the same next year
  EXPECT_EQ(slices(herd, "2027-10-15")[0].stage, Stage::dry);
  EXPECT_EQ(slices(herd, "2026-02-01")[0].stage, Stage::dry);  // and the year before
}

TEST(Stage, AHerdThatCalvesOverWeeksWeansOnOneDay) {
  Herd herd = spring_cows();
  herd.calving->share_by_21_days = {62, 24, 10, 4};
  herd.weaning = day("2026-10-15");
  const auto before = slices(herd, "2026-10-14"), after = slices(herd, "2026-10-15");
  ASSERT_EQ(before.size(), 4U);
  double sum = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    sum += before[i].share;
    EXPECT_EQ(before[i].stage, Stage::milking);
    EXPECT_EQ(after[i].stage, Stage::dry);
    EXPECT_EQ(before[0].days_since_calving - before[i].days_since_calving,
              21 * static_cast<double>(i));
  }
  EXPECT_NEAR(sum, 1, 1e-12);
  EXPECT_EQ(before[0].days_since_calving, 218 - 10);  // born at the middle of their 21 days
}

TEST(Stage, HeifersMoveUpAsTheyCalve) {
  Herd herd = spring_cows();
  herd.cow_class = CowClass::bred_heifer;
  herd.weight = from_lb<KgBody>(840);
  const auto bred = slices(herd, "2026-02-08");
  EXPECT_EQ(bred[0].stage, Stage::bred_heifer);
  EXPECT_EQ(bred[0].days_to_calving, 30);
  EXPECT_EQ(slices(herd, "2026-05-10")[0].cow_class, CowClass::first_calf_heifer);
  EXPECT_EQ(slices(herd, "2027-05-10")[0].cow_class, CowClass::mature_cow);
  const HerdNeed grown = need(herd, day("2027-05-10"));
  EXPECT_NEAR(in_lb(grown.average.weight), 1200, 1e-6);  // 840 / 0.70
  EXPECT_NE(grown.average.notes, std::vector<std::string>{});
}

TEST(Stage, ACowWithoutACalvingDateIsAProblemWithARemedy) {
  Herd herd = spring_cows();
  herd.calving.reset();
  const auto result = need_on(herd, day("2026-05-10"));
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.problems().front().what, "herd 'spring-cows' has no calving date");
  EXPECT_NE(result.problems().front().remedy.find("calving: 2026-03-10"), std::string::npos);
  herd = spring_cows();
  herd.calving->share_by_21_days = {0, 0};
  EXPECT_FALSE(slices_on(herd, day("2026-05-10")).ok());
}

TEST(HerdNeed, OneSliceNeedsWhatItsCowNeeds) {
  const HerdNeed herd = need(spring_cows(), day("2026-05-10"));  // day 61: row 2
  EXPECT_NEAR(in_lb(herd.average.intake), 27.8, 1e-6);
  EXPECT_NEAR(in_percent(herd.average.tdn), 59.9, 0.05);
  EXPECT_EQ(herd.milking_share, 1);
  EXPECT_EQ(herd.average.crude_protein.value(), herd.hardest_quarter.crude_protein.value());
}

TEST(HerdNeed, AveragesTheSlicesByAmountEaten) {
  Herd herd = spring_cows();
  herd.calving->share_by_21_days = {0.5, 0.5};
  const HerdNeed both = need(herd, day("2026-06-30"));
  ASSERT_EQ(both.slice_needs.size(), 2U);
  const Need &a = both.slice_needs[0], &b = both.slice_needs[1];
  EXPECT_NEAR(both.average.tdn_amount().value(),
              (a.tdn_amount().value() + b.tdn_amount().value()) / 2, 1e-9);
  EXPECT_NEAR(both.average.crude_protein_amount().value(),
              (a.crude_protein_amount().value() + b.crude_protein_amount().value()) / 2, 1e-9);
  EXPECT_NEAR(both.average.intake.value(), (a.intake.value() + b.intake.value()) / 2, 1e-9);
  EXPECT_NEAR(both.average.nem.value(), (a.nem.value() + b.nem.value()) / 2, 1e-9);
}

TEST(HerdNeed, TheHardestQuarterNeedsTheDensestDiet) {
  Herd herd = spring_cows();
  herd.calving->share_by_21_days = {0.80, 0.15, 0.05};
  const HerdNeed all = need(herd, day("2026-08-10"));  // after the peak the latest need most
  const Need &late = all.slice_needs[1], &last = all.slice_needs[2];
  EXPECT_GT(last.crude_protein, late.crude_protein);
  EXPECT_GT(all.hardest_quarter.crude_protein, all.average.crude_protein);
  EXPECT_LT(all.hardest_quarter.crude_protein, last.crude_protein);
  // 5 % last, 15 % late and 5 % of the rest make the quarter.
  const double eaten = 0.05 * last.intake.value() + 0.15 * late.intake.value() +
                       0.05 * all.slice_needs[0].intake.value();
  const double protein =
      0.05 * (last.intake * last.crude_protein).value() +
      0.15 * (late.intake * late.crude_protein).value() +
      0.05 * (all.slice_needs[0].intake * all.slice_needs[0].crude_protein).value();
  EXPECT_NEAR(all.hardest_quarter.crude_protein.value(), protein / eaten, 1e-12);
}

TEST(HerdNeed, IsContinuousThroughTheYearExceptAtWeaningAndCalving) {
  constexpr unsigned seed = 99;
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> weight(1000, 1400), milk(10, 30);
  for (int trial = 0; trial < 3; ++trial) {
    Herd herd = spring_cows();
    herd.weight = from_lb<KgBody>(weight(random));
    herd.peak_milk = from_lb<KgPerDay>(milk(random));
    double before = need(herd, day("2026-03-11")).average.tdn.value();
    for (Date on = day("2026-03-12"); on < day("2027-03-09"); on += Days(1)) {
      const HerdNeed now = need(herd, on);
      const double step = std::abs(now.average.tdn.value() - before);
      if (on == day("2026-09-10")) {
        EXPECT_GT(step, 0.05) << "weaning is a step";
      } else {
        EXPECT_LT(step, 0.002) << to_iso(on);
      }
      before = now.average.tdn.value();
    }
  }
}

TEST(HerdNeed, GrowingCattleAndBullsStandAlone) {
  Herd herd = spring_cows();
  herd.cow_class = CowClass::growing;
  herd.weight = from_lb<KgBody>(500);
  herd.mature_weight = from_lb<KgBody>(1000);
  EXPECT_FALSE(need_on(herd, day("2026-05-10")).ok());  // no gain said
  herd.gain = from_lb<KgPerDay>(1.5);
  EXPECT_NEAR(in_percent(need(herd, day("2026-05-10")).average.tdn), 57.4, 1e-6);
  herd.cow_class = CowClass::bull;
  herd.weight = from_lb<KgBody>(2000);
  herd.mature_weight.reset();
  herd.gain.reset();
  EXPECT_NEAR(in_percent(need(herd, day("2026-05-10")).average.tdn), 47.1, 1e-6);
}

}  // namespace
}  // namespace pluckbook::test
