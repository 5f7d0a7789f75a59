// lp_certificate.h - the certificate's arithmetic on what has been multiplied out already.
#pragma once

#include <Eigen/Core>

#include "numeric/linear_program.h"

namespace pluckbook {

inline constexpr double believed = 1e-9;  // a certificate above this is not one

/// The largest of the three misses of a certificate.
double worst_of(const LpCertificate& certificate);

/// 1 / the largest coefficient of each row, 1 for a row without any: rows scaled to 1.
void weigh_rows(const LinearProgram& program, Eigen::VectorXd& weight);

/// level = a x, multiplied out column by column: most amounts are 0.
void levels_of(const LinearProgram& program, const Eigen::VectorXd& x, Eigen::VectorXd& level);

/// d = cost - y a.
void reduced_costs_of(const LinearProgram& program, const Eigen::VectorXd& y, Eigen::VectorXd& d);

/// An amount or a price with what the program multiplies out of all of them.
struct LpProof {
  const Eigen::VectorXd &x, &level;  // n, m
  const Eigen::VectorXd &y, &d;      // m, n
};

/// The certificate of a proof whose levels and reduced costs are the program's own.
LpCertificate certificate_of(const LinearProgram& program, const Eigen::VectorXd& row_weight,
                             const LpProof& proof);

}  // namespace pluckbook
