// feeding_day.h - one day of a herd on one diet, as the least-cost model needs it. What prices a
// day and what plans a season both stand on it.
#pragma once

#include <string>
#include <vector>

#include "base/date.h"
#include "book/records.h"
#include "cow/intake.h"
#include "forage/series.h"
#include "supplement/least_cost.h"

namespace pluckbook {

/// How much forage a cow on protein-poor grass is taken to eat while she is fed.
enum class FedIntake {
  held,       // what the grass alone lets her eat
  recovered,  // what she eats once the rumen has its 7 % protein (published rises: 10 to 50 %)
};

struct PricedGap {
  DietNutrient nutrient = DietNutrient::crude_protein;
  Balance balance;         // amounts per head and day at the cover
  Share diet, need_share;  // of dry matter
};

struct FeedingDay {
  Intake intake;                // by the leading rule, as FedIntake says
  KgDmPerDay intake_recovered;  // with protein met; equal to intake where protein does not limit
  std::vector<PricedGap> gaps;  // crude protein, TDN
  GrazingDay grazing;
};

/// What of a pasture's newest bag still speaks for its grass: fibre, fat and minerals; nullptr
/// where no bag is new enough.
using NewestFigures = const FootedResult*;

/// The diet that `cover` of the outcomes are better than, with the fibre of the newest bag.
Diet diet_at_cover(const DietSeries& series, NewestFigures newest, Date day, double cover);

/// What they eat of the forage by the leading rule while they are fed.
Intake fed_intake(const Herd& herd, const HerdNeed& need, const Diet& diet, FedIntake fed);

/// The day of a herd on a diet; `trip_cost_per_head` is money for one feeding trip.
FeedingDay feeding_day(const Herd& herd, const HerdNeed& need, const Diet& diet,
                       NewestFigures newest, FedIntake fed, double trip_cost_per_head);

/// The same where it is known what she eats, whatever the rules say.
FeedingDay feeding_day_on(const Herd& herd, const HerdNeed& need, const Diet& diet,
                          NewestFigures newest, KgDmPerDay eaten, double trip_cost_per_head);

/// The sulfate and solids of what they drink there, which count with what they eat.
void take_water_of(const Pasture& pasture, GrazingDay& day);

/// Money for one feeding trip to a pasture, for each head of the herd.
double trip_cost_per_head(const Book& book, const Pasture& pasture, const Herd& herd);

/// The feeds of the book that can be priced on a day, and notes on those that cannot.
struct OffersOnDay {
  std::vector<FeedOffer> offers;
  std::vector<std::string> notes;
};
OffersOnDay offers_on(const Book& book, Date day);

/// No feed of the book can be priced on that day, and what to write.
Problem nothing_on_offer(const Book& book, Date day);

}  // namespace pluckbook
