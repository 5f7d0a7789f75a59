#include "numeric/newsvendor.h"

#include <algorithm>
#include <cmath>

namespace pluckbook {

double critical_ratio(const OrderCosts& costs) {
  return costs.too_little / (costs.too_little + costs.too_much);
}

double covering(std::span<const double> sorted_outcomes, double share) {
  const auto count = static_cast<double>(sorted_outcomes.size());
  // 0.9 of 10 outcomes are 9, though 0.9 * 10 may come out a hair above.
  const double rank = std::ceil(share * count - 1e-9);
  return sorted_outcomes[static_cast<std::size_t>(std::clamp(rank, 1.0, count)) - 1];
}

OrderRisk risk_of(double order, std::span<const double> outcomes, const OrderCosts& costs) {
  OrderRisk risk;
  for (const double used : outcomes) {
    risk.too_little += std::max(0.0, used - order) * costs.too_little;
    risk.too_much += std::max(0.0, order - used) * costs.too_much;
  }
  const auto count = static_cast<double>(outcomes.size());
  return {risk.too_little / count, risk.too_much / count};
}

}  // namespace pluckbook
