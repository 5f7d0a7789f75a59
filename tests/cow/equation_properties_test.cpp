// What must hold of the equations whatever the animal: more weight, milk, cold or calf, more need;
// no jumps in date but at calving and weaning; slices that average to the herd.
#include <random>

#include "cow/herd.h"
#include "cow/requirement_columns.h"

namespace pluckbook::test {
namespace {

constexpr unsigned property_seed = 20260318;
constexpr int tries = 300;

/// Random animals: a cow between the limits an animal may have, milking or dry.
class AnyCow {
 public:
  AnimalAt next() {
    AnimalAt cow = animal(CowClass::mature_cow, 0, 0, day_(random_));
    cow.mature_weight = cow.weight = from_lb<KgBody>(weight_(random_));
    cow.peak_milk = from_lb<KgPerDay>(milk_(random_));
    cow.milking = cow.days_since_calving < 200;
    return cow;
  }
  double degrees() { return degrees_(random_); }

 private:
  std::mt19937 random_{property_seed};
  std::uniform_real_distribution<double> weight_{700, 2200}, milk_{1, 60}, day_{1, 360},
      degrees_{-45, 40};
};

bool needs_more(const EquationNeed& more, const EquationNeed& less) {
  return more.energy.nem() > less.energy.nem() && more.intake * more.tdn > less.intake * less.tdn;
}

TEST(EquationProperties, AHeavierCowNeedsMore) {
  SCOPED_TRACE(property_seed);
  AnyCow any;
  for (int i = 0; i < tries; ++i) {
    const AnimalAt light = any.next();
    AnimalAt heavy = light;
    heavy.weight = light.weight * 1.05;
    heavy.mature_weight = heavy.weight;
    const EquationNeed a = by_equations(light), b = by_equations(heavy);
    EXPECT_TRUE(needs_more(b, a));
    EXPECT_GT(b.protein.crude(), a.protein.crude());
    EXPECT_GT(b.calcium.total(), a.calcium.total());
    EXPECT_GT(b.phosphorus.total(), a.phosphorus.total());
  }
}

TEST(EquationProperties, MoreMilkNeedsMore) {
  SCOPED_TRACE(property_seed);
  AnyCow any;
  for (int i = 0; i < tries; ++i) {
    AnimalAt less = any.next();
    less.milking = true;
    AnimalAt more = less;
    more.peak_milk = less.peak_milk * 1.1;
    const EquationNeed a = by_equations(less), b = by_equations(more);
    EXPECT_TRUE(needs_more(b, a));
    EXPECT_GT(b.protein.crude(), a.protein.crude());
    EXPECT_GT(b.calcium.total(), a.calcium.total());
  }
}

TEST(EquationProperties, ColdNeedsMoreEnergyAndNoMoreProtein) {
  SCOPED_TRACE(property_seed);
  AnyCow any;
  for (int i = 0; i < tries; ++i) {
    const AnimalAt cow = any.next();
    const Celsius mild(any.degrees()), cold = mild - Celsius(5);
    Circumstances warm_month, cold_month;
    warm_month.last_month = mild;
    cold_month.last_month = cold;
    const EquationNeed a = *need_by_equations(cow, warm_month);
    const EquationNeed b = *need_by_equations(cow, cold_month);
    EXPECT_TRUE(needs_more(b, a));
    EXPECT_EQ(b.protein.crude(), a.protein.crude());
    Circumstances today;
    today.cold = cold_by_rule(Coat::wet_or_summer, mild - Celsius(60));
    EXPECT_TRUE(needs_more(*need_by_equations(cow, today), by_equations(cow)));
    Exposure freezing;
    freezing.air = Celsius(-45);
    freezing.wind_km_h = 30;
    today.cold = cold_by_heat_balance(cow.weight, freezing, McalPerDay(15), McalPerDay(0), 0.6);
    EXPECT_TRUE(needs_more(*need_by_equations(cow, today), by_equations(cow)));
  }
}

TEST(EquationProperties, ALaterPregnancyNeedsMore) {
  SCOPED_TRACE(property_seed);
  AnyCow any;
  for (int i = 0; i < tries; ++i) {
    AnimalAt early = any.next();
    early.milking = false;
    early.days_since_calving = 92 + 0.7 * early.days_since_calving;  // bred already
    AnimalAt late = early;
    late.days_since_calving = early.days_since_calving + 10;
    const EquationNeed a = by_equations(early), b = by_equations(late);
    EXPECT_TRUE(needs_more(b, a));
    EXPECT_GT(b.protein.crude(), a.protein.crude());
    EXPECT_GE(b.calcium.total(), a.calcium.total());
  }
}

TEST(EquationProperties, NeedIsContinuousInDateWhileSheMilksAndWhileSheIsDry) {
  SCOPED_TRACE(property_seed);
  AnyCow any;
  constexpr double moment = 0.01;  // of a day
  for (int i = 0; i < tries; ++i) {
    const AnimalAt now = any.next();
    AnimalAt then = now;
    then.days_since_calving += moment;
    const EquationNeed a = by_equations(now), b = by_equations(then);
    EXPECT_NEAR(a.energy.nem().value(), b.energy.nem().value(), 0.02);
    EXPECT_NEAR(a.intake.value(), b.intake.value(), 0.02);
    EXPECT_NEAR(a.protein.crude().value(), b.protein.crude().value(), 0.005);
    EXPECT_NEAR(a.calcium.total().value(), b.calcium.total().value(), 0.0005);
  }
}

// Day by day through a year: a jump on the day of calving and on that of weaning, none between.
TEST(EquationProperties, TheHerdsNeedJumpsAtCalvingAndWeaningOnly) {
  Herd herd = spring_cows();
  herd.weaning = day("2026-10-15");
  std::vector<std::string> jumps;
  for (Date on = day("2026-03-01"); on < day("2027-03-01"); on += Days(1)) {
    const auto now = need_on(herd, on), next = need_on(herd, on + Days(1));
    ASSERT_TRUE(now.ok() && next.ok());
    if (std::abs((next->average.nem - now->average.nem).value()) > 0.2)
      jumps.push_back(to_iso(on + Days(1)));
  }
  EXPECT_EQ(jumps, (std::vector<std::string>{"2026-03-10", "2026-10-15"}));
}

TEST(EquationProperties, SlicesAverageToTheHerdInEveryAmount) {
  SCOPED_TRACE(property_seed);
  std::mt19937 random(property_seed);
  std::uniform_real_distribution<double> share(0, 50), weight(800, 1700);
  std::uniform_int_distribution<int> when(0, 364);
  for (int i = 0; i < 60; ++i) {
    Herd herd = spring_cows();
    herd.weight = from_lb<KgBody>(weight(random));
    herd.calving->share_by_21_days = {share(random), share(random), share(random) + 1};
    const auto need = need_on(herd, day("2026-03-01") + Days(when(random)));
    ASSERT_TRUE(need.ok());
    McalPerDay nem;
    KgPerDay tdn, protein;
    for (std::size_t k = 0; k < need->slices.size(); ++k) {
      const Need& slice = need->slice_needs[k];
      nem += slice.nem * need->slices[k].share;
      tdn += slice.tdn_amount() * need->slices[k].share;
      protein += slice.crude_protein_amount() * need->slices[k].share;
    }
    EXPECT_NEAR(nem.value(), need->average.nem.value(), 1e-9);
    EXPECT_NEAR(tdn.value(), need->average.tdn_amount().value(), 1e-9);
    EXPECT_NEAR(protein.value(), need->average.crude_protein_amount().value(), 1e-9);
  }
}

TEST(EquationProperties, BreedConditionAndActivityMoveTheEquationsAndNotTheTable) {
  const AnimalAt cow = animal(CowClass::mature_cow, 1200, 1200, 244);
  Circumstances thin_brahman;
  thin_brahman.breed = find_breed("brahman");
  thin_brahman.condition = 3;
  const EquationNeed moved = *need_by_equations(cow, thin_brahman);
  EXPECT_NEAR(moved.energy.maintenance.breed, 0.9, 1e-12);
  EXPECT_NEAR(moved.state.weight / cow.weight, 0.87, 0.005);  // Mississippi State P2508, read
  Circumstances walking;
  walking.activity = usual_activity(by_equations(cow).energy.maintenance.total());
  EXPECT_TRUE(needs_more(*need_by_equations(cow, walking), by_equations(cow)));
  Herd herd = spring_cows();
  const auto as_tables = need_on(herd, day("2026-11-09"));
  herd.breed = "brahman";
  herd.condition = 3;
  EXPECT_EQ(need_on(herd, day("2026-11-09"))->average.nem, as_tables->average.nem);
}

TEST(EquationProperties, FiguresNoAnimalHasAreProblemsThatSayWhatToDo) {
  const auto problem = [](const AnimalAt& one, const Circumstances& c) {
    const auto need = need_by_equations(one, c);
    EXPECT_FALSE(need.ok());
    return need.ok() ? Problem{} : need.problems().front();
  };
  const AnimalAt cow = animal(CowClass::mature_cow, 1200, 1200, 61);
  AnimalAt mouse = cow, fountain = cow;
  mouse.weight = from_lb<KgBody>(12);
  fountain.peak_milk = from_lb<KgPerDay>(400);
  EXPECT_EQ(problem(mouse, {}).what, "weight 12.0 lb is outside 600 to 3000 lb");
  EXPECT_EQ(problem(fountain, {}).what, "peak milk 400.0 lb/day is outside 0 to 80 lb/day");
  EXPECT_EQ(problem(fountain, {}).remedy, "check the figure and its unit");
  Circumstances fahrenheit;
  fahrenheit.last_month = Celsius(95);
  EXPECT_EQ(problem(cow, fahrenheit).what,
            "mean temperature of the month 95.0 C is outside -50 to 50 C");
  EXPECT_EQ(problem(cow, fahrenheit).remedy, "was it in F? 95 F is 35.0 C");
  Circumstances fat;
  fat.condition = 12;
  EXPECT_EQ(problem(cow, fat).what, "condition 12.0 score is outside 1 to 9 score");
}

TEST(EquationProperties, AGainNoForageGivesIsSaid) {
  AnimalAt steer = animal(CowClass::growing, 400, 900, 0);
  steer.gain = from_lb<KgPerDay>(4.5);
  const EquationNeed need = by_equations(steer);
  ASSERT_FALSE(need.notes.empty());
  EXPECT_NE(need.notes.back().find("over 85 % TDN"), std::string::npos);
}

}  // namespace
}  // namespace pluckbook::test
