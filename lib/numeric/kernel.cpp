#include "numeric/kernel.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pluckbook {
namespace {

double square(double x) {
  return x * x;
}

/// The terms of k(a,b) before R.
struct Terms {
  double offset, season, year, wiggle, event, onset;
  double related() const { return offset + season + year + wiggle + event; }
};

Terms terms_of(const Kernel& k, const TimePoint& a, const TimePoint& b, const DayPair& days) {
  const Scales& x = k.of[static_cast<std::size_t>(a.series)];
  const Scales& y = k.of[static_cast<std::size_t>(b.series)];
  return {x.offset * y.offset,
          x.season * y.season * days.season,
          a.year == b.year ? x.year * y.year : 0,
          x.wiggle * y.wiggle * days.wiggle,
          a.event == b.event && a.event != 0 ? a.event_sd * b.event_sd : 0,
          a.onset_year == b.onset_year ? square(k.onset) * a.onset_slope * b.onset_slope : 0};
}

double relation(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  return a.series == b.series ? 1 : k.correlation;
}

}  // namespace

KernelVector free_parameters(const Kernel& k) {
  KernelVector free;
  Eigen::Index at = 0;
  for (const Scales& s : k.of)
    for (const double sd : {s.offset, s.season, s.year, s.wiggle}) free(at++) = std::log(sd);
  free.tail<4>() << std::log(k.season_length), std::log(k.wiggle_length), std::atanh(k.correlation),
      std::log(k.onset);
  return free;
}

Kernel kernel_of(const KernelVector& free) {
  const auto sd = [&](Eigen::Index at) { return std::exp(free(at)); };
  return {{Scales{sd(0), sd(1), sd(2), sd(3)}, Scales{sd(4), sd(5), sd(6), sd(7)}},
          sd(8),
          sd(9),
          std::tanh(free(10)),
          sd(11)};
}

DayPair day_pair(const Kernel& k, double day_a, double day_b) {
  const double apart = day_a - day_b;
  const double s = 2 * square(std::sin(std::numbers::pi * apart / days_per_year) / k.season_length);
  const double r = std::numbers::sqrt3 * std::abs(apart) / k.wiggle_length;
  const double season = std::exp(-s), fading = std::exp(-r);
  return {season, (1 + r) * fading, 2 * s * season, square(r) * fading};
}

double covariance(const Kernel& k, const TimePoint& a, const TimePoint& b, const DayPair& days) {
  const Terms t = terms_of(k, a, b, days);
  return relation(k, a, b) * t.related() + t.onset;
}

double covariance(const Kernel& k, const TimePoint& a, const TimePoint& b) {
  return covariance(k, a, b, day_pair(k, a.day, b.day));
}

KernelVector covariance_gradient(const Kernel& k, const TimePoint& a, const TimePoint& b,
                                 const DayPair& days) {
  const Terms t = terms_of(k, a, b, days);
  const double related = relation(k, a, b);
  const auto sd_product = [&](double Scales::*sd) {
    return related * k.of[static_cast<std::size_t>(a.series)].*sd *
           k.of[static_cast<std::size_t>(b.series)].*sd;
  };
  KernelVector gradient = KernelVector::Zero();
  for (const Eigen::Index series : {a.series, b.series})
    gradient.segment<4>(4 * series) +=
        related * Eigen::Vector4d(t.offset, t.season, t.year, t.wiggle);
  gradient(8) = sd_product(&Scales::season) * days.season_by_length;
  gradient(9) = sd_product(&Scales::wiggle) * days.wiggle_by_length;
  if (a.series != b.series) gradient(10) = (1 - square(k.correlation)) * t.related();
  gradient(11) = 2 * t.onset;
  return gradient;
}

bool have_days(std::span<const Observation> seen) {
  return std::all_of(seen.begin(), seen.end(),
                     [](const Observation& one) { return std::isfinite(one.when.day); });
}

double shared_covariance(const Observation& a, const Observation& b) {
  double sum = 0;
  for (const SharedError& x : a.shared)
    for (const SharedError& y : b.shared)
      if (x.source == y.source) sum += x.sd * y.sd;
  return sum;
}

}  // namespace pluckbook
