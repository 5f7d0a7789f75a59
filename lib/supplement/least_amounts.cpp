#include "supplement/least_amounts.h"

#include <optional>

#include "numeric/lp_alone.h"
#include "numeric/lp_solver.h"

namespace pluckbook {
namespace {

constexpr double hair = 1e-9;  // kg: nearer than this to none, or to the least, is there

struct Branch {
  Eigen::VectorXd lower, upper;
};

/// A column that lies between none and its least amount.
std::optional<int> torn_column(const Eigen::VectorXd& x, const std::vector<double>& least) {
  for (std::size_t j = 0; j < least.size(); ++j) {
    const int column = static_cast<int>(j);
    if (x[column] > hair && x[column] < least[j] - hair) return column;
  }
  return std::nullopt;
}

void split(const Branch& branch, int column, double least, std::vector<Branch>& open) {
  Branch none = branch;
  none.upper[column] = 0;
  open.push_back(std::move(none));
  Branch enough = branch;
  enough.lower[column] = least;
  if (least <= enough.upper[column]) open.push_back(std::move(enough));
}

/// A feed alone needs no simplex.
class Relaxation {
 public:
  const LpAnswer& solve(const LinearProgram& program) {
    return costs_one(program) ? alone_.solve(program) : mix_.solve(program);
  }

 private:
  LpAlone alone_;
  LpSolver mix_;
};

}  // namespace

LeastAnswer solve_with_least(const LinearProgram& program, const std::vector<double>& least) {
  LeastAnswer best;
  Relaxation relaxation;
  LinearProgram branched = program;
  std::vector<Branch> open{{program.lower, program.upper}};
  while (!open.empty()) {
    const Branch branch = std::move(open.back());
    open.pop_back();
    branched.lower = branch.lower;
    branched.upper = branch.upper;
    const LpAnswer& answer = relaxation.solve(branched);
    if (answer.status == LpStatus::infeasible) continue;
    if (answer.status != LpStatus::optimal) return {LpStatus::not_trusted, answer};
    if (best.status == LpStatus::optimal && answer.objective >= best.answer.objective) continue;
    if (const auto column = torn_column(answer.x, least))
      split(branch, *column, least[static_cast<std::size_t>(*column)], open);
    else
      best = {LpStatus::optimal, answer};
  }
  return best;
}

}  // namespace pluckbook
