// lp_certificate.cpp - proofs multiplied out from the program and the answer alone.
#include <algorithm>
#include <cmath>

#include "numeric/linear_program.h"

namespace pluckbook {
namespace {

double largest(const Eigen::VectorXd& v) {
  return v.size() == 0 ? 0 : v.cwiseAbs().maxCoeff();
}

/// The largest coefficient of each row, 1 for a row without any.
Eigen::VectorXd row_sizes(const LinearProgram& program) {
  Eigen::VectorXd sizes = Eigen::VectorXd::Ones(program.a.rows());
  if (program.a.cols() > 0) sizes = program.a.rowwise().lpNorm<Eigen::Infinity>();
  return (sizes.array() == 0).select(1, sizes);
}

/// How far `value` is outside, as a share of the bound when that is above 1.
double miss(double value, double lower, double upper, double scale) {
  if (std::isnan(value)) return no_bound;
  const auto share = [&](double short_by, double bound) {
    return short_by <= 0 ? 0 : short_by * scale / std::max(1.0, std::abs(bound) * scale);
  };
  return std::max(share(lower - value, lower), share(value - upper, upper));
}

/// A price on a side, or a reduced cost at a bound. What it adds to the dual objective is
/// price * bound; with no bound on the side its sign asks for, the whole price is a miss.
struct Priced {
  double adds = 0;
  double miss = 0;
};

Priced price(double price, double lower, double upper) {
  if (std::isnan(price)) return {0, no_bound};
  if (price == 0) return {};
  const double bound = price > 0 ? lower : upper;
  if (!std::isfinite(bound)) return {0, std::abs(price)};
  return {price * bound, 0};
}

double largest_crossing(const Eigen::VectorXd& lower, const Eigen::VectorXd& upper) {
  return lower.size() == 0 ? -no_bound : (lower - upper).maxCoeff();
}

}  // namespace

LpCertificate certify(const LinearProgram& program, const Eigen::VectorXd& x,
                      const Eigen::VectorXd& y) {
  LpCertificate result;
  const Eigen::VectorXd level = program.a * x;
  const Eigen::VectorXd d = program.cost - program.a.transpose() * y;
  const double cost_size = std::max(1.0, largest(program.cost));
  const Eigen::VectorXd row_size = row_sizes(program);
  double dual_objective = 0;
  for (int i = 0; i < y.size(); ++i) {
    const double scale = 1 / row_size[i];
    const double missed = miss(level[i], program.row_lower[i], program.row_upper[i], scale);
    const Priced row = price(y[i], program.row_lower[i], program.row_upper[i]);
    result.primal_infeasibility = std::max(result.primal_infeasibility, missed);
    result.dual_infeasibility = std::max(result.dual_infeasibility, row.miss / (scale * cost_size));
    dual_objective += row.adds;
  }
  for (int j = 0; j < x.size(); ++j) {
    const double missed = miss(x[j], program.lower[j], program.upper[j], 1);
    const Priced column = price(d[j], program.lower[j], program.upper[j]);
    result.primal_infeasibility = std::max(result.primal_infeasibility, missed);
    result.dual_infeasibility = std::max(result.dual_infeasibility, column.miss / cost_size);
    dual_objective += column.adds;
  }
  const double objective = program.cost.dot(x);
  result.gap = std::abs(objective - dual_objective) / std::max(1.0, std::abs(objective));
  return result;
}

double farkas_margin(const LinearProgram& program, const Eigen::VectorXd& ray) {
  const double crossing = std::max(largest_crossing(program.row_lower, program.row_upper),
                                   largest_crossing(program.lower, program.upper));
  if (crossing > 0) return crossing;
  double asked = 0;
  for (int i = 0; i < ray.size(); ++i) {
    if (ray[i] != 0) asked += ray[i] * (ray[i] > 0 ? program.row_lower[i] : program.row_upper[i]);
  }
  const Eigen::VectorXd row_size = row_sizes(program);
  const double strength = largest(ray.cwiseProduct(row_size));
  double reach = 0;
  for (int j = 0; j < program.a.cols(); ++j) {
    const double sum = program.a.col(j).dot(ray);
    const double bound = sum > 0 ? program.upper[j] : program.lower[j];
    // Products that cancel leave rounding behind, which must not be multiplied by infinity.
    const double rounding = 1e-14 * strength * largest(program.a.col(j).cwiseQuotient(row_size));
    if (std::isfinite(bound) ? sum != 0 : std::abs(sum) > rounding) reach += sum * bound;
  }
  return asked - reach;
}

}  // namespace pluckbook
