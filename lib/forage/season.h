// season.h - a pasture's year runs from green-up to green-up, on either side of the equator and
// across New Year, and the usual course of the diet hangs on the days since.
#pragma once

#include <vector>

#include "base/date.h"
#include "base/units.h"
#include "book/records.h"
#include "numeric/interpolation.h"
#include "published/forage_classes.h"

namespace pluckbook {

/// log for CP, logit for TDN, and back: the scales all of the diet's arithmetic is done on.
double to_scale(DietNutrient nutrient, Share value);
Share from_scale(DietNutrient nutrient, double scaled);

struct GreenUp {
  int month = 1, day = 1;
};

/// The pasture's usual green-up, else its class's.
GreenUp green_up_of(const Pasture& pasture, const ForageClass& forage);

/// The last green-up on or before a day. Its year is the season's label.
Date season_start(GreenUp green_up, Date day);

/// A class's usual course of one nutrient on its scale: straight lines on that scale between the
/// published knots, closing on itself after 365 days.
class ClassCurve {
 public:
  ClassCurve(const ForageClass& forage, DietNutrient nutrient);

  /// Any number of days, negative ones too.
  double at(double days_after_green_up) const;
  /// Over the year.
  double mean() const { return mean_; }
  /// The knot where it is lowest, in days after green-up.
  double lowest_day() const;

 private:
  std::vector<Knot> knots_;
  double mean_ = 0;
};

}  // namespace pluckbook
