// lp_alone.h - a program in which one amount costs something and at most two beside it cost
// nothing: a feed priced alone. It needs no simplex. Each limit leaves the amount an interval, and
// the cheap end of what they leave together is the answer. A column that costs nothing is taken
// out first: every limit that holds it from below is added to every one that holds it from above
// (Fourier and Motzkin), so that what an interval came from is its own proof.
#pragma once

#include <Eigen/Core>
#include <array>
#include <optional>
#include <vector>

#include "numeric/linear_program.h"

namespace pluckbook {

/// The amounts of one column that its bounds and every row allow while all others stay at 0; low
/// above high when there are none. What it costs alone is the cost of the cheap end.
Interval amounts_alone(const LinearProgram& program, ColumnIndex column);

/// Whether LpAlone may be asked: one to three columns, of which only the first costs.
bool costs_one(const LinearProgram& program);

/// Keeps what it writes on from one program to the next.
class LpAlone {
 public:
  /// The same status and objective as solve() of linear_program.h, proven alike; asked of it where
  /// the proof fails. Of what costs nothing the least is taken. Has no basis: not for ranging, nor
  /// to start from.
  /// The answer stands until the next call.
  ///   Requires: costs_one(program).
  const LpAnswer& solve(const LinearProgram& program);

 private:
  static constexpr int most_columns = 3;

  /// coefficient . x >= bound: a side of a row, a bound of a column, or a sum of two such.
  struct Side {
    std::array<double, most_columns> coefficient{};
    double bound = 0;
    int row = -1;      // of a side of a row
    double times = 0;  // this much of the row: negative at its upper side
    int below = -1, above = -1;
    double times_below = 0, times_above = 0;  // of a sum
  };
  /// Where the sides leave a column room, and the sides that end it; -1 where none does.
  struct Room {
    Interval interval;
    int low_side = -1, high_side = -1;
  };

  void write_sides(const LinearProgram& program);
  void write_side(const LinearProgram& program, int row, double times, double bound);
  void take_out(int column);
  int sum_of(int below, int above, int column);
  Room room_for(int column) const;
  std::optional<int> contradiction(const Room& room);
  void add_price(int side, double price, Eigen::VectorXd& y) const;
  bool proves_infeasible(const LinearProgram& program, int side);
  bool proves_optimal(const LinearProgram& program, const Room& room);
  bool proven(const LinearProgram& program);

  std::vector<Side> sides_;
  std::array<std::vector<int>, most_columns> standing_;  // before the column was taken out
  Eigen::VectorXd row_weight_;
  LpAnswer answer_;
};

}  // namespace pluckbook
