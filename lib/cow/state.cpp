#include <algorithm>

#include "cow/equations.h"
#include "cow/intake.h"

namespace pluckbook {

namespace {

// The rows of month m stand on day 30.5 m after calving; the year of the rows has 366 days.
constexpr double days_in_year = 366, days_of_heifer_growth = 280;
constexpr int first_calf_years = 2;

AnimalState cow_state(const AnimalAt& animal, KgBody mature) {
  const double day = animal.days_since_calving;
  AnimalState state;
  state.weight = state.mature_weight = mature;
  state.milking = animal.milking;
  if (animal.milking) state.milk = milk_on(animal.peak_milk, day);
  state.days_pregnant = std::max(0.0, pregnancy_figures().gestation_days - (days_in_year - day));
  state.bred = share_bred(day);
  return state;
}

AnimalState first_calf_state(AnimalAt animal, KgBody mature) {
  const GrowthFigures& f = growth_figures();
  animal.peak_milk = peak_at_age(animal.peak_milk, first_calf_years);
  AnimalState state = cow_state(animal, mature);
  const double gained = f.at_second_calving - f.at_first_calving;
  state.weight = mature * (f.at_first_calving + gained * animal.days_since_calving / days_in_year);
  state.gain = KgPerDay(mature.value() * gained / days_in_year);
  return state;
}

AnimalState bred_heifer_state(const AnimalAt& animal, KgBody mature) {
  const GrowthFigures& f = growth_figures();
  AnimalState state;
  state.mature_weight = mature;
  state.days_pregnant = std::max(0.0, animal.days_since_calving);
  const double gained = f.at_first_calving - f.at_first_mating;
  state.weight =
      mature * (f.at_first_mating + gained * state.days_pregnant / days_of_heifer_growth);
  state.gain = KgPerDay(mature.value() * gained / days_of_heifer_growth);
  state.bred = 1;
  state.intake_form = IntakeForm::yearling;
  return state;
}

AnimalState growing_state(const AnimalAt& animal, KgBody mature) {
  AnimalState state;
  state.weight = animal.weight;
  state.mature_weight = mature;
  state.gain = animal.gain;
  state.intact_male = animal.cow_class == CowClass::bull;
  state.intake_form = IntakeForm::yearling;
  return state;
}

AnimalState state_by_class(const AnimalAt& animal, KgBody mature) {
  switch (animal.cow_class) {
    case CowClass::mature_cow:
      return cow_state(animal, mature);
    case CowClass::first_calf_heifer:
      return first_calf_state(animal, mature);
    case CowClass::bred_heifer:
      return bred_heifer_state(animal, mature);
    case CowClass::growing:
    case CowClass::bull:
      break;
  }
  return growing_state(animal, mature);
}

}  // namespace

AnimalState state_of(const AnimalAt& animal, KgBody mature_weight) {
  AnimalState state = state_by_class(animal, mature_weight);
  state.birth_weight = usual_birth_weight(mature_weight);
  return state;
}

}  // namespace pluckbook
