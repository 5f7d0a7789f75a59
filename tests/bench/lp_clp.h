// lp_clp.h - the same program given to CLP, as a yardstick of speed.
#pragma once

#include <ClpSimplex.hpp>
#include <CoinPackedMatrix.hpp>
#include <vector>

#include "numeric/linear_program.h"

namespace pluckbook {

class Clp {
 public:
  explicit Clp(const LinearProgram& program) {
    model_.setLogLevel(0);
    const CoinPackedMatrix matrix(true, static_cast<int>(program.a.rows()),
                                  static_cast<int>(program.a.cols()),
                                  static_cast<CoinBigIndex>(program.a.size()), program.a.data(),
                                  rows_of(program).data(), starts_of(program).data(), nullptr);
    model_.loadProblem(matrix, program.lower.data(), program.upper.data(), program.cost.data(),
                       program.row_lower.data(), program.row_upper.data());
  }

  /// Dual simplex from the slack basis. Returns whether it ended at an optimum.
  bool solve() {
    model_.dual();
    return model_.isProvenOptimal();
  }
  double objective() const { return model_.objectiveValue(); }

 private:
  // Column by column, nothing left out: these programs are dense.
  static std::vector<int> rows_of(const LinearProgram& program) {
    std::vector<int> rows(static_cast<std::size_t>(program.a.size()));
    for (std::size_t k = 0; k < rows.size(); ++k)
      rows[k] = static_cast<int>(k % static_cast<std::size_t>(program.a.rows()));
    return rows;
  }
  static std::vector<CoinBigIndex> starts_of(const LinearProgram& program) {
    std::vector<CoinBigIndex> starts;
    for (Eigen::Index j = 0; j <= program.a.cols(); ++j)
      starts.push_back(static_cast<CoinBigIndex>(j * program.a.rows()));
    return starts;
  }

  ClpSimplex model_;
};

}  // namespace pluckbook
