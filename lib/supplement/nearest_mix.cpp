#include "supplement/nearest_mix.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "supplement/remedies.h"

namespace pluckbook {
namespace {

constexpr double no_limit = std::numeric_limits<double>::infinity();
constexpr double binding = 1e-7;

/// The model with a shortfall column for each need, weighed by the need, and no other cost.
LinearProgram elastic(const SupplementModel& model) {
  const LinearProgram& plain = model.program;
  const auto needs = std::count_if(model.limits.begin(), model.limits.end(),
                                   [](const Limit& l) { return l.kind == LimitKind::need; });
  const Eigen::Index m = plain.a.rows(), n = plain.a.cols();
  LinearProgram p = plain;
  p.a.conservativeResizeLike(Eigen::MatrixXd::Zero(m, n + needs));
  p.cost = p.lower = Eigen::VectorXd::Zero(n + needs);
  p.lower.head(n) = plain.lower;
  p.upper = Eigen::VectorXd::Constant(n + needs, no_limit);
  p.upper.head(n) = plain.upper;
  Eigen::Index column = n;
  for (Eigen::Index i = 0; i < m; ++i) {
    const auto row = static_cast<std::size_t>(i);
    if (model.limits[row].kind != LimitKind::need) continue;
    const double asked = plain.row_lower[i] + model.forage_alone[row];
    p.a(i, column) = 1;
    p.cost[column] = 1 / std::max(asked, std::abs(model.forage_alone[row]) + 1e-3);
    ++column;
  }
  return p;
}

/// The cheapest among the answers that miss no more than `shortfall`.
LinearProgram cheapest_of(const LinearProgram& misses, const SupplementModel& model,
                          double shortfall) {
  const Eigen::Index m = misses.a.rows(), n = misses.a.cols();
  LinearProgram p = misses;
  p.a.conservativeResize(m + 1, n);
  p.a.row(m) = misses.cost.transpose();
  p.row_lower.conservativeResize(m + 1);
  p.row_upper.conservativeResize(m + 1);
  p.row_lower[m] = -no_limit;
  p.row_upper[m] = shortfall * (1 + 1e-9) + 1e-9;
  p.cost.setZero();
  p.cost.head(model.program.cost.size()) = model.program.cost;
  return p;
}

double shortfall_without(LinearProgram p, const std::vector<double>& least, int row, int column) {
  if (row >= 0) {
    p.row_lower[row] = -no_limit;
    p.row_upper[row] = no_limit;
  }
  if (column >= 0) p.upper[column] = no_limit;
  const LeastAnswer relaxed = solve_with_least(p, least);
  if (relaxed.status != LpStatus::optimal) return no_limit;
  return relaxed.answer.objective;
}

struct Obstacle {
  std::string id, words;
  double left = 0;       // shortfall that would be left without it
  bool touched = false;  // by the answer
};

double room_of(const LinearProgram& p, const LpAnswer& at, int row) {
  const double level = at.row_level[row];
  return std::min(p.row_upper[row] - level, level - p.row_lower[row]) /
         std::max(1.0, std::abs(level));
}

/// Limits that may stand in the way: those the answer touches, and, where a label asks for a least
/// amount that another limit forbids, the others too.
std::vector<Obstacle> obstacles(const SupplementModel& model, const LinearProgram& p,
                                const LpAnswer& at) {
  const bool all_or_none = std::any_of(model.least_dm.begin(), model.least_dm.end(),
                                       [](double least) { return least > 0; });
  std::vector<Obstacle> all;
  for (std::size_t i = 0; i < model.limits.size(); ++i) {
    const int row = static_cast<int>(i);
    if (model.limits[i].kind == LimitKind::need || model.limits[i].kind == LimitKind::definition)
      continue;
    const bool touched = room_of(p, at, row) <= binding;
    if (touched || all_or_none)
      all.push_back({model.limits[i].id, model.limits[i].words,
                     shortfall_without(p, model.least_dm, row, -1), touched});
  }
  for (std::size_t j = 0; j < model.displacement.size(); ++j) {
    const int column = static_cast<int>(j);
    if (p.upper[column] <= 0 || std::isinf(p.upper[column])) continue;
    const bool touched = p.upper[column] - at.x[column] <= binding;
    if (touched || all_or_none)
      all.push_back({"label", model.upper_words[j],
                     shortfall_without(p, model.least_dm, -1, column), touched});
  }
  return all;
}

/// What stands in the way: the limit without which least would be missing; where none alone helps,
/// all that are touched.
void name_what_is_in_the_way(const SupplementModel& model, const LinearProgram& p,
                             NearestMix& nearest) {
  nearest.what_helps = remedy_for("");
  const auto all = obstacles(model, p, nearest.answer);
  const auto best = std::min_element(all.begin(), all.end(),
                                     [](const auto& a, const auto& b) { return a.left < b.left; });
  if (best == all.end()) return;
  std::vector<Obstacle> those{*best};
  if (best->left >= nearest.shortfall * (1 - 1e-6) - binding) {
    those.clear();
    std::copy_if(all.begin(), all.end(), std::back_inserter(those),
                 [](const Obstacle& each) { return each.touched; });
    if (those.size() < 2) return;  // not for a limit: the feeds bring no more of it
  }
  nearest.what_helps = remedy_for(those.front().id);
  for (const Obstacle& each : those)
    nearest.in_the_way += (nearest.in_the_way.empty() ? "" : "; ") + each.words;
}

std::vector<double> missing_of(const SupplementModel& model, const LpAnswer& answer) {
  std::vector<double> missing(model.limits.size(), 0);
  Eigen::Index column = model.program.a.cols();
  for (std::size_t i = 0; i < model.limits.size(); ++i)
    if (model.limits[i].kind == LimitKind::need) missing[i] = answer.x[column++];
  return missing;
}

}  // namespace

NearestMix nearest_mix(const SupplementModel& model) {
  const LinearProgram misses = elastic(model);
  const LeastAnswer least = solve_with_least(misses, model.least_dm);
  NearestMix nearest;
  nearest.status = least.status;
  if (least.status != LpStatus::optimal) return nearest;
  nearest.shortfall = least.answer.objective;
  const LeastAnswer cheap =
      solve_with_least(cheapest_of(misses, model, nearest.shortfall), model.least_dm);
  nearest.status = cheap.status;
  if (cheap.status != LpStatus::optimal) return nearest;
  nearest.answer = cheap.answer;
  nearest.missing = missing_of(model, cheap.answer);
  name_what_is_in_the_way(model, misses, nearest);
  return nearest;
}

}  // namespace pluckbook
