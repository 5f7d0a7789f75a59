// lp_random.h - invented supplement-like programs for tests and benchmarks: needs to be met, limits
// not to be passed, feeds with a cost and sometimes a cap, rows in units a billion apart.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "numeric/linear_program.h"

namespace pluckbook {

enum class LpShape { plain, degenerate, infeasible };

class RandomPrograms {
 public:
  explicit RandomPrograms(unsigned seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  bool once_in(int times) { return whole(1, times) == 1; }

  /// Feasible by construction around a mix of one or a few feeds, except when asked not to be.
  LinearProgram program(int rows, int columns, LpShape shape) {
    LinearProgram p = feeds(rows, columns);
    const Eigen::VectorXd mix = some_mix(p);
    const Eigen::VectorXd level = p.a * mix;
    for (int i = 0; i < rows; ++i) set_sides(p, i, level[i], shape == LpShape::degenerate);
    if (shape == LpShape::degenerate) add_twists(p);
    if (shape == LpShape::infeasible) ask_too_much(p);
    rescale_rows(p);
    return p;
  }

  /// The same program a day later: every number has moved by up to a twentieth, as diet, needs and
  /// prices do; zeros stay zero, and no limit is tighter.
  LinearProgram next_day(LinearProgram program) {
    for (double& number : program.a.reshaped()) number *= between(0.95, 1.05);
    for (double& cost : program.cost) cost *= between(0.95, 1.05);
    for (double& side : program.row_lower) side *= between(0.95, 1);
    for (double& side : program.row_upper) side *= between(1, 1.05);
    return program;
  }

 private:
  static constexpr double infinity_ = std::numeric_limits<double>::infinity();

  LinearProgram feeds(int rows, int columns) {
    LinearProgram p;
    p.a = Eigen::MatrixXd::Zero(rows, columns);
    p.cost.resize(columns);
    p.lower = Eigen::VectorXd::Zero(columns);
    p.upper = Eigen::VectorXd::Constant(columns, infinity_);
    p.row_lower = Eigen::VectorXd::Constant(rows, -infinity_);
    p.row_upper = Eigen::VectorXd::Constant(rows, infinity_);
    for (int j = 0; j < columns; ++j) {
      p.cost[j] = between(0.05, 1.5);
      if (!once_in(4)) p.upper[j] = between(0.1, 5);
      for (int i = 0; i < rows; ++i) {
        if (!once_in(5)) p.a(i, j) = between(0, 1) * between(0, 1);
        if (once_in(15)) p.a(i, j) = -between(0, 0.3);  // ratios, as differences
      }
    }
    return p;
  }

  Eigen::VectorXd some_mix(const LinearProgram& p) {
    Eigen::VectorXd mix = Eigen::VectorXd::Zero(p.a.cols());
    const int feeds = once_in(3) ? 1 : 5;
    for (int k = 0; k < feeds; ++k) {
      const int j = whole(0, static_cast<int>(p.a.cols()) - 1);
      mix[j] = between(0.1, 0.9) * std::min(p.upper[j], 3.0);
    }
    return mix;
  }

  void set_sides(LinearProgram& p, int i, double level, bool tight) {
    const double room = tight && once_in(2) ? 0 : 0.3 * std::abs(level) + 0.01;
    const int kind = whole(0, 9);
    if (kind <= 6) p.row_lower[i] = level - between(0, 1) * room;
    if (kind >= 6) p.row_upper[i] = level + between(0, 1) * room;
    if (tight && kind == 0) p.row_upper[i] = p.row_lower[i] = level;
  }

  /// A row given twice, a feed given twice, an empty row, a feed for nothing, a fixed amount.
  void add_twists(LinearProgram& p) {
    const auto m = p.a.rows();
    const auto n = p.a.cols();
    p.a.row(1) = p.a.row(0);
    p.row_lower[1] = p.row_lower[0];
    p.row_upper[1] = p.row_upper[0];
    p.a.col(1) = p.a.col(0);
    p.cost[1] = p.cost[0];
    p.a.row(m - 1).setZero();
    p.row_lower[m - 1] = once_in(2) ? 0 : -1;
    p.row_upper[m - 1] = once_in(2) ? 0 : infinity_;
    p.cost[n - 1] = 0;
    p.upper[n - 2] = 0;
  }

  /// One need beyond what all feeds together reach, by 5 to 50 %.
  void ask_too_much(LinearProgram& p) {
    const int i = whole(0, static_cast<int>(p.a.rows()) - 1);
    double reach = 0;
    for (int j = 0; j < p.a.cols(); ++j) {
      if (!std::isfinite(p.upper[j])) p.a(i, j) = std::min(p.a(i, j), 0.0);
      if (p.a(i, j) > 0) reach += p.a(i, j) * p.upper[j];
    }
    p.row_lower[i] = reach * between(1.05, 1.5) + 0.01;
    p.row_upper[i] = infinity_;
  }

  void rescale_rows(LinearProgram& p) {
    for (int i = 0; i < p.a.rows(); ++i) {
      const double unit = std::pow(10.0, between(-3, 6));
      p.a.row(i) *= unit;
      p.row_lower[i] *= unit;
      p.row_upper[i] *= unit;
    }
  }

  std::mt19937 random_;
};

}  // namespace pluckbook
