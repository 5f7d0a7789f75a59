// lp_ranging.cpp - how far one cost or one side may move before the basis stops being optimal.
// With z[basic] = table * z[nonbasic]:
//   a cost c_p of a basic variable adds table(p, q) to the reduced cost of every nonbasic q;
//   a side of a nonbasic row q adds table(p, q) to every basic variable p.
// A side stops at the other side of its row; the two sides of an equality move together.
#include <algorithm>
#include <cmath>

#include "numeric/linear_program.h"
#include "numeric/lp_certificate.h"
#include "numeric/lp_dictionary.h"

namespace pluckbook {
namespace {

constexpr double none = 1e-11;  // a coefficient below this is rounding: they are near 1

/// The change t that keeps value + t * rate within [low, high], added to what t may be so far.
void keep_within(Interval& change, double value, double rate, double low, double high) {
  const double to_low = std::min(0.0, low - value) / rate;
  const double to_high = std::max(0.0, high - value) / rate;
  change.low = std::max(change.low, std::min(to_low, to_high));
  change.high = std::min(change.high, std::max(to_low, to_high));
}

class Ranger {
 public:
  Ranger(const LinearProgram& program, const LpAnswer& answer)
      : program_(program), answer_(answer) {
    Eigen::VectorXd row_weight;
    weigh_rows(program, row_weight);
    dictionary_.begin(program, row_weight);
    dictionary_.enter(answer.basis);
  }
  LpRanging run() const;

 private:
  int columns() const { return dictionary_.columns(); }
  double unit(int k) const { return dictionary_.units.variable[k]; }
  bool rests_high(int k) const { return dictionary_.at_upper[static_cast<size_t>(k)] != 0; }
  /// The reduced cost of a variable, in the program's units.
  double slope(int k) const { return k < columns() ? answer_.d[k] : answer_.y[k - columns()]; }
  Interval sign_of(int nonbasic) const;
  Interval cost_of_basic(int place) const;
  Interval cost_of_nonbasic(int j) const;
  Interval side_of(int nonbasic_place) const;

  const LinearProgram& program_;
  const LpAnswer& answer_;
  LpDictionary dictionary_;
};

/// Which reduced costs keep a nonbasic variable where it rests.
Interval Ranger::sign_of(int k) const {
  if (dictionary_.fixed(k)) return {-no_bound, no_bound};
  const bool has_bound = std::isfinite(rests_high(k) ? dictionary_.upper[k] : dictionary_.lower[k]);
  if (!has_bound) return {0, 0};
  return rests_high(k) ? Interval{-no_bound, 0} : Interval{0, no_bound};
}

Interval Ranger::cost_of_nonbasic(int j) const {
  const Interval allowed = sign_of(j);
  const double rest = program_.cost[j] - answer_.d[j];  // the cost at which it would come in
  const double cost = program_.cost[j];
  return {std::min(cost, rest + allowed.low), std::max(cost, rest + allowed.high)};
}

Interval Ranger::cost_of_basic(int place) const {
  const int basic = dictionary_.basic[static_cast<size_t>(place)];
  Interval change{-no_bound, no_bound};
  for (int q = 0; q < columns(); ++q) {
    const int k = dictionary_.nonbasic[static_cast<size_t>(q)];
    const double inside = dictionary_.table(place, q);
    if (std::abs(inside) <= none || dictionary_.fixed(k)) continue;
    const Interval allowed = sign_of(k);
    keep_within(change, slope(k), inside * unit(basic) / unit(k), allowed.low, allowed.high);
  }
  return {program_.cost[basic] + change.low, program_.cost[basic] + change.high};
}

Interval Ranger::side_of(int nonbasic_place) const {
  const int n = columns();
  const int row = dictionary_.nonbasic[static_cast<size_t>(nonbasic_place)];
  Interval change{-no_bound, no_bound};
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const double inside = dictionary_.table(p, nonbasic_place);
    if (std::abs(inside) <= none) continue;
    const int k = dictionary_.basic[static_cast<size_t>(p)];
    const double value = k < n ? answer_.x[k] : answer_.row_level[k - n];
    const double low = k < n ? program_.lower[k] : program_.row_lower[k - n];
    const double high = k < n ? program_.upper[k] : program_.row_upper[k - n];
    keep_within(change, value, inside * unit(k) / unit(row), low, high);
  }
  const int i = row - n;
  const double lower = program_.row_lower[i];
  const double upper = program_.row_upper[i];
  if (lower == upper) return {lower + change.low, lower + change.high};  // both sides move
  if (rests_high(row)) return {std::max(lower, upper + change.low), upper + change.high};
  return {lower + change.low, std::min(upper, lower + change.high)};
}

LpRanging Ranger::run() const {
  const int n = columns();
  LpRanging result;
  result.cost.resize(static_cast<size_t>(n));
  result.rhs.resize(static_cast<size_t>(dictionary_.rows()));
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const int k = dictionary_.basic[static_cast<size_t>(p)];
    if (k < n) result.cost[static_cast<size_t>(k)] = cost_of_basic(p);
  }
  for (int q = 0; q < n; ++q) {
    const int k = dictionary_.nonbasic[static_cast<size_t>(q)];
    if (k < n) result.cost[static_cast<size_t>(k)] = cost_of_nonbasic(k);
    if (k >= n) result.rhs[static_cast<size_t>(k - n)] = side_of(q);
  }
  return result;
}

}  // namespace

LpRanging ranging(const LinearProgram& program, const LpAnswer& answer) {
  return Ranger(program, answer).run();
}

}  // namespace pluckbook
