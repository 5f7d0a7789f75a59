// interpolation.h - curves through given points, for readers who want no model.
#pragma once

#include <span>
#include <vector>

namespace pluckbook {

struct Knot {
  double x, y;
};

/// Straight lines between the points; the nearest point's value outside them.
/// Requires: at least one knot, x ascending without repeats.
double linear_at(std::span<const Knot> knots, double x);

/// A cubic between the points that never overshoots them: monotone wherever the points are.
/// Outside them the nearest point's value.
/// Source: Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17:238-246; slopes by the weighted
///         harmonic mean of Fritsch and Butland 1984, SIAM J. Sci. Stat. Comput. 5:300-304.
class MonotoneCubic {
 public:
  /// Requires: at least one knot, x ascending without repeats.
  explicit MonotoneCubic(std::vector<Knot> knots);
  double at(double x) const;

 private:
  std::vector<Knot> knots_;
  std::vector<double> slopes_;
};

/// Inverse of the standard normal distribution, 0 < p < 1, to full double precision.
double normal_quantile(double p);
/// The standard normal distribution function.
double normal_cdf(double z);

}  // namespace pluckbook
