// diet_prior.h - what is expected of a pasture's diet before its bags: the class curve, moved by
// the year's green-up, with how far years, pastures and weeks stray from it.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <vector>

#include "base/date.h"
#include "book/records.h"
#include "forage/season.h"
#include "numeric/kernel.h"
#include "published/forage_classes.h"

namespace pluckbook {

/// How a book's own bags changed what was published.
struct Refit {
  int bags = 0, seasons = 0;
};

struct DietModel {
  Kernel kernel;
  std::array<double, 2> level{0, 0};  // added to the class curve, on the scale
  std::array<double, 2> depth{1, 1};  // of its swing about its yearly mean
  std::optional<Refit> refit;         // none: as published
};

DietModel published_model(const ForageClass& forage);

/// A day before any bag, on the scale.
struct Expected {
  TimePoint when;
  double mean = 0;
  double swing = 0;  // how the mean grows with the model's depth
  double slope = 0;  // how when.onset_slope grows with it
};

Date date_of(const TimePoint& when);
DietNutrient nutrient_of(const TimePoint& when);

/// Days by which a year's green-up comes after the pasture's usual date.
struct OnsetPrior {
  double expected = 0;      // from a recorded date
  double share = 1;         // of the kernel's onset sd that is left unknown
  double turned_about = 0;  // where the curve's answer to it is taken as straight
  bool recorded = false;
};

/// The expectation of one pasture. A year's green-up enters as a straight line: the value answers
/// to a day's delay by the slope of the class curve across one sd on either side, taken about the
/// best estimate so far. Straight, because then it is one more normal term and everything stays
/// exact; about the estimate, because the curve bends. The years of green-up turn over where the
/// class curve is lowest: the grass that rises before the usual date belongs to the coming one.
class DietPrior {
 public:
  /// Reads the events recorded for the pasture in the book. A green-up moves the curve; rain, fire
  /// and frost widen it from their day until its lowest.
  DietPrior(const Book& book, const Pasture& pasture, const ForageClass& forage,
            const DietModel& model);

  const DietModel& model() const { return model_; }
  Expected on(DietNutrient nutrient, Date day) const;
  /// The class curve alone, from the recorded or the usual green-up.
  double class_curve(DietNutrient nutrient, Date day) const;

  int onset_year(Date day) const;
  Date usual_green_up(int year) const;
  OnsetPrior onset(int year) const;
  /// Takes the curve's answer to that year's green-up as straight about so many days late.
  void turn_about(int year, double days_late);

 private:
  double days_after(Date day) const;
  int event_before(Date day) const;

  GreenUp green_up_;
  DietModel model_;
  std::array<ClassCurve, 2> curves_;
  double turn_;  // days after green-up
  std::map<int, OnsetPrior> onsets_;
  std::vector<Event> events_;  // that set a new level
};

}  // namespace pluckbook
