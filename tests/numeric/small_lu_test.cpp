#include "numeric/small_lu.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace pluckbook {
namespace {

constexpr unsigned lu_seed = 41;
constexpr double last_digits = 3e-16;  // a rounding and a half

/// A matrix whose rows are in units up to a billion apart.
Eigen::MatrixXd some_matrix(int size, std::mt19937& random) {
  std::uniform_real_distribution<double> number(-1, 1), magnitude(-3, 6);
  Eigen::MatrixXd matrix(size, size);
  for (int i = 0; i < size; ++i) {
    const double unit = std::pow(10.0, magnitude(random));
    for (int j = 0; j < size; ++j) matrix(i, j) = unit * number(random);
  }
  return matrix;
}

Eigen::VectorXd row_weights(const Eigen::MatrixXd& matrix) {
  return matrix.rowwise().lpNorm<Eigen::Infinity>().cwiseInverse();
}

/// The largest part of right - matrix * z, each row by its size; reckoned more finely than solved.
double left_over(const Eigen::MatrixXd& matrix, const Eigen::VectorXd& z,
                 const Eigen::VectorXd& right) {
  using Fine = Eigen::Matrix<long double, Eigen::Dynamic, 1>;
  const auto fine = matrix.cast<long double>();
  const Fine left = right.cast<long double>() - fine * z.cast<long double>();
  const Fine size = fine.cwiseAbs() * z.cast<long double>().cwiseAbs();
  return static_cast<double>(left.cwiseAbs().cwiseQuotient(size).maxCoeff());
}

TEST(SmallLu, SolvesRowsInAnyUnitsToTheLastDigits) {
  SCOPED_TRACE(lu_seed);
  std::mt19937 random(lu_seed);
  SmallLu lu;  // one for all: nothing of an earlier matrix may stay
  lu.make_room(30);
  for (int k = 0; k < 300; ++k) {
    const int size = 1 + k % 30;
    const Eigen::MatrixXd matrix = some_matrix(size, random);
    const Eigen::VectorXd right = matrix * Eigen::VectorXd::LinSpaced(size, 1, 2);
    lu.start(size) = matrix;
    ASSERT_TRUE(lu.factor(row_weights(matrix)));
    Eigen::VectorXd z = right, t = right;
    lu.solve(z);
    EXPECT_LT(left_over(matrix, z, right), last_digits);
    lu.solve_transposed(t);
    EXPECT_LT(left_over(matrix.transpose(), t, right), last_digits);
  }
}

TEST(SmallLu, SaysOfASingularMatrixThatItIs) {
  SmallLu lu;
  lu.make_room(3);
  lu.start(2) << 1, 2, 2, 4;
  EXPECT_FALSE(lu.factor(Eigen::Vector2d(0.5, 0.25)));
  lu.start(2) << 0, 2, 2, 0;
  EXPECT_TRUE(lu.factor(Eigen::Vector2d(0.5, 0.5)));
}

TEST(SmallLu, NothingAtAllIsSolvedByNothing) {
  SmallLu lu;
  lu.make_room(0);
  lu.start(0);
  Eigen::VectorXd none(0);
  EXPECT_TRUE(lu.factor(none));
  lu.solve(none);
  EXPECT_EQ(none.size(), 0);
}

}  // namespace
}  // namespace pluckbook
