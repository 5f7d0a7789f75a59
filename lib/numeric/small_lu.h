// small_lu.h - factors of a small square matrix, for the few rows that bind at a corner. Keeps its
// memory from one matrix to the next: a solver that asks every day must not ask for memory each
// time.
#pragma once

#include <Eigen/Core>
#include <vector>

namespace pluckbook {

class SmallLu {
 public:
  /// Room for matrices of up to `most` rows. Asks for memory only when it has less.
  void make_room(int most);

  /// The matrix to factor: `size` x `size`, filled by the caller.
  ///   Requires: size within the room.
  Eigen::Block<Eigen::MatrixXd> start(int size);

  /// Factors what start() was filled with. Of the pivots of a column the largest is taken, each
  /// weighed by its row's weight, so that rows may be in units of any size. False when singular.
  ///   weight: `size` values, one a row.
  bool factor(const Eigen::VectorXd& weight);

  /// Solves matrix * z = right, then once more for what rounding left of it.
  ///   right: `size` values or more, replaced by z.
  void solve(Eigen::VectorXd& right);
  /// The same of the transposed matrix.
  void solve_transposed(Eigen::VectorXd& right);

 private:
  void solve_once(Eigen::VectorXd& right);
  void solve_transposed_once(Eigen::VectorXd& right);

  int size_ = 0;
  Eigen::MatrixXd matrix_, factors_;  // factors: L below the diagonal, U on and above it
  std::vector<int> order_;            // row of the matrix in each row of the factors
  Eigen::VectorXd weight_, permuted_, left_;
};

}  // namespace pluckbook
