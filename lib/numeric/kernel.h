// kernel.h - how the values of two related series hang together over days and years, and how their
// measurements err. Knows no forage: values live on the scale the caller chose (log CP, logit TDN).
//
//   k(a,b) = R ( offset_a offset_b
//              + season_a season_b exp(-2 sin^2(pi (t_a - t_b) / 365.25) / season_length^2)
//              + year_a year_b [year_a = year_b]
//              + wiggle_a wiggle_b (1 + r) exp(-r)
//              + event_a event_b [event_a and event_b are one] )
//          + onset^2 slope_a slope_b [onset year_a = onset year_b]
//
//   r = sqrt(3) |t_a - t_b| / wiggle_length;  R = 1 within a series, `correlation` between the two.
#pragma once

#include <Eigen/Core>
#include <array>
#include <span>
#include <vector>

namespace pluckbook {

inline constexpr double days_per_year = 365.25;

/// Standard deviations of one series' terms, on its own scale.
struct Scales {
  double offset = 0;  // its level through all years
  double season = 0;  // its own seasonal shape
  double year = 0;    // level of one year
  double wiggle = 0;  // wandering within a year, Matern 3/2
};

/// Hyperparameters of two series at once. One series alone uses the first scales.
struct Kernel {
  std::array<Scales, 2> of;
  double season_length = 1;  // of the periodic term, no unit
  double wiggle_length = 1;  // days
  double correlation = 0;    // of each term between the series; the onset is one for both
  double onset = 0;          // days a year comes early or late: sd
};

/// Hyperparameters as free numbers: logarithms, and the inverse hyperbolic tangent of the
/// correlation. In order: the scales of series 0 as declared, those of series 1, season_length,
/// wiggle_length, correlation, onset.
inline constexpr int kernel_parameters = 12;
using KernelVector = Eigen::Matrix<double, kernel_parameters, 1>;
KernelVector free_parameters(const Kernel& kernel);
Kernel kernel_of(const KernelVector& free);

/// When, of which series, and how the value answers to a later onset of its year.
struct TimePoint {
  double day = 0;
  int year = 0;
  int series = 0;  // 0 or 1
  int onset_year = 0;
  double onset_slope = 0;  // change of the value by a day later
  int event = 0;           // that set a new level before it; 0: none
  double event_sd = 0;     // of that level
};

/// What of k(a,b) the days alone decide; of two pairs of the same days, once for both.
struct DayPair {
  double season, wiggle;                      // correlations
  double season_by_length, wiggle_by_length;  // their derivatives by the logarithm of each length
};
DayPair day_pair(const Kernel& kernel, double day_a, double day_b);

double covariance(const Kernel& kernel, const TimePoint& a, const TimePoint& b);
double covariance(const Kernel& kernel, const TimePoint& a, const TimePoint& b,
                  const DayPair& days);
/// Its derivatives by the free parameters.
KernelVector covariance_gradient(const Kernel& kernel, const TimePoint& a, const TimePoint& b,
                                 const DayPair& days);

/// An error that several observations have in common: all that name the source move together, each
/// by its own sd.
struct SharedError {
  int source = 0;
  double sd = 0;
};

struct Observation {
  TimePoint when;
  double value = 0;
  double prior_mean = 0;
  double noise_variance = 0;  // > 0, its own
  std::vector<SharedError> shared = {};
};

/// Whether every day is a number: others have no order.
bool have_days(std::span<const Observation> seen);

/// Covariance of the errors of two different observations.
double shared_covariance(const Observation& a, const Observation& b);

/// Derivatives of a log likelihood: by the kernel's free parameters, and by the prior mean and the
/// onset slope of each observation in the order given.
struct LikelihoodGradient {
  KernelVector kernel = KernelVector::Zero();
  Eigen::VectorXd prior_mean, onset_slope;
};

/// The posterior of the error-free curve at the points asked for.
struct Posterior {
  Eigen::VectorXd mean;        // m
  Eigen::MatrixXd covariance;  // m x m, symmetric
};

}  // namespace pluckbook
