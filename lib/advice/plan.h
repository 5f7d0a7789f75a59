// plan.h - a season's feed: what to feed when, what that buys, what the season may ask for instead,
// and how much to order now.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "advice/condition_ahead.h"
#include "advice/schedule.h"
#include "numeric/newsvendor.h"

namespace pluckbook {

/// What a ton costs beyond its price when the order was wrong, as shares of its delivered price.
/// The defaults are assumed: a ton bought late in winter is dearer and hauled alone; one left over
/// is stored, loses, and ties up money until it is fed next year.
struct OrderTerms {
  double bought_late = 0.20;
  double left_over = 0.10;
  bool assumed = true;  // neither was given
};

/// One feed over the season, in equally likely outcomes, sorted; kilograms as bought for the herd.
struct FeedDemand {
  std::string feed;  // id
  FeedOffer offer;   // as quoted today
  std::vector<double> kg;
  double order_kg = 0;  // covers the critical ratio of the outcomes
  OrderRisk risk;       // money, expected, of that order
};

struct Plan {
  Schedule schedule;
  OrderTerms terms;
  double order_cover = 0;                   // the critical ratio
  std::vector<FeedDemand> demand;           // the feeds of the schedule, by id
  std::vector<double> trips;                // outcomes, sorted
  std::vector<double> trip_money;           // the same in money
  double beyond_reach = 0;                  // share of outcomes in which these feeds miss a need
  std::optional<ConditionAhead> condition;  // cows and heifers
};

struct PlanSettings {
  ScheduleSettings schedule;
  OrderTerms order;
  std::function<void(double share)> progress = [](double) {};  // told how much is done
};

/// The settings of a plan where nothing else is asked for: 300 outcomes.
PlanSettings usual_plan(Date as_of, Date until, double cover);

/// In every outcome each window is solved again, with the feeds of the schedule only: a rancher who
/// has ordered changes the amounts, not the feeds.
/// Fails: as schedule_for; a shortage and no feed that can be priced. Requires:
/// settings.schedule.windows.paths > 0.
Result<Plan> plan_for(const Book& book, const Herd& herd, const PlanSettings& settings);

}  // namespace pluckbook
