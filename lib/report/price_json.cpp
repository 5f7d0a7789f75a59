#include <algorithm>

#include "cow/intake.h"
#include "report/feeding.h"
#include "report/json_parts.h"

namespace pluckbook {
namespace {

/// What one feeding holds, for a head and for the herd; a week of it where it feeds itself.
void add_feeding(const PriceAnswer& answer, const Mix& mix, const MixPart& part,
                 const Reader& reader, Json& json) {
  const FeedOffer& offer = answer.offers[part.offer];
  const Feeding feeding = feeding_of(offer, part, mix.feedings_per_week);
  const double herd = feeding.kg_per_head * answer.herd->head;
  json["self_fed"] = feeding.by_itself;
  json["per_head_per_feeding"] =
      quantity(in_mass_unit(feeding.kg_per_head, reader), mass_unit(reader));
  json["per_herd_per_feeding"] = quantity(in_mass_unit(herd, reader), mass_unit(reader));
  if (offer.cost && offer.cost->as_quoted != nullptr)
    json["per_herd_per_feeding_as_sold"] =
        quantity(herd / offer.cost->as_quoted->kg_per_unit, offer.cost->as_quoted->unit);
}

Json mix_json(const PriceAnswer& answer, const Mix& mix, const Reader& reader) {
  Json parts = Json::array();
  for (const MixPart& part : mix.parts) {
    const FeedOffer& offer = answer.offers[part.offer];
    parts.push_back({{"feed", offer.id},
                     {"as_fed", amount(part.as_fed.value(), reader)},
                     {"dry_matter", amount(part.dry_matter.value(), reader)},
                     {"feedings_per_week", offer.feed->self_fed ? 0 : mix.feedings_per_week},
                     {"cost", quantity(part.cost.value(), reader.currency + "/day")}});
    add_feeding(answer, mix, part, reader, parts.back());
  }
  return parts;
}

const char* state_of(const Mix& mix) {
  static constexpr const char* states[] = {"optimal", "none_needed", "out_of_reach", "not_trusted"};
  return states[static_cast<int>(mix.status)];
}

/// Another mix than the one advised.
Json choice_json(const PriceAnswer& answer, const Mix& mix, const Reader& reader) {
  return {{"state", state_of(mix)},
          {"mix", mix_json(answer, mix, reader)},
          {"cost_per_head_day", quantity(mix.cost().value(), reader.currency + "/day")}};
}

Json gap_json(const char* nutrient, const Json& need, const Json& supply, const Json& gap) {
  return {{"nutrient", nutrient}, {"need", need}, {"supply", supply}, {"gap", gap}};
}

/// Net energy, and degradable and metabolizable protein with the mix fed.
void add_further_gaps(const PriceAnswer& answer, const Reader& reader, Json& gaps) {
  const double nem = (answer.day.forage_intake * nem_of(answer.day.tdn)).value();
  const double need = answer.day.need_nem.value();
  const auto mcal = [](double value) { return quantity(value, "Mcal/day"); };
  gaps.push_back(gap_json("nem", mcal(need), mcal(nem), mcal(std::max(0.0, need - nem))));
  const auto protein = [&](const char* nutrient, KgPerDay wanted, KgPerDay there) {
    const KgPerDay missing = std::max(KgPerDay(0), wanted - there);
    Json json = gap_json(nutrient, amount(wanted.value(), reader), amount(there.value(), reader),
                         amount(missing.value(), reader));
    json["with_the_mix"] = true;
    json["forage_by_class"] = answer.protein.forage_by_class;
    gaps.push_back(std::move(json));
  };
  protein("rdp", answer.protein.degradable_wanted, answer.protein.degradable);
  protein("mp", answer.protein.metabolizable_needed, answer.protein.metabolizable);
}

/// The quotes between which the mix stays as it is.
Json stays_json(const Option& option, const FeedOffer& offer, const Reader& reader) {
  if (!option.stays || !offer.cost || offer.cost->as_quoted == nullptr) return nullptr;
  const QuoteRange& range = *option.stays;
  return {{"low", number(range.low)},
          {"high", range.high ? number(*range.high) : Json(nullptr)},
          {"unit", reader.currency + "/" + offer.cost->as_quoted->unit}};
}

Json option_json(const PriceAnswer& answer, const Option& option, const Reader& reader) {
  const FeedOffer& offer = answer.offers[option.offer];
  const bool can = option.alone.status == MixStatus::optimal;
  const bool fed = can && !option.alone.parts.empty();
  Json json = {{"feed", offer.id}, {"feasible", can}};
  json["as_fed"] = fed ? amount(option.alone.parts[0].as_fed.value(), reader) : Json(nullptr);
  json["cost_per_head_day"] =
      can ? quantity(option.alone.cost().value(), reader.currency + "/day") : Json(nullptr);
  json["cost_per_unit_protein"] = option.cost_per_kg_protein
                                      ? quantity(per_mass_unit(*option.cost_per_kg_protein, reader),
                                                 reader.currency + "/" + mass_unit(reader))
                                      : Json(nullptr);
  json["cost_per_unit_tdn"] = option.cost_per_kg_tdn
                                  ? quantity(per_mass_unit(*option.cost_per_kg_tdn, reader),
                                             reader.currency + "/" + mass_unit(reader))
                                  : Json(nullptr);
  if (offer.cost) {
    const auto per_unit = [&](double per_kg) {
      return quantity(per_mass_unit(per_kg, reader), reader.currency + "/" + mass_unit(reader));
    };
    json["delivered"] = per_unit(offer.cost->delivered().value());
    json["fed"] = per_unit(offer.cost->fed().value());
    json["fed_dry_matter"] = per_unit(offer.cost_per_kg_dm().value());
  }
  json["quote_is_old"] = offer.old_quote_days.has_value();
  const bool has_unit = offer.cost && offer.cost->as_quoted != nullptr;
  json["break_even_quote"] =
      option.break_even_quote && has_unit
          ? quantity(*option.break_even_quote, reader.currency + "/" + offer.cost->as_quoted->unit)
          : Json(nullptr);
  json["stays"] = stays_json(option, offer, reader);
  json["why_not"] = option.why_not.empty() ? Json(nullptr) : Json(option.why_not);
  return json;
}

}  // namespace

Json to_json(const PriceAnswer& answer, const Reader& reader) {
  Json json = document("price");
  json["herd"] = answer.herd->id;
  json["head"] = answer.herd->head;
  json["pasture"] = answer.pasture == nullptr ? Json(nullptr) : Json(answer.pasture->id);
  json["date"] = to_iso(answer.date);
  json["cover"] = quantity(answer.cover * 100, "% of outcomes");
  json["state"] = state_of(answer.mix);
  json["gaps"] = Json::array();
  for (const PricedGap& gap : answer.gaps) {
    json["gaps"].push_back({{"nutrient", json_name(gap.nutrient)},
                            {"need", amount(gap.balance.need.value(), reader)},
                            {"supply", amount(gap.balance.supply.value(), reader)},
                            {"gap", amount(gap.balance.gap().value(), reader)},
                            {"diet", share(gap.diet)},
                            {"need_share", share(gap.need_share)}});
  }
  add_further_gaps(answer, reader, json["gaps"]);
  json["intake"] = amount(answer.intake.amount.value(), reader);
  json["intake_recovered"] = amount(answer.intake_recovered.value(), reader);
  json["forage_left"] = amount(answer.mix.forage_left.value(), reader);
  json["mix"] = mix_json(answer, answer.mix, reader);
  json["feed_cost_per_head_day"] = quantity(answer.mix.feed_cost.value(), reader.currency + "/day");
  json["cost_per_head_day"] = quantity(answer.mix.cost().value(), reader.currency + "/day");
  json["cost_per_herd_day"] =
      quantity(answer.mix.cost().value() * answer.herd->head, reader.currency + "/day");
  json["binding"] = answer.mix.binding;
  json["marginal_costs"] = Json::array();
  for (const MarginalCost& cost : answer.mix.marginal_costs) {
    json["marginal_costs"].push_back(
        {{"limit", cost.limit},
         {"cost", quantity(cost.money, reader.currency + " per " + cost.unit)}});
  }
  json["deciding"] = Json::array();
  for (const DecidingFigure& one : answer.mix.deciding)
    json["deciding"].push_back({{"feed", answer.offers[one.offer].id},
                                {"nutrient", one.nutrient},
                                {"value", quantity(one.figure.value * 100, "%")},
                                {"standing", one.figure.standing}});
  json["options"] = Json::array();
  for (const Option& option : answer.options) {
    json["options"].push_back(option_json(answer, option, reader));
  }
  json["runner_up"] = answer.runner_up ? choice_json(answer, *answer.runner_up, reader) : nullptr;
  json["certainty"] = Json::array();
  for (const CoverStep& step : answer.certainty) {
    Json one = choice_json(answer, step.mix, reader);
    one["cover"] = quantity(step.cover * 100, "% of outcomes");
    json["certainty"].push_back(std::move(one));
  }
  json["displacement"] = Json::array();
  for (const DisplacedMix& other : answer.displaced) {
    Json one = choice_json(answer, other.mix, reader);
    one["end"] = other.end == DisplacementEnd::low ? "low" : "high";
    json["displacement"].push_back(std::move(one));
  }
  json["unmet"] = Json::array();
  for (const Unmet& unmet : answer.mix.unmet) {
    json["unmet"].push_back({{"limit", unmet.limit},
                             {"words", unmet.words},
                             {"asked", number(unmet.asked)},
                             {"reached", number(unmet.reached)},
                             {"in_the_way", unmet.in_the_way},
                             {"what_helps", unmet.what_helps}});
  }
  json["unchecked"] = answer.mix.unchecked;
  json["cautions"] = answer.cautions;
  json["notes"] = answer.notes;
  json["certificate"] = {{"primal_infeasibility", answer.mix.certificate.primal_infeasibility},
                         {"dual_infeasibility", answer.mix.certificate.dual_infeasibility},
                         {"gap", answer.mix.certificate.gap}};
  return json;
}

}  // namespace pluckbook
