#include "cow/condition.h"

#include "numeric/bisection.h"
#include "published/condition.h"

namespace pluckbook {

namespace {

constexpr double thinnest = 1, fattest = 9;

}  // namespace

KgBody weight_at_score(KgBody at_5, double score) {
  const ReserveFigures& f = reserve_figures();
  return at_5 / (f.weight_at_0 - f.weight_fall * score);
}

Mcal reserves_at(KgBody at_5, double score) {
  const ReserveFigures& f = reserve_figures();
  const double fat = f.fat_step * score;
  const double protein = f.protein_at_0 - f.protein_fall * score;
  const double empty_body = f.empty_body * weight_at_score(at_5, score).value();
  return Mcal(empty_body * (f.fat_energy * fat + f.protein_energy * protein));
}

McalPerDay reserve_change(McalPerDay balance) {
  return balance < McalPerDay(0) ? balance / reserve_figures().diet_of_reserve : balance;
}

ConditionChange condition_change(KgBody at_5, double from, double to, McalPerDay balance) {
  ConditionChange change;
  change.energy = reserves_at(at_5, to) - reserves_at(at_5, from);
  change.reserves_per_day = reserve_change(balance);
  if (change.reserves_per_day == McalPerDay(0)) return change;
  const double days = change.energy.value() / change.reserves_per_day.value();
  if (days >= 0) change.days = days;
  return change;
}

double score_after(KgBody at_5, double score, McalPerDay balance, double days) {
  const Mcal wanted = reserves_at(at_5, score) + Mcal(reserve_change(balance).value() * days);
  return zero_of([&](double at) { return (reserves_at(at_5, at) - wanted).value(); }, thinnest,
                 fattest);
}

}  // namespace pluckbook
