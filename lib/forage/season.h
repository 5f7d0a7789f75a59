// season.h - a pasture's year runs from green-up to green-up, on either side of the equator and
// across New Year, and the usual course of the diet hangs on the days since.
#pragma once

#include "base/date.h"
#include "book/records.h"
#include "published/forage_classes.h"

namespace pluckbook {

struct GreenUp {
  int month = 1, day = 1;
};

/// The pasture's usual green-up, else its class's.
GreenUp green_up_of(const Pasture& pasture, const ForageClass& forage);

/// The last green-up on or before a day. Its year is the season's label.
Date season_start(GreenUp green_up, Date day);

/// The class's usual value so many days after green-up, on the nutrient's scale: straight lines on
/// that scale between the published knots, closing on itself after 365 days.
double curve_on_scale(const ForageClass& forage, DietNutrient nutrient, double days_after_green_up);

}  // namespace pluckbook
