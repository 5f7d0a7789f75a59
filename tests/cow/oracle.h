// oracle.h - the published equations of need written a second time, for the tests alone, with the
// coefficients in the code and the diet found by its NEm: National Research Council 2000, Nutrient
// Requirements of Beef Cattle, 7th revised edition, chapters 3, 4, 5, 7 and 10; recalled.
#pragma once

#include <cmath>
#include <functional>

#include "published/chain.h"

namespace pluckbook::test::oracle {

/// Root of a function that rises from low to high.
inline double root(double low, double high, const std::function<double(double)>& rising) {
  for (int i = 0; i < 100; ++i) {
    const double middle = (low + high) / 2;
    (rising(middle) < 0 ? low : high) = middle;
  }
  return low;
}
inline double me_of_nem(double nem) {
  return root(0.5, 4.5, [&](double me) { return nem_of_me(me) - nem; });
}
inline double chain_tdn_percent(double nem) {
  return 100 * me_of_nem(nem) / 0.82 / 4.409;
}

/// kg milk a day; peak in kg at week 8.5 (NRC 2000 p. 45, read).
inline double milk_kg(double peak, double day) {
  const double n = day / 7, k = 1 / 8.5, a = 1 / (peak * k * std::exp(1.0));
  return n / (a * std::exp(k * n));
}
inline constexpr double milk_mcal_per_kg = 0.092 * 4.0 + 0.049 * 8.3 - 0.0569;

inline double pregnancy_nem(double birth_weight, double t) {
  if (t <= 0) return 0;
  return birth_weight * (0.4504 - 0.000766 * t) * std::exp((0.03233 - 0.0000275 * t) * t) * 0.576 /
         1000;
}
inline double pregnancy_mp(double birth_weight, double t) {
  if (t <= 0) return 0;
  return 6.25 * birth_weight * (0.001669 - 0.00000211 * t) *
         std::exp((0.0278 - 0.0000176 * t) * t) / 0.65;
}

/// An animal as the requirement equations see it, kg and Mcal a day.
struct Animal {
  double weight = 0, mature_weight = 0, gain = 0, milk = 0;
  double maintenance_factor = 1;  // 1.2 milking, 1.15 bulls
  double birth_weight = 0, days_pregnant = 0;
  bool late_pregnancy = false;  // the last 90 days, minerals
  bool yearling_intake = false;
  double intake_constant = 0.04631;  // cows: 0.03840 until bred
};

struct Requirement {
  double maintenance, milk, pregnancy, gain;  // net energy
  double density, dmi, tdn_percent, tdn_chain_percent, cp_percent, ca_percent, p_percent, mp_g;
  double nem() const { return maintenance + milk + pregnancy; }
};

inline double intake_kg(const Animal& a, double n) {
  const double size = std::pow(a.weight, 0.75);
  if (a.yearling_intake) return size * (0.2435 * n - 0.0466 * n * n - 0.0869) / std::max(n, 0.95);
  return size * (0.04997 * n * n + a.intake_constant) / n + 0.2 * a.milk;
}

inline double retained_energy(const Animal& a) {
  if (a.gain <= 0) return 0;
  const double equivalent = 0.891 * a.weight * 478 / a.mature_weight;
  return 0.0635 * std::pow(equivalent, 0.75) * std::pow(0.956 * a.gain, 1.097);
}

inline Requirement requirement_of(const Animal& a) {
  const double size = std::pow(a.weight, 0.75);
  Requirement r{};
  r.maintenance = 0.077 * size * a.maintenance_factor;
  r.milk = a.milk * milk_mcal_per_kg;
  r.pregnancy = pregnancy_nem(a.birth_weight, a.days_pregnant);
  r.gain = retained_energy(a);
  // The density at which the predicted intake just meets maintenance, milk, pregnancy and gain.
  r.density = root(0.5, 2.8, [&](double n) {
    return (intake_kg(a, n) - r.nem() / n) * neg_of_me(me_of_nem(n)) - r.gain;
  });
  r.dmi = intake_kg(a, r.density);
  r.tdn_chain_percent = chain_tdn_percent(r.density);
  r.tdn_percent = r.tdn_chain_percent / 1.0187;
  const double protein_of_gain = a.gain > 0 ? a.gain * 268 - 29.4 * r.gain : 0;
  const double efficiency = a.weight <= 300 ? 0.83 - 0.00114 * a.weight : 0.492;
  r.mp_g = 3.8 * size + a.milk * 34 / 0.65 + pregnancy_mp(a.birth_weight, a.days_pregnant) +
           protein_of_gain / efficiency;
  r.cp_percent = r.mp_g / 0.67 / r.dmi / 10;
  const double late = a.late_pregnancy ? a.birth_weight / 90 : 0;
  r.ca_percent = (0.0154 * a.weight + 1.23 * a.milk + 0.071 * protein_of_gain + 13.7 * late) / 0.5 /
                 r.dmi / 10;
  r.p_percent =
      (0.016 * a.weight + 0.95 * a.milk + 0.039 * protein_of_gain + 7.6 * late) / 0.68 / r.dmi / 10;
  return r;
}

// The settings of the tables: birth weight 0.0645 x mature weight, calving on day 282, the row of
// month m on day 30.5 m; the calf weaned after month 6, the cow bred by month 3.

inline Animal mature_cow(double weight_lb, double peak_milk_lb, int month) {
  Animal a;
  a.weight = a.mature_weight = weight_lb * lb;
  if (month <= 6) a.milk = milk_kg(peak_milk_lb * lb, 30.5 * month);
  a.maintenance_factor = month <= 6 ? 1.2 : 1;
  a.birth_weight = 0.0645 * a.mature_weight;
  a.days_pregnant = 282 - (12 - month) * 30.5;
  a.late_pregnancy = month >= 10;
  a.intake_constant = month < 3 ? 0.03840 : 0.04631;
  return a;
}

/// 80 % of mature weight at her first calving, 92 % a year on; 74 % of the mature peak milk.
inline Animal first_calf_heifer(double mature_weight_lb, double mature_peak_milk_lb, int month) {
  Animal a = mature_cow(mature_weight_lb, 0.74 * mature_peak_milk_lb, month);
  a.weight = a.mature_weight * (0.80 + 0.01 * month);
  a.gain = a.mature_weight * 0.12 / 366;
  if (month <= 6) a.milk = milk_kg(0.74 * mature_peak_milk_lb * lb, 30.4 * month);
  return a;
}

/// 60 % of mature weight at conception, 80 % 280 days on, without the conceptus.
inline Animal bred_heifer(double mature_weight_lb, int month) {
  Animal a;
  a.mature_weight = mature_weight_lb * lb;
  a.days_pregnant = 30.5 * month;
  a.gain = a.mature_weight * 0.20 / 280;
  a.weight = a.mature_weight * 0.60 + a.gain * a.days_pregnant;
  a.birth_weight = 0.0645 * a.mature_weight;
  a.late_pregnancy = month >= 7;
  a.yearling_intake = true;
  return a;
}

inline Animal growing(double mature_weight_lb, double weight_lb, double gain_lb, double factor) {
  Animal a;
  a.mature_weight = mature_weight_lb * lb;
  a.weight = weight_lb * lb;
  a.gain = gain_lb * lb;
  a.maintenance_factor = factor;
  a.yearling_intake = true;
  return a;
}

}  // namespace pluckbook::test::oracle
