#include "report/bill.h"
#include "report/json.h"

namespace pluckbook {
namespace {

Json in_hundredths(long hundredths, const std::string& unit) {
  return quantity(static_cast<double>(hundredths) / 100, unit);
}

Json score_or_null(const std::optional<double>& score) {
  return score ? quantity(*score, "score 1 to 9") : Json(nullptr);
}

Json group_json(const FedGroup& group, const Reader& reader) {
  const Bill bill = bill_of(group.schedule, reader);
  Json buy = Json::array();
  for (const FeedLine& line : bill.feeds)
    buy.push_back({{"feed", line.offer->id},
                   {"amount", in_hundredths(line.tons, ton_word(reader))},
                   {"cost", in_hundredths(line.cost(), reader.currency)}});
  long trips = 0;
  for (const TripLine& line : bill.trips) trips += line.trips;
  Json json = {{"herd", group.schedule.herd->id},
               {"head", group.schedule.herd->head},
               {"covers", group.schedule.within_reach()},
               {"buy", buy},
               {"trips", trips},
               {"cost", in_hundredths(bill.total(), reader.currency)}};
  json["score_now"] =
      score_or_null(group.condition ? std::optional(group.condition->now) : std::nullopt);
  json["score_at_end"] =
      score_or_null(group.condition ? std::optional(group.condition->fed) : std::nullopt);
  return json;
}

Json alternative_json(const Alternative& alternative, const Reader& reader) {
  Cents cost = 0;
  Json groups = Json::array();
  for (const FedGroup& group : alternative.groups) {
    cost += bill_of(group.schedule, reader).total();
    groups.push_back(group_json(group, reader));
  }
  Json json = {{"name", alternative.what_if->name},
               {"covers", alternative.covers()},
               {"cost", in_hundredths(cost, reader.currency)}};
  json["score_at_end"] = score_or_null(alternative.score_at_end());
  json["split_fed_alike"] = score_or_null(alternative.split_fed_alike);
  json["groups"] = groups;
  return json;
}

}  // namespace

Json to_json(const Comparison& comparison, const Reader& reader) {
  const WindowSettings& days = comparison.settings.windows;
  Json json = document("compare");
  json["herd"] = comparison.asked->herd;
  json["as_of"] = to_iso(days.as_of);
  json["until"] = to_iso(days.until);
  json["cover"] = quantity(days.cover * 100, "% of outcomes");
  json["ranked"] = Json::array();
  for (const Alternative& alternative : comparison.ranked)
    json["ranked"].push_back(alternative_json(alternative, reader));
  json["swaps"] = Json::array();
  for (const Swap& swap : comparison.swaps) {
    const std::string unit = reader.currency + "/" + swap.quote->unit;
    json["swaps"].push_back({{"first", comparison.ranked[0].what_if->name},
                             {"second", comparison.ranked[1].what_if->name},
                             {"feed", swap.feed},
                             {"quote", quantity(swap.quote->amount, unit)},
                             {"quote_at_swap", quantity(swap.amount, unit)}});
  }
  json["date_swaps"] = Json::array();
  for (const DateSwap& swap : comparison.date_swaps)
    json["date_swaps"].push_back({{"what_if", swap.what_if->name},
                                  {"of", swap.of == DateSwap::Of::move ? "move" : "weaning"},
                                  {"date", to_iso(swap.now)},
                                  {"date_at_swap", to_iso(swap.then)}});
  return json;
}

}  // namespace pluckbook
