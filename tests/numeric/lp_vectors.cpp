// lp_vectors.cpp - runs the linear program against answers proven in rational arithmetic.
//
//   lp_vectors FILE     one program a line, answers with it; exit 0 when all agree, else 1
//
// Prints the largest deviation of each kind beside what is allowed. Standing of the vectors:
// computed (exact rational simplex on the decimals of the file, then the nearest double).
#include <algorithm>
#include <cmath>
#include <exception>
#include <fstream>
#include <iostream>
#include <limits>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "numeric/linear_program.h"

namespace pluckbook {
namespace {

using nlohmann::json;
constexpr double infinity = std::numeric_limits<double>::infinity();

Eigen::VectorXd vector_of(const json& list, double no_bound = 0) {
  Eigen::VectorXd v(static_cast<Eigen::Index>(list.size()));
  for (size_t k = 0; k < list.size(); ++k) {
    v[static_cast<Eigen::Index>(k)] = list[k].is_null() ? no_bound : list[k].get<double>();
  }
  return v;
}

LinearProgram program_of(const json& line) {
  LinearProgram p;
  p.a.resize(line["m"].get<int>(), line["n"].get<int>());
  for (int i = 0; i < p.a.rows(); ++i) {
    p.a.row(i) = vector_of(line["a"][static_cast<size_t>(i)]).transpose();
  }
  p.cost = vector_of(line["cost"]);
  p.lower = vector_of(line["lower"], -infinity);
  p.upper = vector_of(line["upper"], infinity);
  p.row_lower = vector_of(line["row_lower"], -infinity);
  p.row_upper = vector_of(line["row_upper"], infinity);
  return p;
}

/// The worst of one kind, where it was met, and what is allowed.
struct Worst {
  double allowed = 0;
  double deviation = 0;
  std::string where = "-";
};

class Report {
 public:
  void note(const std::string& kind, double allowed, double deviation, const std::string& where) {
    Worst& worst = kinds_.try_emplace(kind, Worst{allowed, 0, "-"}).first->second;
    if (std::isnan(deviation)) deviation = infinity;
    if (deviation <= worst.deviation) return;
    worst.deviation = deviation;
    worst.where = where;
  }
  bool print() const {
    bool all = true;
    for (const auto& [kind, worst] : kinds_) {
      const bool held = worst.deviation <= worst.allowed;
      all = all && held;
      std::cout << (held ? "ok   " : "FAIL ") << kind << ": largest " << worst.deviation
                << ", allowed " << worst.allowed << ", at " << worst.where << '\n';
    }
    return all;
  }

 private:
  std::map<std::string, Worst> kinds_;
};

/// Relative to the larger of 1 and the expected size; equal infinities agree.
double apart(double got, double expected) {
  if (got == expected) return 0;
  return std::abs(got - expected) / std::max(1.0, std::abs(expected));
}

double apart(const Eigen::VectorXd& got, const json& expected) {
  if (got.size() != std::ssize(expected)) return infinity;
  const Eigen::VectorXd wanted = vector_of(expected);
  double worst = 0;
  for (int k = 0; k < got.size(); ++k) worst = std::max(worst, apart(got[k], wanted[k]));
  return worst;
}

double apart(const Interval& got, const json& pair) {
  const double low = pair[0].is_null() ? -infinity : pair[0].get<double>();
  const double high = pair[1].is_null() ? infinity : pair[1].get<double>();
  return std::max(apart(got.low, low), apart(got.high, high));
}

void compare_ranges(const LpRanging& got, const json& answer, const std::string& id,
                    Report& report) {
  for (size_t j = 0; j < got.cost.size(); ++j) {
    report.note("cost range", 1e-7, apart(got.cost[j], answer["cost_range"][j]),
                id + " column " + std::to_string(j));
  }
  for (size_t i = 0; i < got.rhs.size(); ++i) {
    const json& expected = answer["rhs_range"][i];
    const bool both = got.rhs[i].has_value() && !expected.is_null();
    const bool neither = !got.rhs[i].has_value() && expected.is_null();
    const double deviation = both ? apart(*got.rhs[i], expected) : neither ? 0 : infinity;
    report.note("rhs range", 1e-7, deviation, id + " row " + std::to_string(i));
  }
}

void compare_optimal(const LinearProgram& program, const LpAnswer& got, const json& answer,
                     const std::string& id, Report& report) {
  const double objective = answer["objective"].get<double>();
  report.note("objective", 1e-9,
              std::abs(got.objective - objective) / std::max(0.001, std::abs(objective)), id);
  const LpCertificate c = certify(program, got.x, got.y);
  report.note("certificate: primal", 1e-9, c.primal_infeasibility, id);
  report.note("certificate: dual", 1e-9, c.dual_infeasibility, id);
  report.note("certificate: gap", 1e-9, c.gap, id);
  const bool x_unique = answer["x_unique"].get<bool>();
  const bool y_unique = answer["y_unique"].get<bool>();
  if (x_unique) report.note("x", 1e-7, apart(got.x, answer["x"]), id);
  if (x_unique) report.note("row level", 1e-7, apart(got.row_level, answer["row_level"]), id);
  if (y_unique) report.note("y", 1e-7, apart(got.y, answer["y"]), id);
  if (y_unique) report.note("d", 1e-7, apart(got.d, answer["d"]), id);
  if (x_unique && y_unique) compare_ranges(ranging(program, got), answer, id, report);
}

void compare(const json& line, Report& report) {
  const std::string id = line["id"].get<std::string>();
  const LinearProgram program = program_of(line);
  const json& answer = line["answer"];
  const bool feasible = answer["status"].get<std::string>() == "optimal";
  const LpAnswer got = solve(program);
  const bool agrees = got.status == (feasible ? LpStatus::optimal : LpStatus::infeasible);
  report.note("status (0 agrees, 1 does not)", 0, agrees ? 0 : 1, id);
  if (!agrees) return;
  if (feasible) return compare_optimal(program, got, answer, id, report);
  const double margin = farkas_margin(program, got.ray);
  report.note("infeasible proof (margin missing)", 0, margin > 0 ? 0 : 1 - margin, id);
}

int run(const std::string& file) {
  std::ifstream in(file);
  if (!in) {
    std::cerr << "lp_vectors: cannot read " << file << '\n';
    return 1;
  }
  Report report;
  int programs = 0;
  for (std::string text; std::getline(in, text);) {
    if (text.empty()) continue;
    compare(json::parse(text), report);
    ++programs;
  }
  std::cout << programs << " programs\n";
  return report.print() && programs > 0 ? 0 : 1;
}

}  // namespace
}  // namespace pluckbook

int main(int count, char** words) {
  if (count != 2) {
    std::cerr << "usage: lp_vectors FILE\n";
    return 1;
  }
  try {
    return pluckbook::run(words[1]);
  } catch (const std::exception& problem) {
    std::cerr << "lp_vectors: " << problem.what() << '\n';
    return 1;
  }
}
