// linear_features.h - the terms of a kernel that are straight lines in finitely many independent
// standard normal numbers: offset, season, year, onset, event, and errors shared across days. What
// is left of the kernel is the wiggle.
#pragma once

#include <Eigen/Core>
#include <map>
#include <set>
#include <span>

#include "numeric/kernel.h"

namespace pluckbook {

/// How a pair of independent standard normal numbers makes one series' part of a term.
Eigen::RowVector2d mixed(const Kernel& kernel, int series, double sd);

/// Its derivative by the free parameter of the correlation.
Eigen::RowVector2d mixed_by_correlation(const Kernel& kernel, int series,
                                        const Eigen::RowVector2d& pair);

class LinearFeatures {
 public:
  LinearFeatures(const Kernel& kernel, std::span<const Observation> seen,
                 const std::set<int>& sources);

  Eigen::Index count() const { return count_; }

  /// Makes room for years and events of these points; columns already there keep their place.
  void make_room_for(std::span<const TimePoint> points);

  /// One row a point, so that rows a and b have the inner product k(a,b) less the wiggle.
  Eigen::MatrixXd rows(std::span<const TimePoint> points) const;
  /// The same with the errors shared across days.
  Eigen::MatrixXd rows(std::span<const Observation> seen) const;

  /// Adds the derivatives by the kernel of a number whose derivatives by `rows`, which are these
  /// points', are `by_rows`; and by their onset slopes, one a point.
  void add_gradient(const Eigen::MatrixXd& rows, const Eigen::MatrixXd& by_rows,
                    std::span<const TimePoint> points, LikelihoodGradient& gradient) const;

  /// The column of a year's onset, in units of its sd; -1 where the year is unknown.
  Eigen::Index onset_column(int onset_year) const;

 private:
  void fill(Eigen::Ref<Eigen::RowVectorXd> row, const TimePoint& point) const;

  Kernel kernel_;
  Eigen::VectorXd harmonics_;  // amplitudes of the periodic term, from the constant on
  std::map<int, Eigen::Index> years_, onsets_, events_, sources_;
  Eigen::Index count_ = 0;
};

}  // namespace pluckbook
