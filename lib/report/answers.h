// answers.h - what the commands hand to the printers; the same value is printed as text or JSON.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "advice/outlook.h"
#include "cow/need.h"
#include "forage/series.h"

namespace pluckbook {

struct OutlookAnswer {
  OutlookSettings settings;
  std::vector<HerdOutlook> herds;
  std::optional<NextSample> next_sample;
  std::string first_feed = {};  // what to add where the book holds no feed to price
};

struct DietReading {
  DietPoint model;
  std::optional<Share> linear, cubic;
  Share class_curve;
};

struct NeedPoint {
  Date date;
  Share crude_protein, tdn;
};

struct DietAnswer {
  const DietSeries* series = nullptr;
  Date as_of, first, until;
  DietReading crude_protein, tdn;            // on as_of
  std::vector<DietPoint> cp_days, tdn_days;  // first to until
  std::string herd;                          // that grazes there, or empty
  std::vector<NeedPoint> need;               // of that herd
  std::vector<NutrientOutlook> outlook;      // of that herd
};

/// What `diet` says of a pasture; the herd is the first that grazes there on as_of. A need or an
/// outlook that cannot be had leaves its part out. An outlook that is at hand is taken where it is
/// of that herd and follows no move away. Requires: `series` is of `book` as known on
/// settings.as_of, and outlives the answer.
DietAnswer diet_answer(const Book& book, const DietSeries& series, const OutlookSettings& settings,
                       const HerdOutlook* at_hand = nullptr);

// Where in its year, or at which gain, an animal is asked about.
struct MonthSinceCalving {
  int month = 0;
};
struct MonthOfPregnancy {
  int month = 0;
};
struct DayOfPregnancy {
  double day = 0;
};
struct DailyGain {
  KgPerDay gain;
};
using NeedAt = std::variant<Date, MonthSinceCalving, MonthOfPregnancy, DayOfPregnancy, DailyGain>;

/// One line of `need`: a herd on a date, or a class of animal at a point.
struct NeedRow {
  NeedAt at;
  std::string stage;
  Need need;
  std::optional<Need> hardest_quarter;  // herds
};

struct NeedAnswer {
  std::string title;
  std::vector<NeedRow> rows;
};

}  // namespace pluckbook
