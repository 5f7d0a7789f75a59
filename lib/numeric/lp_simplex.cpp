#include "numeric/lp_simplex.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace pluckbook {
namespace {

/// How much of a miss counts as none, by the size of the bound.
void give_at(const Eigen::VectorXd& bound, double tolerance, Eigen::VectorXd& give) {
  give = bound.unaryExpr(
      [&](double b) { return std::isfinite(b) ? tolerance * std::max(1.0, std::abs(b)) : 0; });
}

class Walker {
 public:
  Walker(LpDictionary& dictionary, double tolerance, LpWalkRoom& room)
      : dictionary_(dictionary), tolerance_(tolerance), room_(room) {
    give_at(dictionary.lower, tolerance, room.give_low);
    give_at(dictionary.upper, tolerance, room.give_high);
    room.missed.resize(dictionary.rows());
    room.gradient.resize(dictionary.columns());
    room.ahead.resize(static_cast<size_t>(dictionary.rows()));
  }

  LpWalk run();

 private:
  using Limit = LpWalkRoom::Limit;

  bool look_for_misses();
  void look_for_gradient(bool feasible);
  LpStep entering() const;
  Limit limit(int place, const LpStep& step) const;
  bool find_leaving(LpStep& step);
  bool prefer(int place, double rate, const LpStep& best, double size) const;
  Eigen::VectorXd missed_by_variable() const;

  LpDictionary& dictionary_;
  double tolerance_;
  LpWalkRoom& room_;
  bool careful_ = false;  // Bland's rule: the first of the eligible, which cannot cycle
};

bool Walker::look_for_misses() {
  bool feasible = true;
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const int k = dictionary_.basic[static_cast<size_t>(p)];
    const double value = dictionary_.value[k];
    const double low = dictionary_.lower[k];
    const double high = dictionary_.upper[k];
    room_.missed[p] = 0;
    if (value < low - room_.give_low[k]) room_.missed[p] = -1;
    if (value > high + room_.give_high[k]) room_.missed[p] = 1;
    feasible = feasible && room_.missed[p] == 0;
  }
  return feasible;
}

/// What one unit more of each nonbasic variable does to the misses, or to the cost.
void Walker::look_for_gradient(bool feasible) {
  const int m = dictionary_.rows();
  if (dictionary_.columns() == 0) return;  // Eigen may not be asked for a row of nothing
  if (feasible)
    room_.gradient = dictionary_.table.row(m).transpose();
  else
    room_.gradient.noalias() = dictionary_.table.topRows(m).transpose() * room_.missed;
}

LpStep Walker::entering() const {
  LpStep step;
  double best = tolerance_;
  int first = std::numeric_limits<int>::max();
  for (int q = 0; q < dictionary_.columns(); ++q) {
    const int k = dictionary_.nonbasic[static_cast<size_t>(q)];
    const double slope = room_.gradient[q];
    if (std::abs(slope) <= best || dictionary_.fixed(k)) continue;
    const double value = dictionary_.value[k];
    const bool can_move = slope < 0 ? value < dictionary_.upper[k] : value > dictionary_.lower[k];
    if (!can_move || (careful_ && k > first)) continue;
    step.entering = q;
    step.direction = slope < 0 ? 1 : -1;
    first = k;
    if (!careful_) best = std::abs(slope);
  }
  return step;
}

constexpr LpWalkRoom::Limit unlimited{no_bound, 0, false};

/// A basic variable within its bounds may go to the bound ahead; one outside may come to the
/// bound it misses, so that what is feasible stays so and the misses only become fewer.
Walker::Limit Walker::limit(int place, const LpStep& step) const {
  const double rate = step.direction * dictionary_.table(place, step.entering);
  const double missed = room_.missed[place];
  if (std::abs(rate) <= smallest_pivot || rate * missed > 0) return unlimited;
  const int k = dictionary_.basic[static_cast<size_t>(place)];
  const bool to_upper = missed == 0 ? rate > 0 : missed > 0;
  const double bound = to_upper ? dictionary_.upper[k] : dictionary_.lower[k];
  if (std::isinf(bound)) return unlimited;
  const double give = 0.1 * (to_upper ? room_.give_high[k] : room_.give_low[k]);
  const double room = (bound - dictionary_.value[k]) / rate;
  return {std::max(0.0, room), give / std::abs(rate), to_upper};
}

/// Of the bounds met at about the same time the largest pivot loses least to rounding.
bool Walker::find_leaving(LpStep& step) {
  const int k = dictionary_.nonbasic[static_cast<size_t>(step.entering)];
  const double across = dictionary_.upper[k] - dictionary_.lower[k];
  double reach = across;
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const Limit& ahead = room_.ahead[static_cast<size_t>(p)] = limit(p, step);
    reach = std::min(reach, ahead.room + (careful_ ? 0 : ahead.give));
  }
  if (std::isinf(reach)) return false;
  step.length = across;
  double size = 0;
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const Limit& ahead = room_.ahead[static_cast<size_t>(p)];
    if (ahead.room > reach) continue;
    const double rate = std::abs(dictionary_.table(p, step.entering));
    if (!prefer(p, rate, step, size)) continue;
    step.leaving = p;
    step.length = ahead.room;
    step.leaves_at_upper = ahead.at_upper;
    size = rate;
  }
  return true;
}

bool Walker::prefer(int place, double rate, const LpStep& best, double size) const {
  if (best.leaving < 0) return true;
  if (!careful_) return rate > size;
  return dictionary_.basic[static_cast<size_t>(place)] <
         dictionary_.basic[static_cast<size_t>(best.leaving)];
}

Eigen::VectorXd Walker::missed_by_variable() const {
  Eigen::VectorXd missed = Eigen::VectorXd::Zero(dictionary_.value.size());
  for (int p = 0; p < dictionary_.rows(); ++p) {
    missed[dictionary_.basic[static_cast<size_t>(p)]] = room_.missed[p];
  }
  return missed;
}

LpWalk Walker::run() {
  const int variables = dictionary_.rows() + dictionary_.columns();
  LpWalk result;
  int standing = 0;  // steps in a row that moved nothing
  for (const int most = 200 + 50 * variables; result.steps < most; ++result.steps) {
    const bool feasible = look_for_misses();
    look_for_gradient(feasible);
    LpStep step = entering();
    if (step.entering < 0) {
      result.end = feasible ? LpWalk::End::optimal : LpWalk::End::infeasible;
      if (!feasible) result.missed = missed_by_variable();
      return result;
    }
    if (!find_leaving(step)) {
      if (feasible) result.end = LpWalk::End::unbounded;
      result.ray = step;
      return result;
    }
    standing = step.length > tolerance_ ? 0 : standing + 1;
    careful_ = standing > variables;
    dictionary_.take(step);
  }
  return result;
}

}  // namespace

LpWalk walk(LpDictionary& dictionary, double tolerance, LpWalkRoom& room) {
  return Walker(dictionary, tolerance, room).run();
}

}  // namespace pluckbook
