#include "advice/plan.h"

#include <algorithm>
#include <numeric>

namespace pluckbook {
namespace {

/// A window with the feeds of the schedule alone, and where each stands in the list of demands.
struct OrderedFeeds {
  std::vector<FeedOffer> offers;
  std::vector<std::size_t> place;
};

std::vector<FeedDemand> demands_of(const Schedule& schedule) {
  std::vector<FeedDemand> demands;
  for (const std::string& id : schedule.feeds()) {
    FeedDemand demand;
    demand.feed = id;
    for (const FeedOffer& offer : schedule.windows.front().offers)
      if (offer.id == id) demand.offer = offer;
    demand.kg.assign(static_cast<std::size_t>(schedule.settings.windows.paths), 0);
    demands.push_back(std::move(demand));
  }
  return demands;
}

OrderedFeeds ordered_in(const FedWindow& fed, const std::vector<FeedDemand>& demands) {
  OrderedFeeds ordered;
  for (std::size_t i = 0; i < demands.size(); ++i)
    for (const FeedOffer& offer : fed.offers)
      if (offer.id == demands[i].feed) {
        ordered.offers.push_back(offer);
        ordered.place.push_back(i);
      }
  return ordered;
}

/// What one window asks for in every outcome, added to the demands.
void add_window(const FedWindow& fed, Plan& plan, std::vector<char>& missed) {
  const FeedingWindow& window = fed.window;
  const Herd& herd = *plan.schedule.herd;
  const OrderedFeeds ordered = ordered_in(fed, plan.demand);
  for (std::size_t path = 0; path < window.paths.size(); ++path) {
    const FeedingDay day = day_in(window, herd, window.paths[path], plan.schedule.settings.fed);
    const Mix mix = cheapest_mix(day.grazing, ordered.offers);
    if (mix.status == MixStatus::out_of_reach) missed[path] = 1;
    const int trips = trips_in(mix, window.days());
    plan.trips[path] += trips;
    plan.trip_money[path] += trips * window.trip_per_head * herd.head;
    for (const MixPart& part : mix.parts)
      plan.demand[ordered.place[part.offer]].kg[path] +=
          bought_per_day(ordered.offers[part.offer], part, herd.head) *
          static_cast<double>(window.days());
  }
}

void set_order(const OrderTerms& terms, FeedDemand& demand) {
  const double price = demand.offer.cost->delivered().value();
  const OrderCosts costs{terms.bought_late * price, terms.left_over * price};
  demand.order_kg = covering(demand.kg, critical_ratio(costs));
  demand.risk = risk_of(demand.order_kg, demand.kg, costs);
}

}  // namespace

PlanSettings usual_plan(Date as_of, Date until, double cover) {
  constexpr int outcomes = 300;
  PlanSettings settings;
  settings.schedule.windows.as_of = as_of;
  settings.schedule.windows.until = until;
  settings.schedule.windows.cover = cover;
  settings.schedule.windows.paths = outcomes;
  return settings;
}

Result<Plan> plan_for(const Book& book, const Herd& herd, const PlanSettings& settings) {
  Result<Schedule> schedule = schedule_for(book, herd, settings.schedule);
  if (!schedule) return schedule.problems();
  if (!schedule->within_reach() && schedule->windows.front().offers.empty())
    return nothing_on_offer(book, settings.schedule.windows.as_of);
  Plan plan;
  plan.schedule = std::move(*schedule);
  plan.terms = settings.order;
  plan.order_cover = critical_ratio({plan.terms.bought_late, plan.terms.left_over});
  plan.demand = demands_of(plan.schedule);
  const auto paths = static_cast<std::size_t>(settings.schedule.windows.paths);
  plan.trips.assign(paths, 0);
  plan.trip_money.assign(paths, 0);
  std::vector<char> missed(paths, 0);
  const std::vector<FedWindow>& windows = plan.schedule.windows;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    add_window(windows[i], plan, missed);
    settings.progress(static_cast<double>(i + 1) / static_cast<double>(windows.size()));
  }
  plan.beyond_reach =
      std::accumulate(missed.begin(), missed.end(), 0.0) / static_cast<double>(paths);
  std::sort(plan.trips.begin(), plan.trips.end());
  std::sort(plan.trip_money.begin(), plan.trip_money.end());
  for (FeedDemand& demand : plan.demand) {
    std::sort(demand.kg.begin(), demand.kg.end());
    set_order(plan.terms, demand);
  }
  plan.condition = condition_ahead(book, plan.schedule);
  return plan;
}

}  // namespace pluckbook
