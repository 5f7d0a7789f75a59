#include "forage/diet_refit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forage/ranch.h"
#include "numeric/random.h"

namespace pluckbook {
namespace {

using Eigen::VectorXd;

/// Bags every 24 days of some years, of a pasture that stands `level` over the class curve and
/// swings `depth` times as much.
void pluck(Ranch& ranch, int first_year, int years, double level, double depth) {
  const ClassCurve curves[] = {ClassCurve(*find_forage_class("northern_mixed_grass"), cp),
                               ClassCurve(*find_forage_class("northern_mixed_grass"), tdn)};
  Random random(5);
  for (Date day = day_in_year(first_year, 4, 16); day < day_in_year(first_year + years, 4, 15);
       day += Days(24)) {
    const auto since = static_cast<double>(days_between(season_start({4, 15}, day), day));
    const auto value = [&](DietNutrient nutrient) {
      const ClassCurve& curve = curves[series_of(nutrient)];
      const double scaled =
          curve.mean() + level + depth * (curve.at(since) - curve.mean()) + 0.08 * random.normal();
      return in_percent(from_scale(nutrient, scaled));
    };
    ranch.bag(day, {{"cp", value(cp)}, {"tdn", value(tdn)}});
  }
}

std::vector<const Pasture*> pastures(const Ranch& ranch) {
  return {&ranch.book.pastures[0]};
}

TEST(DietRefit, WaitsForEnoughBagsOfEnoughSeasons) {
  const ForageClass& forage = *find_forage_class("northern_mixed_grass");
  Ranch few, enough;
  pluck(few, 2022, 2, 0, 1);
  pluck(enough, 2022, 4, 0, 1);
  EXPECT_FALSE(DietRefit(few.book, pastures(few), forage).enough());
  EXPECT_FALSE(model_of(few.book, forage).refit.has_value());
  ASSERT_TRUE(model_of(enough.book, forage).refit.has_value());
  EXPECT_EQ(model_of(enough.book, forage).refit->bags, 60);  // of 61: at most so many of one
  EXPECT_EQ(model_of(enough.book, forage).refit->seasons, 4);
  EXPECT_TRUE(enough.series().model().refit.has_value());
  enough.book.bags.resize(59);
  EXPECT_FALSE(DietRefit(enough.book, pastures(enough), forage).enough());
  // Of another class's pastures it learns nothing.
  EXPECT_FALSE(model_of(enough.book, *find_forage_class("tallgrass")).refit.has_value());
}

/// Ten pastures; the later, the more years they have bags in.
Book ten_pastures() {
  Ranch ranch;
  Book book;
  for (int i = 0; i < 10; ++i) {
    Pasture pasture = ranch.pasture();
    pasture.id = "p" + std::to_string(i);
    book.pastures.push_back(pasture);
    for (int year = 2026 - i; year <= 2026; ++year) {
      Bag bag = ranch.bag(Date(static_cast<unsigned short>(year), 7, 1), {{"cp", 9}});
      bag.pasture = pasture.id;
      book.bags.push_back(bag);
    }
  }
  return book;
}

std::vector<std::string> ids(const std::vector<const Pasture*>& pastures) {
  std::vector<std::string> names;
  for (const Pasture* pasture : pastures) names.push_back(pasture->id);
  return names;
}

TEST(DietRefit, HearsThePasturesSampledInMostYears) {
  const Book book = ten_pastures();
  EXPECT_EQ(ids(pastures_refitted_on(book, prairie())),
            (std::vector<std::string>{"p9", "p8", "p7", "p6", "p5", "p4", "p3", "p2"}));
}

TEST(DietRefit, HearsTheSamePasturesWhereOthersWereNotRead) {
  const Book whole = ten_pastures();
  Book part = whole;
  for (Pasture& pasture : part.pastures)
    for (const Bag& bag : whole.bags)
      if (bag.pasture == pasture.id) pasture.sampled_years.push_back(bag.plucked.year());
  const std::map<std::string, int> told = pastures_that_tell_of(part, {&part.pastures[0]});
  EXPECT_EQ(told.size(), 9U);  // itself and the eight above
  EXPECT_EQ(told.at("p0"), 0);
  EXPECT_EQ(told.at("p9"), 2022);  // the newest five years
  std::erase_if(part.bags, [&](const Bag& bag) {
    return !told.contains(bag.pasture) || bag.plucked.year() < told.at(bag.pasture);
  });
  EXPECT_EQ(ids(pastures_refitted_on(part, prairie())),
            ids(pastures_refitted_on(whole, prairie())));
}

TEST(DietRefit, IsMadeAnewWhereABagSaysSomethingElse) {
  Ranch ranch;
  pluck(ranch, 2022, 4, 0, 1);
  const double before = model_of(ranch.book, prairie()).level[0];
  EXPECT_EQ(model_of(ranch.book, prairie()).level[0], before);
  for (Bag& bag : ranch.book.bags) bag.results[0].values["cp"] *= 1.2;
  EXPECT_GT(model_of(ranch.book, prairie()).level[0], before + 0.02);
}

TEST(DietRefit, GradientAgreesWithCentralDifferences) {
  Ranch ranch;
  pluck(ranch, 2024, 1, 0.1, 0.9);
  ranch.green_up(Date(2024, 4, 25));
  const ForageClass& forage = *find_forage_class("northern_mixed_grass");
  const DietRefit refit(ranch.book, pastures(ranch), forage);
  const VectorXd at = refit.published() + VectorXd::LinSpaced(refit.published().size(), -0.1, 0.1);
  const VectorXd gradient = refit.at(at).gradient;
  constexpr double step = 1e-5;
  for (Eigen::Index i = 0; i < at.size(); ++i) {
    if (i == kernel_parameters - 1) continue;  // the green-up's sd, which stays
    const VectorXd by = step * VectorXd::Unit(at.size(), i);
    const double difference = (refit.at(at + by).value - refit.at(at - by).value) / (2 * step);
    EXPECT_NEAR(gradient(i), difference, 1e-6 * std::max(1.0, std::abs(difference))) << i;
  }
  EXPECT_EQ(gradient(kernel_parameters - 1), 0);
}

TEST(DietRefit, FindsAPastureThatStandsLowAndSwingsLess) {
  Ranch ranch;
  pluck(ranch, 2020, 6, -0.25, 0.5);
  const DietModel model = model_of(ranch.book, *find_forage_class("northern_mixed_grass"));
  for (const DietNutrient nutrient : {cp, tdn}) {
    EXPECT_NEAR(model.depth[series_of(nutrient)], 0.5, 0.12);
    EXPECT_LT(model.level[series_of(nutrient)], -0.05);
  }
  // Steady years: the bags say that years and weeks stray less than published.
  const Kernel& published = find_forage_class("northern_mixed_grass")->variance.kernel;
  EXPECT_LT(model.kernel.of[0].year, published.of[0].year);
  EXPECT_LT(model.kernel.of[0].wiggle, published.of[0].wiggle);
  EXPECT_DOUBLE_EQ(model.kernel.onset, published.onset);
}

TEST(DietRefit, NeverEndsBelowThePublishedModel) {
  Ranch ranch;
  pluck(ranch, 2023, 3, 0.2, 1.3);
  const ForageClass& forage = *find_forage_class("northern_mixed_grass");
  const DietRefit refit(ranch.book, pastures(ranch), forage);
  const DietModel best = refit.best();
  VectorXd at(refit.published().size());
  at << free_parameters(best.kernel), best.level[0], best.level[1], best.depth[0], best.depth[1];
  EXPECT_GT(refit.at(at).value, refit.at(refit.published()).value);
  // Nothing is left to gain that a likelihood could tell: with the priors' sd of at most 0.5, a
  // parabola of this slope rises by less than a hundredth.
  EXPECT_LT(refit.at(at).gradient.squaredNorm() * 0.5 * 0.5 / 2, 0.01);
}

}  // namespace
}  // namespace pluckbook
