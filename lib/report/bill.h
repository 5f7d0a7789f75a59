// bill.h - a schedule as an order form: tons to the hundredth, money to the cent, so that what is
// printed adds up to the cent. Every part of it is rounded once, here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/plan.h"
#include "report/shown.h"

namespace pluckbook {

using Cents = long;
using Hundredths = long;  // of a ton (2000 lb) or a tonne, as the reader counts

std::string ton_word(const Reader& reader);  // "ton" or "tonne"
Hundredths hundredths_of_ton(double kilograms, const Reader& reader);
Cents to_cents(double money);
/// "2.5 loads"; "" where its quote does not say the load.
std::string load_count(double kilograms, const FeedOffer& offer);
/// "2.5 loads of 25 tons": how many trucks bring it; "" where its quote does not say the load.
std::string loads_in_words(double kilograms, const FeedOffer& offer, const Reader& reader);
/// "25 tons", the load of its quote; "" where the quote does not say.
std::string load_in_words(const FeedOffer& offer, const Reader& reader);
double kilograms_of(Hundredths tons, const Reader& reader);
/// 123456 -> "1234.56".
std::string two_decimals(long hundredths);

/// How so much comes where freight goes by the mile. Prices count it as of full loads: the empty
/// part of the last truck is paid beyond them.
struct Haul {
  long trucks = 0;
  Cents each = 0, empty_part = 0;
};
/// Nothing where the quote's freight goes by weight, or none is.
std::optional<Haul> haul_of(double kilograms, const FeedOffer& offer);

struct FeedLine {
  const FeedOffer* offer = nullptr;  // into the schedule
  Hundredths tons = 0;
  Cents a_ton = 0;  // delivered
  Cents cost() const;
};

struct TripLine {
  const Pasture* pasture = nullptr;
  long trips = 0;
  Cents each = 0;
  Cents cost() const { return trips * each; }
};

struct MonthLine {
  Date first;                    // of the month
  std::vector<Hundredths> tons;  // one a feed line
  long trips = 0;
  Cents cost = 0;
};

struct Bill {
  std::vector<FeedLine> feeds;  // one for each feed and quote
  std::vector<TripLine> trips;  // one a pasture
  std::vector<MonthLine> months;
  Cents total() const;
};

/// Months are differences of rounded running sums, so their columns add up to the lines.
/// Requires: `schedule` outlives the bill.
Bill bill_of(const Schedule& schedule, const Reader& reader);

/// The shares of outcomes that a plan is shown for.
inline constexpr double outcomes_shown[] = {0.5, 0.8, 0.9};

/// What the season asks for in so many of the outcomes: each line at its own level, and the money
/// those lines cost together.
struct OutcomeColumn {
  double share = 0.5;
  std::vector<FeedLine> feeds;  // as plan.demand
  long trips = 0;
  Cents trip_cost = 0;
  Cents total() const;
};
OutcomeColumn outcome_at(const Plan& plan, double share, const Reader& reader);

}  // namespace pluckbook
