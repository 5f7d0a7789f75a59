// series.h - the diet of one pasture through the seasons: CP and TDN between and beyond its bags.
// A Gaussian process on log CP and logit TDN around the published curve of the forage class.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "book/records.h"
#include "forage/footing.h"
#include "numeric/gaussian_process.h"
#include "numeric/interpolation.h"
#include "published/forage_classes.h"

namespace pluckbook {

/// log for CP, logit for TDN, and back.
double to_scale(DietNutrient nutrient, Share value);
Share from_scale(DietNutrient nutrient, double scaled);

/// A bag and what the series made of it.
struct BagReading {
  const Bag* bag = nullptr;  // into the book the series was built from
  bool used = false;
  std::string why_not;  // "clipped: stock select better than the sward", "no result yet", ...
  std::vector<FootedResult> results;  // those that could be put on dry matter
  std::vector<std::string> labs;      // of each of them, may be empty
  Problems problems;                  // of those that could not
};

struct DietPoint {
  Date date;
  Share median, low, high;  // low and high: the 80 % range of the pasture's own diet
};

// A figure of an older bag no longer speaks for today's grass (judgement: diets are sampled every
// two to eight weeks).
inline constexpr long figure_days = 60;

class DietSeries {
 public:
  /// The series of a pasture from a book as it is known (see as_of).
  /// Requires: `book` outlives the series.
  /// Fails: unknown forage class; a covariance that has no factor.
  static Result<DietSeries> of(const Book& book, const Pasture& pasture);

  const Pasture& pasture() const { return *pasture_; }
  const std::vector<BagReading>& bags() const { return bags_; }

  /// The class curve shifted by green-up, on its own (no bags).
  Share class_curve(DietNutrient nutrient, Date day) const;

  /// Median and 80 % range, a row a day.
  std::vector<DietPoint> days(DietNutrient nutrient, Date first, Date last) const;
  DietPoint on(DietNutrient nutrient, Date day) const;

  /// Straight lines and the monotone cubic between the used bags of the season (green-up to
  /// green-up) the day is in; nothing with no bag. Results of one day are averaged.
  std::optional<Share> linear(DietNutrient nutrient, Date day) const;
  std::optional<Share> cubic(DietNutrient nutrient, Date day) const;

  /// Joint draws of the diet, day by day: days x count, as fractions of dry matter. The seed
  /// decides the digits. CP and TDN of one draw share a common part, since they fall together
  /// (correlation 0.57, computed from published clips; see reference/seasonal_curves.yaml).
  struct Paths {
    Date first;
    Eigen::MatrixXd crude_protein, tdn;  // days x count
  };
  Paths paths(Date first, Date last, int count, std::uint64_t seed) const;

  /// How likely a value at least as far from what the series expects would have been, two-sided,
  /// with the error of one bag of so many stops included.
  double tail_probability(DietNutrient nutrient, Date day, Share value, int stops) const;

  /// The newest result plucked at most `figure_days` before the day: its fibre and minerals can
  /// still speak for the grass. nullptr when there is none.
  const FootedResult* newest_result(Date day) const;

  /// Posterior standard deviation on the scale, and what one more bag on `bag_day` would leave of
  /// it on `target` (for choosing the next sample).
  double sd_on(DietNutrient nutrient, Date day) const;
  double sd_after_bag(DietNutrient nutrient, Date target, Date bag_day, int stops) const;

 private:
  struct Asked {
    std::vector<TimePoint> when;
    Eigen::VectorXd prior;
  };

  DietSeries() = default;
  const GaussianProcess& model(DietNutrient nutrient) const {
    return models_[nutrient == DietNutrient::tdn ? 1 : 0];
  }
  TimePoint time_of(Date day) const;  // the year is the season's: that of its green-up
  double prior_mean(DietNutrient nutrient, Date day) const;
  Asked ask(DietNutrient nutrient, const std::vector<Date>& dates) const;
  std::vector<Observation> observations(DietNutrient nutrient) const;
  std::vector<Knot> season_knots(DietNutrient nutrient, Date day) const;

  const Pasture* pasture_ = nullptr;
  const ForageClass* forage_ = nullptr;
  std::vector<BagReading> bags_;
  std::vector<GaussianProcess> models_;  // crude protein, tdn
};

}  // namespace pluckbook
