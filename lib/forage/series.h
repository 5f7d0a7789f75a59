// series.h - the diet of one pasture through the seasons: CP and TDN between and beyond its bags.
// A Gaussian process on log CP and logit TDN together, around the class curve of its forage.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <optional>
#include <vector>

#include "book/records.h"
#include "forage/bag_reading.h"
#include "forage/diet_prior.h"
#include "forage/footing.h"
#include "numeric/interpolation.h"
#include "numeric/markov_process.h"
#include "published/forage_classes.h"

namespace pluckbook {

struct DietPoint {
  Date date;
  Share median, low, high;  // low and high: the 80 % range of the pasture's own diet
};

/// When a year greened up, as the bags and a recorded date have it.
struct GreenUpEstimate {
  Date date, usual;
  double sd = 0;  // days
  bool recorded = false;
};

// A figure of an older bag no longer speaks for today's grass (judgement: diets are sampled every
// two to eight weeks).
inline constexpr long figure_days = 60;

class DietSeries {
 public:
  /// The series of a pasture from a book as it is known (see as_of), by the published model or the
  /// one its book refits (diet_refit.h).
  /// Requires: `book` outlives the series.
  /// Fails: unknown forage class; a covariance that has no factor.
  static Result<DietSeries> of(const Book& book, const Pasture& pasture);
  /// The same by a model already at hand.
  static Result<DietSeries> of(const Book& book, const Pasture& pasture, const DietModel& model);

  const Pasture& pasture() const { return *pasture_; }
  const std::vector<BagReading>& bags() const { return bags_; }
  const DietModel& model() const { return prior_.model(); }

  /// The class curve from the recorded or the usual green-up, on its own (no bags).
  Share class_curve(DietNutrient nutrient, Date day) const;

  /// The green-up that the grass of a day follows.
  GreenUpEstimate green_up(Date day) const;

  /// Median and 80 % range, a row a day.
  std::vector<DietPoint> days(DietNutrient nutrient, Date first, Date last) const;
  DietPoint on(DietNutrient nutrient, Date day) const;

  /// What the diet falls below in `share` of the outcomes, each nutrient taken alone.
  struct Both {
    Share crude_protein, tdn;
  };
  Both quantiles(Date day, double share) const;

  /// Straight lines and the monotone cubic between the used bags of the season (green-up to
  /// green-up) the day is in; nothing with no bag. Results of one day are averaged.
  std::optional<Share> linear(DietNutrient nutrient, Date day) const;
  std::optional<Share> cubic(DietNutrient nutrient, Date day) const;

  /// Joint draws of the diet, day by day: days x count, as fractions of dry matter. The seed
  /// decides the digits. CP and TDN of one draw fall together as the bags and the model say.
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

  DietSeries(const Pasture& pasture, DietPrior prior, std::vector<BagReading> bags,
             MarkovProcess process);
  void ask(Asked& asked, DietNutrient nutrient, const std::vector<Date>& dates) const;
  MarkovProcess::Marginals marginals(DietNutrient nutrient, const std::vector<Date>& dates) const;
  std::vector<Knot> season_knots(DietNutrient nutrient, Date day) const;

  const Pasture* pasture_;
  DietPrior prior_;
  std::vector<BagReading> bags_;
  MarkovProcess process_;  // series 0 log CP, series 1 logit TDN
};

}  // namespace pluckbook
