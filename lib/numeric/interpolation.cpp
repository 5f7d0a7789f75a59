#include "numeric/interpolation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>

namespace pluckbook {
namespace {

// The first knot of the interval that holds x. Requires: first.x < x < last.x.
std::size_t interval_of(std::span<const Knot> knots, double x) {
  const auto above = std::upper_bound(knots.begin(), knots.end(), x,
                                      [](double v, const Knot& knot) { return v < knot.x; });
  return static_cast<std::size_t>(above - knots.begin()) - 1;
}

double secant(const Knot& a, const Knot& b) {
  return (b.y - a.y) / (b.x - a.x);
}

// Zero at a peak or trough; else the harmonic mean of both secants, the shorter interval
// weighing more. It never exceeds three times the flatter one, which keeps the cubic monotone.
double inner_slope(const Knot& a, const Knot& b, const Knot& c) {
  const double before = secant(a, b), after = secant(b, c);
  if (before * after <= 0) return 0;
  const double weight = (1 + (c.x - b.x) / (c.x - a.x)) / 3;
  return 1 / (weight / before + (1 - weight) / after);
}

// The slope at `end` of the parabola through three knots, cut back where it would overshoot.
double end_slope(const Knot& end, const Knot& next, const Knot& third) {
  const double near = secant(end, next), far = secant(next, third);
  const double slope = near + (near - far) * (next.x - end.x) / (third.x - end.x);
  if (slope * near <= 0) return 0;
  if (near * far < 0 && std::abs(slope) > 3 * std::abs(near)) return 3 * near;
  return slope;
}

// c[0] + c[1] x + ... + c[7] x^7
double polynomial(const std::array<double, 8>& c, double x) {
  double sum = 0;
  for (auto i = c.rbegin(); i != c.rend(); ++i) sum = sum * x + *i;
  return sum;
}

struct Rational {
  std::array<double, 8> above, below;
  double at(double x) const { return polynomial(above, x) / polynomial(below, x); }
};

// Wichura 1988, Applied Statistics 37:477-484, algorithm AS 241, routine PPND16 (about 1 part in
// 1e16). Coefficients recalled; the test inverts them against the distribution function.
constexpr Rational middle{
    {3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3,
     1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
     3.3430575583588128105e4, 2.5090809287301226727e3},
    {1.0, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
     2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4,
     5.2264952788528545610e3}};
constexpr Rational tail{
    {1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0,
     3.64784832476320460504e0, 1.27045825245236838258e0, 2.41780725177450611770e-1,
     2.27238449892691845833e-2, 7.74545014278341407640e-4},
    {1.0, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
     1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4,
     1.05075007164441684324e-9}};
constexpr Rational far_tail{
    {6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0,
     2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
     2.71155556874348757815e-5, 2.01033439929228813265e-7},
    {1.0, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
     7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7,
     2.04426310338993978564e-15}};

}  // namespace

double linear_at(std::span<const Knot> knots, double x) {
  if (x <= knots.front().x) return knots.front().y;
  if (x >= knots.back().x) return knots.back().y;
  const std::size_t i = interval_of(knots, x);
  const double t = (x - knots[i].x) / (knots[i + 1].x - knots[i].x);
  return (1 - t) * knots[i].y + t * knots[i + 1].y;
}

MonotoneCubic::MonotoneCubic(std::vector<Knot> knots)
    : knots_(std::move(knots)), slopes_(knots_.size(), 0.0) {
  const std::size_t n = knots_.size();
  if (n == 2) slopes_[0] = slopes_[1] = secant(knots_[0], knots_[1]);
  if (n < 3) return;
  slopes_[0] = end_slope(knots_[0], knots_[1], knots_[2]);
  slopes_[n - 1] = end_slope(knots_[n - 1], knots_[n - 2], knots_[n - 3]);
  for (std::size_t i = 1; i + 1 < n; ++i)
    slopes_[i] = inner_slope(knots_[i - 1], knots_[i], knots_[i + 1]);
}

double MonotoneCubic::at(double x) const {
  if (x <= knots_.front().x) return knots_.front().y;
  if (x >= knots_.back().x) return knots_.back().y;
  const std::size_t i = interval_of(knots_, x);
  const double h = knots_[i + 1].x - knots_[i].x;
  const double t = (x - knots_[i].x) / h, u = 1 - t;
  return u * u * ((1 + 2 * t) * knots_[i].y + t * h * slopes_[i]) +
         t * t * ((1 + 2 * u) * knots_[i + 1].y - u * h * slopes_[i + 1]);
}

double normal_quantile(double p) {
  const double q = p - 0.5;
  if (std::abs(q) <= 0.425) return q * middle.at(0.425 * 0.425 - q * q);
  const double r = std::sqrt(-std::log(q < 0 ? p : 1 - p));
  const double z = r <= 5 ? tail.at(r - 1.6) : far_tail.at(r - 5);
  return q < 0 ? -z : z;
}

double normal_cdf(double z) {
  return std::erfc(-z / std::numbers::sqrt2) / 2;
}

}  // namespace pluckbook
