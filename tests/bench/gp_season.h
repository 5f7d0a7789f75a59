// gp_season.h - a season's bags as the benchmarks of the regression know them: drawn from the
// model, one every nine days, each with protein and TDN; 400 are ten years of them.
#pragma once

#include <vector>

#include "numeric/kernel.h"
#include "numeric/markov_process.h"
#include "numeric/random.h"

namespace pluckbook::bench {

/// About what is published for one forage class. Fits start here.
inline const Kernel kernel = {.of = {{{0.156, 0.1, 0.15, 0.2}, {0.17, 0.08, 0.12, 0.16}}},
                              .season_length = 1,
                              .wiggle_length = 85,
                              .correlation = 0.57,
                              .onset = 10};
/// What the bags were drawn from.
inline const Kernel truth = {.of = {{{0.22, 0.14, 0.1, 0.15}, {0.12, 0.11, 0.16, 0.2}}},
                             .season_length = 0.8,
                             .wiggle_length = 50,
                             .correlation = 0.7,
                             .onset = 6};

inline TimePoint point(double day, int series) {
  const int year = 2015 + static_cast<int>(day / days_per_year);
  // Protein falls faster than TDN with each day after green-up, and faster early in the year.
  const double season = day / days_per_year - (year - 2015);
  return {day, year, series, year, (series == 0 ? 0.008 : 0.005) * (1 - season)};
}

inline std::vector<TimePoint> points(double first, double apart, int count) {
  std::vector<TimePoint> all;
  for (int i = 0; i < count; ++i)
    for (const int series : {0, 1}) all.push_back(point(first + apart * i, series));
  return all;
}

inline std::vector<Observation> bags(int count) {
  const std::vector<TimePoint> when = points(0, 9, count);
  const auto size = static_cast<Eigen::Index>(when.size());
  const Eigen::MatrixXd drawn =
      MarkovProcess::condition(truth, {})->paths_at(when, Eigen::VectorXd::Zero(size), 1, 1);
  Random random(2);
  std::vector<Observation> seen;
  for (Eigen::Index i = 0; i < size; ++i) {
    const int source = 2 * static_cast<int>(i);  // own to each value, as a laboratory's error is
    seen.push_back({when[static_cast<std::size_t>(i)],
                    drawn(i, 0) + 0.08 * random.normal(),
                    0,
                    0.0012,
                    {{source, 0.04}, {source + 1, 0.06}}});
  }
  return seen;
}

}  // namespace pluckbook::bench
