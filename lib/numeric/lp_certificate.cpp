// Proofs multiplied out from the program and the answer alone.
#include "numeric/lp_certificate.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {
namespace {

double largest(const Eigen::VectorXd& v) {
  return v.size() == 0 ? 0 : v.cwiseAbs().maxCoeff();
}

/// How far `value` is outside, as a share of the bound when that is above 1.
double miss(double value, double lower, double upper, double weight) {
  if (value >= lower && value <= upper) return 0;
  if (std::isnan(value)) return no_bound;
  const double bound = value < lower ? lower : upper;
  return std::abs(value - bound) * weight / std::max(1.0, std::abs(bound) * weight);
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

double worst_of(const LpCertificate& certificate) {
  return std::max(
      {certificate.primal_infeasibility, certificate.dual_infeasibility, certificate.gap});
}

void weigh_rows(const LinearProgram& program, Eigen::VectorXd& weight) {
  weight.setZero(program.a.rows());
  for (int j = 0; j < program.a.cols(); ++j) weight = weight.cwiseMax(program.a.col(j).cwiseAbs());
  for (double& size : weight) size = size == 0 ? 1 : 1 / size;
}

void levels_of(const LinearProgram& program, const Eigen::VectorXd& x, Eigen::VectorXd& level) {
  level.setZero(program.a.rows());
  for (int j = 0; j < x.size(); ++j)
    if (x[j] != 0) level += x[j] * program.a.col(j);
}

void reduced_costs_of(const LinearProgram& program, const Eigen::VectorXd& y, Eigen::VectorXd& d) {
  d.resize(program.a.cols());
  for (int j = 0; j < d.size(); ++j) d[j] = program.cost[j] - program.a.col(j).dot(y);
}

LpCertificate certificate_of(const LinearProgram& program, const Eigen::VectorXd& row_weight,
                             const LpProof& proof) {
  LpCertificate result;
  const auto& [x, level, y, d] = proof;
  const double price_weight = 1 / std::max(1.0, largest(program.cost));
  double dual_objective = 0;
  for (int i = 0; i < y.size(); ++i) {
    const double weight = row_weight[i];
    const double missed = miss(level[i], program.row_lower[i], program.row_upper[i], weight);
    const Priced row = price(y[i], program.row_lower[i], program.row_upper[i]);
    result.primal_infeasibility = std::max(result.primal_infeasibility, missed);
    result.dual_infeasibility =
        std::max(result.dual_infeasibility, row.miss * price_weight / weight);
    dual_objective += row.adds;
  }
  for (int j = 0; j < x.size(); ++j) {
    const double missed = miss(x[j], program.lower[j], program.upper[j], 1);
    const Priced column = price(d[j], program.lower[j], program.upper[j]);
    result.primal_infeasibility = std::max(result.primal_infeasibility, missed);
    result.dual_infeasibility = std::max(result.dual_infeasibility, column.miss * price_weight);
    dual_objective += column.adds;
  }
  const double objective = program.cost.dot(x);
  result.gap = std::abs(objective - dual_objective) / std::max(1.0, std::abs(objective));
  return result;
}

LpCertificate certify(const LinearProgram& program, const Eigen::VectorXd& x,
                      const Eigen::VectorXd& y) {
  Eigen::VectorXd row_weight, level, d;
  weigh_rows(program, row_weight);
  levels_of(program, x, level);
  reduced_costs_of(program, y, d);
  return certificate_of(program, row_weight, {x, level, y, d});
}

double farkas_margin(const LinearProgram& program, const Eigen::VectorXd& ray) {
  const double crossing = std::max(largest_crossing(program.row_lower, program.row_upper),
                                   largest_crossing(program.lower, program.upper));
  if (crossing > 0) return crossing;
  double asked = 0;
  for (int i = 0; i < ray.size(); ++i) {
    if (ray[i] != 0) asked += ray[i] * (ray[i] > 0 ? program.row_lower[i] : program.row_upper[i]);
  }
  Eigen::VectorXd row_weight;
  weigh_rows(program, row_weight);
  const double strength = largest(ray.cwiseQuotient(row_weight));
  double reach = 0;
  for (int j = 0; j < program.a.cols(); ++j) {
    const double sum = program.a.col(j).dot(ray);
    const double bound = sum > 0 ? program.upper[j] : program.lower[j];
    // Products that cancel leave rounding behind, which must not be multiplied by infinity.
    const double rounding = 1e-14 * strength * largest(program.a.col(j).cwiseProduct(row_weight));
    if (std::isfinite(bound) ? sum != 0 : std::abs(sum) > rounding) reach += sum * bound;
  }
  return asked - reach;
}

}  // namespace pluckbook
