#include "report/bill.h"
#include "report/feeding.h"
#include "report/json.h"

namespace pluckbook {
namespace {

Json in_tons(Hundredths amount, const Reader& reader) {
  return quantity(static_cast<double>(amount) / 100, ton_word(reader));
}

Json in_money(Cents cents, const Reader& reader) {
  return quantity(static_cast<double>(cents) / 100, reader.currency);
}

Json a_day(double kilograms, const Reader& reader) {
  return quantity(in_mass_unit(kilograms, reader), mass_unit(reader) + "/day");
}

Json mix_json(const FedWindow& fed, int head, const Reader& reader) {
  Json mix = Json::array();
  for (const MixPart& part : fed.mix.parts) {
    const FeedOffer& offer = fed.offers[part.offer];
    const double days = static_cast<double>(fed.window.days());
    mix.push_back(
        {{"feed", offer.id},
         {"as_fed", a_day(part.as_fed.value(), reader)},
         {"dry_matter", a_day(part.dry_matter.value(), reader)},
         {"feedings_per_week", offer.feed->self_fed ? 0 : fed.mix.feedings_per_week},
         {"bought", quantity(in_mass_unit(bought_per_day(offer, part, head) * days, reader),
                             mass_unit(reader))}});
  }
  return mix;
}

Json windows_json(const Schedule& schedule, const Reader& reader) {
  Json windows = Json::array();
  for (const FedWindow& fed : schedule.windows) {
    Json unmet = Json::array();
    for (const Unmet& one : fed.mix.unmet)
      unmet.push_back({{"limit", one.limit}, {"words", one.words}, {"in_the_way", one.in_the_way}});
    windows.push_back({{"from", to_iso(fed.window.first)},
                       {"to", to_iso(fed.window.last)},
                       {"pasture", fed.window.pasture->id},
                       {"mix", mix_json(fed, schedule.herd->head, reader)},
                       {"trips", fed.trips},
                       {"unmet", unmet}});
  }
  return windows;
}

/// The empty part of the last truck, paid beyond the price; null where freight goes by weight.
Json part_load_json(double kilograms, const FeedOffer& offer, const Reader& reader) {
  const std::optional<Haul> haul = haul_of(kilograms, offer);
  if (!haul) return nullptr;
  return {{"trucks", haul->trucks},
          {"a_truck", in_money(haul->each, reader)},
          {"adds", in_money(haul->empty_part, reader)}};
}

Json feed_line(const FeedLine& line, const Reader& reader) {
  return {{"feed", line.offer->id},
          {"amount", in_tons(line.tons, reader)},
          {"price", quantity(static_cast<double>(line.a_ton) / 100,
                             reader.currency + "/" + ton_word(reader))},
          {"cost", in_money(line.cost(), reader)},
          {"part_load", part_load_json(kilograms_of(line.tons, reader), *line.offer, reader)}};
}

Json feed_lines(const std::vector<FeedLine>& lines, const Reader& reader) {
  Json json = Json::array();
  for (const FeedLine& line : lines) json.push_back(feed_line(line, reader));
  return json;
}

Json months_json(const Bill& bill, const Reader& reader) {
  Json months = Json::array();
  for (const MonthLine& month : bill.months) {
    Json feeds = Json::array();
    for (std::size_t i = 0; i < month.tons.size(); ++i)
      feeds.push_back(
          {{"feed", bill.feeds[i].offer->id}, {"amount", in_tons(month.tons[i], reader)}});
    months.push_back({{"month", to_iso(month.first).substr(0, 7)},
                      {"feeds", feeds},
                      {"trips", month.trips},
                      {"cost", in_money(month.cost, reader)}});
  }
  return months;
}

Json outcomes_json(const Plan& plan, const Reader& reader) {
  Json outcomes = Json::array();
  for (const double share : outcomes_shown) {
    const OutcomeColumn column = outcome_at(plan, share, reader);
    outcomes.push_back({{"cover", quantity(share * 100, "% of outcomes")},
                        {"feeds", feed_lines(column.feeds, reader)},
                        {"trips", column.trips},
                        {"trip_cost", in_money(column.trip_cost, reader)},
                        {"cost", in_money(column.total(), reader)}});
  }
  return outcomes;
}

/// Truck loads; null where the quote does not say.
Json loads_json(double kilograms, const FeedOffer& offer) {
  const std::optional<double> load = load_of(offer);
  return load ? quantity(kilograms / *load, "loads") : Json(nullptr);
}

Json order_json(const Plan& plan, const Reader& reader) {
  Json feeds = Json::array();
  for (const FeedDemand& demand : plan.demand)
    feeds.push_back(
        {{"feed", demand.feed},
         {"amount", in_tons(hundredths_of_ton(demand.order_kg, reader), reader)},
         {"loads", loads_json(demand.order_kg, demand.offer)},
         {"part_load", part_load_json(demand.order_kg, demand.offer, reader)},
         {"expected_cost_too_little", in_money(to_cents(demand.risk.too_little), reader)},
         {"expected_cost_too_much", in_money(to_cents(demand.risk.too_much), reader)}});
  return {{"cover", quantity(plan.order_cover * 100, "% of outcomes")},
          {"late_costs", quantity(plan.terms.bought_late * 100, "% of price")},
          {"left_loses", quantity(plan.terms.left_over * 100, "% of price")},
          {"assumed", plan.terms.assumed},
          {"feeds", feeds}};
}

Json condition_json(const std::optional<ConditionAhead>& ahead) {
  if (!ahead) return nullptr;
  const auto score = [](double value) { return quantity(value, "score 1 to 9"); };
  Json json = {{"now", score(ahead->now)}};
  json["scored"] = ahead->scored ? Json(to_iso(*ahead->scored)) : Json(nullptr);
  json["fed"] = score(ahead->fed);
  json["unfed"] = score(ahead->unfed);
  json["unfed_low"] = score(ahead->unfed_low);
  json["unfed_high"] = score(ahead->unfed_high);
  return json;
}

const char* state_of(const Plan& plan) {
  if (!plan.schedule.within_reach()) return "out_of_reach";
  return plan.demand.empty() ? "none_needed" : "covered";
}

}  // namespace

Json to_json(const Plan& plan, const Reader& reader) {
  const Schedule& schedule = plan.schedule;
  const WindowSettings& days = schedule.settings.windows;
  const Bill bill = bill_of(schedule, reader);
  Json trips = Json::array();
  for (const TripLine& line : bill.trips)
    trips.push_back({{"pasture", line.pasture->id},
                     {"trips", line.trips},
                     {"each", in_money(line.each, reader)},
                     {"cost", in_money(line.cost(), reader)}});
  Json json = document("plan");
  json["herd"] = schedule.herd->id;
  json["head"] = schedule.herd->head;
  json["as_of"] = to_iso(days.as_of);
  json["until"] = to_iso(days.until);
  json["cover"] = quantity(days.cover * 100, "% of outcomes");
  json["change_every"] = quantity(days.change_every, "days");
  json["state"] = state_of(plan);
  json["windows"] = windows_json(schedule, reader);
  json["buy"] = feed_lines(bill.feeds, reader);
  json["trips"] = trips;
  json["cost"] = in_money(bill.total(), reader);
  json["months"] = months_json(bill, reader);
  json["outcomes"] = outcomes_json(plan, reader);
  json["beyond_reach"] = quantity(plan.beyond_reach * 100, "% of outcomes");
  json["order"] = order_json(plan, reader);
  json["condition"] = condition_json(plan.condition);
  json["cautions"] = schedule.cautions;
  json["notes"] = schedule.notes;
  return json;
}

}  // namespace pluckbook
