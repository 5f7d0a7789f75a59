// lp_glpk.h - the same program given to GLPK, as a second opinion and as a yardstick of speed.
#pragma once

#include <glpk.h>

#include <cmath>
#include <memory>
#include <vector>

#include "numeric/linear_program.h"

namespace pluckbook {

class Glpk {
 public:
  explicit Glpk(const LinearProgram& program) : problem_(glp_create_prob(), glp_delete_prob) {
    glp_term_out(GLP_OFF);
    const int m = static_cast<int>(program.a.rows());
    const int n = static_cast<int>(program.a.cols());
    glp_set_obj_dir(get(), GLP_MIN);
    glp_add_rows(get(), m);
    glp_add_cols(get(), n);
    for (int i = 0; i < m; ++i) {
      const double low = program.row_lower[i];
      const double high = program.row_upper[i];
      glp_set_row_bnds(get(), i + 1, kind(low, high), low, high);
    }
    for (int j = 0; j < n; ++j) {
      bound(j, program.lower[j], program.upper[j]);
      glp_set_obj_coef(get(), j + 1, program.cost[j]);
    }
    load(program.a);
  }

  void bound(int column, double low, double high) {
    glp_set_col_bnds(get(), column + 1, kind(low, high), low, high);
  }
  void price(const Eigen::VectorXd& cost) {
    for (int j = 0; j < cost.size(); ++j) glp_set_obj_coef(get(), j + 1, cost[j]);
  }
  /// The basis of an earlier solve of a program of the same shape.
  void start_at(const Glpk& earlier) {
    glp_prob* from = earlier.problem_.get();
    for (int i = 1; i <= glp_get_num_rows(from); ++i)
      glp_set_row_stat(get(), i, glp_get_row_stat(from, i));
    for (int j = 1; j <= glp_get_num_cols(from); ++j)
      glp_set_col_stat(get(), j, glp_get_col_stat(from, j));
  }
  void scale() { glp_scale_prob(get(), GLP_SF_AUTO); }
  void from_scratch() { glp_std_basis(get()); }

  LpStatus solve(int method, double tolerance) {
    glp_smcp how;
    glp_init_smcp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.meth = method;
    how.presolve = GLP_OFF;
    how.tol_bnd = how.tol_dj = tolerance;
    if (glp_simplex(get(), &how) != 0) return LpStatus::not_trusted;
    switch (glp_get_status(get())) {
      case GLP_OPT:
        return LpStatus::optimal;
      case GLP_NOFEAS:
        return LpStatus::infeasible;
      case GLP_UNBND:
        return LpStatus::unbounded;
      default:
        return LpStatus::not_trusted;
    }
  }
  double objective() const { return glp_get_obj_val(problem_.get()); }

  /// Every cost and every side, as glp_print_ranges does without the printing: nonbasic variables
  /// by the bound, basic ones by the coefficient. Returns something of all, so that it is done.
  double range_everything() {
    glp_factorize(get());
    const int m = glp_get_num_rows(get()), n = glp_get_num_cols(get());
    double low = 0, high = 0, low_objective = 0, high_objective = 0, seen = 0;
    int low_variable = 0, high_variable = 0;
    for (int k = 1; k <= m + n; ++k) {
      const int stat = k <= m ? glp_get_row_stat(get(), k) : glp_get_col_stat(get(), k - m);
      if (stat == GLP_BS) {
        glp_analyze_coef(get(), k, &low, &low_variable, &low_objective, &high, &high_variable,
                         &high_objective);
      } else {
        glp_analyze_bound(get(), k, &low, &low_variable, &high, &high_variable);
      }
      seen += low + high;
    }
    return seen;
  }

 private:
  glp_prob* get() { return problem_.get(); }

  static int kind(double low, double high) {
    if (std::isfinite(low) && std::isfinite(high)) return low == high ? GLP_FX : GLP_DB;
    if (std::isfinite(low)) return GLP_LO;
    return std::isfinite(high) ? GLP_UP : GLP_FR;
  }

  void load(const Eigen::MatrixXd& a) {
    std::vector<int> row{0}, column{0};  // GLPK counts from 1
    std::vector<double> coefficient{0};
    for (int j = 0; j < a.cols(); ++j) {
      for (int i = 0; i < a.rows(); ++i) {
        if (a(i, j) == 0) continue;
        row.push_back(i + 1);
        column.push_back(j + 1);
        coefficient.push_back(a(i, j));
      }
    }
    glp_load_matrix(get(), static_cast<int>(row.size()) - 1, row.data(), column.data(),
                    coefficient.data());
  }

  std::unique_ptr<glp_prob, decltype(&glp_delete_prob)> problem_;
};

}  // namespace pluckbook
