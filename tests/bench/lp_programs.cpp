// lp_programs.cpp - prints the programs that lp_bench times, one a line, for another solver.
//
//   lp_programs ROWS COLUMNS     the fields of tests/data/lp_vectors.jsonl, without answers
#include "bench/lp_programs.h"

#include <cstdlib>
#include <iostream>
#include <nlohmann/json.hpp>

namespace pluckbook {
namespace {

using nlohmann::json;

json list_of(const Eigen::VectorXd& numbers) {
  json list = json::array();
  for (const double number : numbers)
    list.push_back(std::isfinite(number) ? json(number) : json(nullptr));
  return list;
}

json line_of(const LinearProgram& p) {
  json a = json::array();
  for (int i = 0; i < p.a.rows(); ++i) a.push_back(list_of(p.a.row(i).transpose()));
  return {{"a", a},
          {"cost", list_of(p.cost)},
          {"lower", list_of(p.lower)},
          {"upper", list_of(p.upper)},
          {"row_lower", list_of(p.row_lower)},
          {"row_upper", list_of(p.row_upper)},
          {"objective", solve(p).objective}};
}

}  // namespace
}  // namespace pluckbook

int main(int count, char** words) {
  if (count != 3) {
    std::cerr << "usage: lp_programs ROWS COLUMNS\n";
    return 2;
  }
  for (const auto& program : pluckbook::programs_of(std::atoi(words[1]), std::atoi(words[2])))
    std::cout << pluckbook::line_of(program) << '\n';
}
