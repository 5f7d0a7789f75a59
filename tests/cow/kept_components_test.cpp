// What a need and an intake keep of their making adds up to them.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "cow/herd.h"
#include "cow/intake.h"

namespace pluckbook::test {
namespace {

TEST(KeptComponents, TheRowsOfANeedAddUpToIt) {
  constexpr unsigned seed = 20260711;
  SCOPED_TRACE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> weight(800, 1600), milk(5, 35), when(0, 365);
  for (int i = 0; i < 200; ++i) {
    AnimalAt cow;
    cow.weight = from_lb<KgBody>(weight(random));
    cow.peak_milk = from_lb<KgPerDay>(milk(random));
    cow.days_since_calving = when(random);
    cow.milking = cow.days_since_calving < 200;
    const auto need = need_of(cow);
    ASSERT_TRUE(need.ok());
    double parts = 0, intake = 0, protein = 0;
    for (const RowPart& row : need->rows) {
      double product = 1;
      for (const ColumnStep& step : row.steps) product *= step.share();
      EXPECT_NEAR(row.weight, product, 1e-12);
      EXPECT_EQ(row.steps.size(), cow.milking ? 3U : 2U);
      parts += row.weight;
      intake += row.weight * row.intake.value();
      protein += row.weight * row.crude_protein.value();
    }
    EXPECT_NEAR(parts, 1, 1e-12);
    const BeyondTable beyond = need->beyond.value_or(BeyondTable{});
    EXPECT_NEAR(intake + beyond.intake.value(), need->intake.value(), 1e-9);
    EXPECT_NEAR(protein + beyond.crude_protein.value(), need->crude_protein_table.value(), 1e-12);
  }
}

TEST(KeptComponents, TheHardestSlicesAddUpToAQuarterOfTheHerd) {
  Herd herd = spring_cows();
  herd.calving->share_by_21_days = {20, 15, 40, 25};
  const auto need = need_on(herd, day("2026-04-25"));
  ASSERT_TRUE(need.ok());
  double share = 0, intake = 0;
  for (const SlicePart& part : need->hardest_slices) {
    share += part.share;
    intake += part.share * need->slice_needs[part.slice].intake.value();
  }
  EXPECT_NEAR(share, 0.25, 1e-12);
  EXPECT_NEAR(intake / share, need->hardest_quarter.intake.value(), 1e-9);
}

TEST(KeptComponents, AnIntakeIsTheLeastOfWhatItKeeps) {
  const Herd herd = spring_cows();
  const auto need = need_on(herd, day("2026-06-10"));
  ASSERT_TRUE(need.ok());
  for (const double cp : {3.0, 5.0, 9.0}) {
    for (const double ndf : {45.0, 72.0}) {
      const Diet diet{from_percent(cp), from_percent(54), from_percent(ndf)};
      const Intake eaten = intake_of(herd, *need, diet, IntakeRule::guidance_lower);
      ASSERT_TRUE(eaten.limits.gut.has_value());
      EXPECT_EQ(eaten.amount, std::min(eaten.limits.after_protein, *eaten.limits.gut));
      EXPECT_NEAR(eaten.limits.gut->value(), eaten.weight.value() * 1.2 / ndf, 1e-9);
      EXPECT_NEAR(eaten.limits.after_protein.value(),
                  std::lerp(eaten.before_limits.value(), eaten.limits.protein_poor.value(),
                            eaten.limits.protein_short_by),
                  1e-9);
    }
  }
}

}  // namespace
}  // namespace pluckbook::test
