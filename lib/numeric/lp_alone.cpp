#include "numeric/lp_alone.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "numeric/lp_certificate.h"

namespace pluckbook {
namespace {

constexpr double cancelled = 1e-14;  // what is left of two numbers that are each other's opposite
constexpr double tolerance = 1e-11;  // bounds that cross by less touch; rows are scaled to 1

bool touch(double low, double high) {
  return low - high <= tolerance * std::max(1.0, std::abs(low));
}

double nearest_to_none(Interval room) {
  if (room.low > room.high) return room.low;  // they touch
  return std::clamp(0.0, room.low, room.high);
}

}  // namespace

Interval amounts_alone(const LinearProgram& program, ColumnIndex column) {
  const int j = index(column);
  Interval room{program.lower[j], program.upper[j]};
  const auto per_unit = program.a.col(j);
  for (int i = 0; i < per_unit.size(); ++i) {
    const double low = program.row_lower[i], high = program.row_upper[i];
    if (per_unit[i] == 0) {
      if (low > 0 || high < 0) return {no_bound, -no_bound};
      continue;
    }
    const double amount = 1 / per_unit[i];
    room.low = std::max(room.low, amount > 0 ? low * amount : high * amount);
    room.high = std::min(room.high, amount > 0 ? high * amount : low * amount);
  }
  return room;
}

bool costs_one(const LinearProgram& program) {
  const auto n = program.a.cols();
  return n >= 1 && n <= 3 && (program.cost.tail(n - 1).array() == 0).all();
}

void LpAlone::write_side(const LinearProgram& program, int row, double times, double bound) {
  if (std::isinf(bound)) return;
  Side side;
  for (int j = 0; j < program.a.cols(); ++j)
    side.coefficient[static_cast<size_t>(j)] = times * program.a(row, j);
  side.bound = times * bound;
  side.row = row;
  side.times = times;
  sides_.push_back(side);
}

/// Every row and every bound as sides, rows scaled to 1.
void LpAlone::write_sides(const LinearProgram& program) {
  sides_.clear();
  for (int i = 0; i < program.a.rows(); ++i) {
    write_side(program, i, row_weight_[i], program.row_lower[i]);
    write_side(program, i, -row_weight_[i], program.row_upper[i]);
  }
  for (int j = 0; j < program.a.cols(); ++j) {
    Side side;
    side.coefficient[static_cast<size_t>(j)] = 1;
    side.bound = program.lower[j];
    if (std::isfinite(side.bound)) sides_.push_back(side);
    side.coefficient[static_cast<size_t>(j)] = -1;
    side.bound = -program.upper[j];
    if (std::isfinite(side.bound)) sides_.push_back(side);
  }
}

/// A side that holds a column from below and one that holds it from above, so that it falls out.
int LpAlone::sum_of(int below, int above, int column) {
  const Side low = sides_[static_cast<size_t>(below)];
  const Side high = sides_[static_cast<size_t>(above)];
  Side sum;
  sum.below = below;
  sum.above = above;
  sum.times_below = 1 / low.coefficient[static_cast<size_t>(column)];
  sum.times_above = -1 / high.coefficient[static_cast<size_t>(column)];
  sum.bound = sum.times_below * low.bound + sum.times_above * high.bound;
  for (size_t k = 0; k < static_cast<size_t>(column); ++k) {
    const double from_low = sum.times_below * low.coefficient[k];
    const double from_high = sum.times_above * high.coefficient[k];
    const double size = std::abs(from_low) + std::abs(from_high);
    const double both = from_low + from_high;
    sum.coefficient[k] = std::abs(both) <= cancelled * size ? 0 : both;
  }
  sides_.push_back(sum);
  return static_cast<int>(sides_.size()) - 1;
}

void LpAlone::take_out(int column) {
  const auto c = static_cast<size_t>(column);
  std::vector<int>& left = standing_[c - 1];
  left.clear();
  for (const int low : standing_[c]) {
    const double from_below = sides_[static_cast<size_t>(low)].coefficient[c];
    if (from_below == 0) left.push_back(low);
    if (from_below <= 0) continue;
    for (const int high : standing_[c])
      if (sides_[static_cast<size_t>(high)].coefficient[c] < 0)
        left.push_back(sum_of(low, high, column));
  }
}

/// The columns before it are known.
LpAlone::Room LpAlone::room_for(int column) const {
  Room room{{-no_bound, no_bound}, -1, -1};
  for (const int s : standing_[static_cast<size_t>(column)]) {
    const Side& side = sides_[static_cast<size_t>(s)];
    const double coefficient = side.coefficient[static_cast<size_t>(column)];
    if (coefficient == 0) continue;
    double rest = side.bound;
    for (int k = 0; k < column; ++k)
      rest -= side.coefficient[static_cast<size_t>(k)] * answer_.x[k];
    const double end = rest / coefficient;
    if (coefficient > 0 && end > room.interval.low) room.interval.low = end, room.low_side = s;
    if (coefficient < 0 && end < room.interval.high) room.interval.high = end, room.high_side = s;
  }
  return room;
}

/// A side that asks something of nothing: one left without a column, or the two ends that cross.
std::optional<int> LpAlone::contradiction(const Room& room) {
  for (const int s : standing_[0]) {
    const Side& side = sides_[static_cast<size_t>(s)];
    if (side.coefficient[0] == 0 && !touch(side.bound, 0)) return s;
  }
  if (touch(room.interval.low, room.interval.high)) return std::nullopt;
  return sum_of(room.low_side, room.high_side, 0);
}

/// The price of a side is a price of the rows it is made of.
void LpAlone::add_price(int side, double price, Eigen::VectorXd& y) const {
  const Side& priced = sides_[static_cast<size_t>(side)];
  if (priced.row >= 0) y[priced.row] += price * priced.times;
  if (priced.below < 0) return;
  add_price(priced.below, price * priced.times_below, y);
  add_price(priced.above, price * priced.times_above, y);
}

bool LpAlone::proves_infeasible(const LinearProgram& program, int side) {
  answer_.status = LpStatus::infeasible;
  answer_.ray.setZero(program.a.rows());
  add_price(side, 1, answer_.ray);
  return farkas_margin(program, answer_.ray) > tolerance;
}

bool LpAlone::proves_optimal(const LinearProgram& program, const Room& room) {
  const double cost = program.cost[0];
  const auto [low, high] = room.interval;
  answer_.status = LpStatus::optimal;
  answer_.x[0] = cost > 0 ? low : cost < 0 ? high : nearest_to_none(room.interval);
  if (std::isinf(answer_.x[0])) return false;
  answer_.y.setZero(program.a.rows());
  const int side = cost > 0 ? room.low_side : room.high_side;
  if (cost != 0)
    add_price(side, cost / sides_[static_cast<size_t>(side)].coefficient[0], answer_.y);
  for (int j = 1; j < program.a.cols(); ++j) answer_.x[j] = nearest_to_none(room_for(j).interval);
  answer_.objective = program.cost.dot(answer_.x);
  levels_of(program, answer_.x, answer_.row_level);
  reduced_costs_of(program, answer_.y, answer_.d);
  answer_.certificate =
      certificate_of(program, row_weight_, {answer_.x, answer_.row_level, answer_.y, answer_.d});
  return worst_of(answer_.certificate) < believed;
}

bool LpAlone::proven(const LinearProgram& program) {
  answer_.basis = {};
  const int n = static_cast<int>(program.a.cols());
  weigh_rows(program, row_weight_);
  write_sides(program);
  std::vector<int>& all = standing_[static_cast<size_t>(n - 1)];
  all.resize(sides_.size());
  std::iota(all.begin(), all.end(), 0);
  for (int column = n - 1; column > 0; --column) take_out(column);
  answer_.x.setZero(n);
  const Room room = room_for(0);
  const auto side = contradiction(room);
  return side ? proves_infeasible(program, *side) : proves_optimal(program, room);
}

const LpAnswer& LpAlone::solve(const LinearProgram& program) {
  if (!proven(program)) answer_ = pluckbook::solve(program);
  return answer_;
}

}  // namespace pluckbook
