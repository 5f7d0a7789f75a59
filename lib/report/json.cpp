#include "report/json.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

#include "base/text.h"
#include "forage/method_shift.h"
#include "published/rules.h"
#include "report/json_parts.h"

namespace pluckbook {
namespace {

const char* const share_unit = "% of DM";

double ten_figures(double value) {
  if (!std::isfinite(value) || value == 0) return 0;
  return std::strtod(fmt::format("{:.9e}", value).c_str(), nullptr);
}

Json date_or_null(const std::optional<Date>& date) {
  if (!date) return nullptr;
  return to_iso(*date);
}

Json point(const DietPoint& diet) {
  return {{"median", number(in_percent(diet.median))},
          {"low", number(in_percent(diet.low))},
          {"high", number(in_percent(diet.high))},
          {"unit", share_unit}};
}

Json green_up_json(const GreenUpEstimate& green_up) {
  return {{"date", to_iso(green_up.date)},
          {"usual", to_iso(green_up.usual)},
          {"sd", quantity(green_up.sd, "days")},
          {"recorded", green_up.recorded}};
}

Json model_json(const DietModel& model) {
  if (!model.refit) return {{"refitted", false}};
  return {{"refitted", true}, {"bags", model.refit->bags}, {"seasons", model.refit->seasons}};
}

Json crossing(const Crossing& c) {
  return {{"median", date_or_null(c.median)},
          {"low", date_or_null(c.low)},
          {"high", date_or_null(c.high)},
          {"probability_by_horizon", number(c.probability_by_horizon)}};
}

Json mass_json(Kg mass, const Reader& reader) {
  return quantity(in_mass_unit(mass.value(), reader), mass_unit(reader));
}

Json degradable_json(const std::optional<DegradableOutlook>& rdp, const Reader& reader) {
  if (!rdp) return nullptr;
  return {{"share_of_protein", quantity(rdp->of_protein.value() * 100, "% of CP")},
          {"need_amount_now", amount(rdp->balance.need.value(), reader)},
          {"supply_now", amount(rdp->balance.supply.value(), reader)},
          {"state_amount", rdp->below_now() ? "below" : "above"},
          {"falls_below_amount", rdp->below_now() ? Json(nullptr) : crossing(rdp->falls_below)}};
}

Json moves_json(const std::vector<Whereabouts>& moves) {
  Json json = Json::array();
  for (const Whereabouts& next : moves)
    json.push_back({{"date", to_iso(next.move->date)}, {"pasture", next.pasture->id}});
  return json;
}

Json nutrient_json(const NutrientOutlook& n, const Reader& reader) {
  Json supply = amount(n.balance.supply.value(), reader);
  supply["low"] = number(in_mass_unit(n.supply_low.value(), reader));
  supply["high"] = number(in_mass_unit(n.supply_high.value(), reader));
  Json json = {{"nutrient", json_name(n.nutrient)},
               {"diet_now", point(n.diet_now)},
               {"need_now", share(n.need_now)},
               {"need_amount_now", amount(n.balance.need.value(), reader)},
               {"supply_now", supply},
               {"state", n.below_now ? "below" : "above"},
               {"state_amount", n.below_now_amount ? "below" : "above"},
               {"probability_below_now", number(n.probability_below_now)},
               {"below_since", date_or_null(n.below_since)}};
  json["recovers"] = crossing(n.recovers);
  json["waiting_a_week"] = {{"probability", number(n.waiting.probability)},
                            {"lacking", mass_json(n.waiting.lacking, reader)},
                            {"lacking_at_worst", mass_json(n.waiting.lacking_at_worst, reader)}};
  json["falls_below"] = n.below_now ? Json(nullptr) : crossing(n.falls_below);
  json["falls_below_amount"] = n.below_now_amount ? Json(nullptr) : crossing(n.falls_below_amount);
  json["notes"] = n.notes;
  return json;
}

Json need_json(const Need& need, const Reader& reader) {
  Json json = {{"stage", nullptr},
               {"dmi", amount(need.intake.value(), reader)},
               {"tdn_share", share(need.tdn)},
               {"tdn_amount", amount(need.tdn_amount().value(), reader)},
               {"crude_protein_share", share(need.crude_protein)},
               {"crude_protein_share_table", share(need.crude_protein_table)},
               {"crude_protein_amount", amount(need.crude_protein_amount().value(), reader)},
               {"nem_amount", quantity(need.nem.value(), "Mcal/day")},
               {"calcium_share", share(need.calcium)},
               {"phosphorus_share", share(need.phosphorus)},
               {"rumen_floor_governs", need.rumen_floor_governs},
               {"notes", need.notes}};
  json["source"] = need.citation == nullptr ? Json(nullptr)
                                            : Json({{"publication", need.citation->source},
                                                    {"table", need.citation->table},
                                                    {"status", need.citation->status}});
  return json;
}

Json quarter_json(const Need& quarter, const Reader& reader) {
  return {{"tdn_share", share(quarter.tdn)},
          {"tdn_amount", amount(quarter.tdn_amount().value(), reader)},
          {"crude_protein_share", share(quarter.crude_protein)},
          {"crude_protein_amount", amount(quarter.crude_protein_amount().value(), reader)},
          {"rumen_floor_governs", quarter.rumen_floor_governs}};
}

/// The point a row stands for, under the name of its kind.
struct PointJson {
  const Reader& reader;
  Json operator()(Date date) const { return {{"date", to_iso(date)}}; }
  Json operator()(MonthSinceCalving at) const { return {{"month_since_calving", at.month}}; }
  Json operator()(MonthOfPregnancy at) const { return {{"month_of_pregnancy", at.month}}; }
  Json operator()(DayOfPregnancy at) const { return {{"days_pregnant", at.day}}; }
  Json operator()(DailyGain at) const { return {{"gain", amount(at.gain.value(), reader)}}; }
};

Json point_json(const NeedAt& at, const Reader& reader) {
  return std::visit(PointJson{reader}, at);
}

}  // namespace

Json number(double value) {
  if (!std::isfinite(value)) return nullptr;
  return ten_figures(value);
}

Json share(Share value) {
  return quantity(in_percent(value), share_unit);
}

Json amount(double kilograms, const Reader& reader) {
  return quantity(in_mass_unit(kilograms, reader), mass_unit(reader) + "/day");
}

Json document(const std::string& command) {
  return {{"schema", "pluckbook/" + command + "/1"}};
}

Json quantity(double value, const std::string& unit) {
  return {{"value", number(value)}, {"unit", unit}};
}

Json to_json(const OutlookAnswer& answer, const Reader& reader) {
  Json json = document("outlook");
  json["as_of"] = to_iso(answer.settings.as_of);
  json["until"] = to_iso(answer.settings.until);
  json["herds"] = Json::array();
  for (const HerdOutlook& herd : answer.herds) {
    Json nutrients = Json::array();
    for (const NutrientOutlook& n : herd.nutrients) nutrients.push_back(nutrient_json(n, reader));
    json["herds"].push_back({{"herd", herd.herd->id},
                             {"head", herd.herd->head},
                             {"pasture", herd.pasture->id},
                             {"intake", amount(herd.intake.amount.value(), reader)},
                             {"intake_rule", to_string(herd.intake.rule)},
                             {"moves_ahead", moves_json(herd.moves_ahead)},
                             {"bags_used", herd.bags_used},
                             {"first_short", herd.first_short},
                             {"nutrients", nutrients},
                             {"rdp", degradable_json(herd.degradable, reader)}});
  }
  json["next_sample"] = nullptr;
  if (answer.next_sample) {
    json["next_sample"] = {{"pasture", answer.next_sample->pasture->id},
                           {"date", to_iso(answer.next_sample->date)},
                           {"why", answer.next_sample->why}};
  }
  return json;
}

Json to_json(const DietAnswer& answer, const Reader& /*shares need no units*/) {
  Json json = document("diet");
  json["pasture"] = answer.series->pasture().id;
  json["as_of"] = to_iso(answer.as_of);
  json["green_up"] = green_up_json(answer.series->green_up(answer.as_of));
  json["model"] = model_json(answer.series->model());
  json["bags"] = Json::array();
  for (const BagReading& reading : answer.series->bags()) {
    Json nutrients = Json::object();
    std::vector<std::string> notes;
    if (!reading.results.empty()) {
      const FootedResult& result = reading.results.back();
      const auto put = [&](const char* name, const std::optional<FootedValue>& value) {
        if (!value) return;
        nutrients[name] = share(value->value);
        nutrients[name]["how"] = value->how;
        if (!value->method.empty()) nutrients[name]["method"] = value->method;
      };
      put("crude_protein", result.crude_protein);
      put("tdn", result.tdn);
      notes = result.notes;
      notes.insert(notes.end(), result.cautions.begin(), result.cautions.end());
    }
    json["bags"].push_back({{"bag", reading.bag->id},
                            {"plucked", to_iso(reading.bag->plucked)},
                            {"used", reading.used},
                            {"why_not", reading.used ? Json(nullptr) : Json(reading.why_not)},
                            {"nutrients", nutrients},
                            {"notes", notes}});
  }
  json["method_shifts"] = Json::array();
  for (const MethodShift& shift : method_shifts(answer.series->bags())) {
    json["method_shifts"].push_back(
        {{"usual", shift.usual},
         {"other", shift.other},
         {"bag", shift.bags.back()->id},
         {"bags", shift.bags.size()},
         {"shift", shift.points ? quantity(*shift.points, "points of TDN") : Json(nullptr)},
         {"pages", shift.pages}});
  }
  json["days"] = Json::array();
  for (std::size_t i = 0; i < answer.cp_days.size(); ++i) {
    json["days"].push_back({{"date", to_iso(answer.cp_days[i].date)},
                            {"crude_protein", point(answer.cp_days[i])},
                            {"tdn", point(answer.tdn_days[i])}});
  }
  return json;
}

Json to_json(const NeedAnswer& answer, const Reader& reader) {
  Json json = document("need");
  json["of"] = answer.title;
  json["rows"] = Json::array();
  for (const NeedRow& row : answer.rows) {
    Json one = point_json(row.at, reader);
    one.update(need_json(row.need, reader));
    one["stage"] = row.stage;
    if (row.hardest_quarter) one["hardest_quarter"] = quarter_json(*row.hardest_quarter, reader);
    json["rows"].push_back(one);
  }
  return json;
}

Json sources_json() {
  Json json = document("sources");
  json["sources"] = Json::array();
  for (const SourceInUse& source : sources_in_use()) {
    json["sources"].push_back({{"topic", source.topic},
                               {"what", source.what},
                               {"source", source.source},
                               {"status", source.status}});
  }
  return json;
}

// What a terminal would obey is spelled out, as in text; bytes that are no UTF-8 become U+FFFD.
std::string printed(const Json& json) {
  std::string text;
  for (const char32_t code :
       code_points(json.dump(1, ' ', false, Json::error_handler_t::replace))) {
    if (is_unsafe(code) && code != '\n') {
      text += fmt::format("\\u{:04x}", static_cast<unsigned>(code));
    } else {
      append_utf8(text, code);
    }
  }
  return text + "\n";
}

}  // namespace pluckbook
