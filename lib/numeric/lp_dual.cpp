#include "numeric/lp_dual.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {
namespace {

class DualWalker {
 public:
  DualWalker(LpDictionary& dictionary, double tolerance)
      : dictionary_(dictionary), tolerance_(tolerance) {}

  bool points_downhill() const;
  /// One step; false when nothing is missed, or no step can help.
  bool step();

 private:
  struct Miss {
    int place = -1;  // among the basic
    double by = 0;   // to the bound: above 0 where it must rise
  };

  Miss worst_miss() const;
  bool may_move(int nonbasic_place, double direction) const;
  double reduced_cost(int q) const { return dictionary_.table(dictionary_.rows(), q); }
  int entering_for(const Miss& miss) const;

  LpDictionary& dictionary_;
  double tolerance_;
};

bool DualWalker::may_move(int nonbasic_place, double direction) const {
  const int k = dictionary_.nonbasic[static_cast<size_t>(nonbasic_place)];
  if (dictionary_.fixed(k)) return false;
  return direction > 0 ? dictionary_.value[k] < dictionary_.upper[k]
                       : dictionary_.value[k] > dictionary_.lower[k];
}

bool DualWalker::points_downhill() const {
  for (int q = 0; q < dictionary_.columns(); ++q) {
    const double cost = reduced_cost(q);
    if (std::abs(cost) > tolerance_ && may_move(q, -cost)) return true;
  }
  return false;
}

DualWalker::Miss DualWalker::worst_miss() const {
  Miss worst;
  for (int p = 0; p < dictionary_.rows(); ++p) {
    const int k = dictionary_.basic[static_cast<size_t>(p)];
    const double value = dictionary_.value[k];
    const double bound = std::clamp(value, dictionary_.lower[k], dictionary_.upper[k]);
    const double by = bound - value;
    if (std::abs(by) <= std::abs(worst.by)) continue;
    if (std::abs(by) > tolerance_ * std::max(1.0, std::abs(bound))) worst = {p, by};
  }
  return worst;
}

/// Of those that move the missed one its way, the one that pays least for it: all reduced costs
/// keep their signs. Where two pay the same the larger pivot loses less to rounding.
int DualWalker::entering_for(const Miss& miss) const {
  int best = -1;
  double least = 0, size = 0;
  for (int q = 0; q < dictionary_.columns(); ++q) {
    const double rate = dictionary_.table(miss.place, q);
    const double pivot = std::abs(rate);
    if (pivot <= smallest_pivot || !may_move(q, rate * miss.by)) continue;
    const double paid = std::abs(reduced_cost(q)) / pivot;
    const bool cheaper = best < 0 || paid < least - tolerance_;
    if (!cheaper && (paid > least + tolerance_ || pivot <= size)) continue;
    best = q;
    least = paid;
    size = pivot;
  }
  return best;
}

bool DualWalker::step() {
  const Miss miss = worst_miss();
  if (miss.place < 0) return false;
  const int entering = entering_for(miss);
  if (entering < 0) return false;
  const double change = miss.by / dictionary_.table(miss.place, entering);
  dictionary_.take({entering, miss.place, change > 0 ? 1.0 : -1.0, std::abs(change), miss.by < 0});
  return true;
}

}  // namespace

void bring_within_bounds(LpDictionary& dictionary, double tolerance) {
  DualWalker walker(dictionary, tolerance);
  if (walker.points_downhill()) return;
  // It rarely takes more steps than there are rows; walk() cannot go round in a circle, this can.
  for (int most = 2 * (dictionary.rows() + dictionary.columns()); most > 0; --most)
    if (!walker.step()) return;
}

}  // namespace pluckbook
