// newsvendor.h - how much to order of something whose use is not known yet, from what a unit too
// few and a unit too many cost. Knows no cattle: demand is a set of equally likely outcomes.
#pragma once

#include <span>

namespace pluckbook {

/// Money per unit ordered too little and too much; both over 0.
struct OrderCosts {
  double too_little = 0, too_much = 0;
};

/// The share of outcomes an order should cover: too_little / (too_little + too_much).
/// Source: the newsvendor's critical ratio (Arrow, Harris and Marschak 1951, Econometrica 19:250;
///         recalled); tested against a search over all orders.
double critical_ratio(const OrderCosts& costs);

/// The smallest outcome that at least `share` of the outcomes do not exceed.
/// Requires: sorted, not empty, 0 <= share <= 1.
double covering(std::span<const double> sorted_outcomes, double share);

/// What an order is expected to cost on average beyond what is used, by its two sides.
struct OrderRisk {
  double too_little = 0, too_much = 0;  // money
  double sum() const { return too_little + too_much; }
};
OrderRisk risk_of(double order, std::span<const double> outcomes, const OrderCosts& costs);

}  // namespace pluckbook
