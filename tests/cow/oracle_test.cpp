// The equations written a second time, with their coefficients in the code and solved on another
// unknown, agree with the library wherever an animal may stand between the rows.
#include "cow/oracle.h"

#include <random>

#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

constexpr unsigned seed = 20261107;
constexpr double close = 1e-6;  // of the figure

void agrees(const EquationNeed& need, const oracle::Requirement& r) {
  const auto same = [](double ours, double other, const char* what) {
    EXPECT_NEAR(ours, other, close * std::max(1.0, std::abs(other))) << what;
  };
  same(need.energy.maintenance.total().value(), r.maintenance, "maintenance");
  same(need.energy.milk.value(), r.milk, "milk");
  same(need.energy.pregnancy.value(), r.pregnancy, "pregnancy");
  same(need.energy.gain.value(), r.gain, "gain");
  same(need.intake.value(), r.dmi, "intake");
  same(in_percent(need.tdn_chain), r.tdn_chain_percent, "TDN by the chain");
  same(in_percent(need.tdn), r.tdn_percent, "TDN as printed");
  same(in_percent(need.crude_protein()), r.cp_percent, "crude protein");
  same(in_percent(need.calcium_share()), r.ca_percent, "calcium");
  same(in_percent(need.phosphorus_share()), r.p_percent, "phosphorus");
}

TEST(Oracle, CowsBetweenTheRowsAgreeWithASecondWriting) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> weight(700, 2000), milk(2, 40);
  for (int i = 0; i < 600; ++i) {
    const int month = i % 12 + 1;
    const double w = weight(random), m = milk(random);
    AnimalAt cow = animal(CowClass::mature_cow, w, w, row_days * month);
    cow.peak_milk = from_lb<KgPerDay>(m);
    cow.milking = month <= 6;
    agrees(by_equations(cow), oracle::requirement_of(oracle::mature_cow(w, m, month)));
  }
}

TEST(Oracle, HeifersBetweenTheRowsAgreeWithASecondWriting) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> weight(700, 1800);
  for (int i = 0; i < 300; ++i) {
    const int month = i % 9 + 1;
    const double w = weight(random);
    agrees(by_equations(animal(CowClass::bred_heifer, w, w, row_days * month)),
           oracle::requirement_of(oracle::bred_heifer(w, month)));
  }
}

TEST(Oracle, GrowingCattleAndBullsAgreeWithASecondWriting) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> mature(900, 2000), share(0.35, 0.95), gain(0, 1.5);
  for (int i = 0; i < 400; ++i) {
    const bool bull = i % 2 == 0;
    const double m = mature(random), w = std::max(200.0, m * share(random)), g = gain(random);
    AnimalAt one = animal(bull ? CowClass::bull : CowClass::growing, w, m, 0);
    one.gain = from_lb<KgPerDay>(g);
    agrees(by_equations(one), oracle::requirement_of(oracle::growing(m, w, g, bull ? 1.15 : 1)));
  }
}

}  // namespace
}  // namespace pluckbook::test
