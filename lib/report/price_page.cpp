#include <fmt/format.h>

#include <algorithm>

#include "advice/schedule.h"
#include "base/text.h"
#include "cow/intake.h"
#include "report/bill.h"
#include "report/feeding.h"
#include "report/pages.h"
#include "report/price_words.h"

namespace pluckbook {
namespace {

/// Whom the price is for, and when: "spring-cows on 25 Oct 2026".
std::string whom(const PriceAnswer& answer, const Reader& reader) {
  if (answer.pasture != nullptr) return answer.herd->id + " on " + in_words(answer.date);
  const bool heifer = answer.herd->cow_class == CowClass::first_calf_heifer;
  return fmt::format("a {} of {}, {}", heifer ? "first-calf heifer" : "mature cow",
                     mass(answer.day.weight.value(), reader),
                     answer.day.milking ? "milking" : "dry");
}

Table gaps_table(const PriceAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"nutrient", Align::left},
               {"diet, %"},
               {"need, %"},
               {"need, " + unit},
               {"diet gives, " + unit},
               {"short, " + unit}});
  for (const PricedGap& gap : answer.gaps) {
    const auto amount = [&](KgPerDay kg) { return fixed(in_mass_unit(kg.value(), reader), 2); };
    table.add({in_words(gap.nutrient), fixed(in_percent(gap.diet), 1),
               fixed(in_percent(gap.need_share), 1), amount(gap.balance.need),
               amount(gap.balance.supply), amount(gap.balance.gap())});
  }
  return table;
}

std::string nem_line(const PriceAnswer& answer) {
  const double gives = (answer.day.forage_intake * nem_of(answer.day.tdn)).value();
  const double need = answer.day.need_nem.value();
  return fmt::format("counted as NEm: need {} Mcal, diet gives {}, short {}", fixed(need, 2),
                     fixed(gives, 2), fixed(std::max(0.0, need - gives), 2));
}

/// Amounts a feeder can weigh or count; of what feeds itself, for a week.
Table mix_table(const PriceAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"feed", Align::left},
               {unit + "/day"},
               {"a feeding"},
               {"the herd, " + unit},
               {"as it is sold"},
               {reader.currency + "/day"}});
  for (const MixPart& part : answer.mix.parts) {
    const FeedOffer& offer = answer.offers[part.offer];
    const Feeding feeding = feeding_of(offer, part, answer.mix.feedings_per_week);
    const double herd = feeding.kg_per_head * answer.herd->head;
    table.add({offer.id, three_figures(in_mass_unit(part.as_fed.value(), reader)),
               feeding.by_itself ? "self, a week"
                                 : three_figures(in_mass_unit(feeding.kg_per_head, reader)),
               three_figures(in_mass_unit(herd, reader)), as_sold(herd, offer, reader),
               fixed(part.cost.value(), 3)});
  }
  return table;
}

/// The nutrient of a need, as its price is told; "" for a limit that is none.
std::string nutrient_of(const std::string& limit) {
  if (limit == "crude_protein" || limit == "rumen_protein") return "protein";
  if (limit == "rdp") return "degradable protein";
  if (limit == "mp") return "metabolizable protein";
  if (limit == "tdn") return "TDN";
  if (limit == "nem") return "NEm";
  if (limit == "calcium" || limit == "phosphorus") return limit;
  return "";
}

/// What the mix costs, what holds it where it is, and what one more unit would cost.
Page explanations(const PriceAnswer& answer, const Reader& reader) {
  const Mix& mix = answer.mix;
  Page page;
  page.line(fmt::format("feed {} + trips {} = {} {} a head and day",
                        fixed(mix.feed_cost.value(), 3), fixed(mix.trip_cost.value(), 3),
                        fixed(mix.cost().value(), 3), reader.currency));
  if (!mix.binding.empty()) {
    page.sentence(fmt::format("what sets the amounts: {}", fmt::join(mix.binding, "; ")));
  }
  if (!mix.deciding.empty()) page.sentence(deciding_words(answer));
  for (const MarginalCost& cost : mix.marginal_costs) {
    const std::string nutrient = nutrient_of(cost.limit);
    if (nutrient == "NEm")
      page.line(fmt::format("one more Mcal of NEm a day costs {}", money(cost.money, reader)));
    else if (!nutrient.empty())
      page.line(fmt::format("one more {} of {} a day costs {}", mass_unit(reader), nutrient,
                            money(per_mass_unit(cost.money, reader), reader)));
  }
  return page;
}

/// What a truck half empty would add, where freight goes by the mile: as much as the full load's
/// share again.
Page part_load(const FeedOffer& offer, const Reader& reader) {
  const Quote* quote = offer.cost ? offer.cost->as_quoted : nullptr;
  Page page;
  if (quote == nullptr || quote->a_truck <= 0) return page;
  const std::string ton = ton_word(reader);
  const double a_ton = quote->freight.value() * (ton == "ton" ? kg_per_us_ton : kg_per_tonne);
  return page.sentence(fmt::format(
      "freight of {} is a full load's share, {} {}/{}; half a load costs {} {}/{} more", offer.id,
      fixed(a_ton, 2), reader.currency, ton, fixed(a_ton, 2), reader.currency, ton));
}

/// How long a truck's load lasts the herd.
Page loads(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  for (const MixPart& part : answer.mix.parts) {
    const FeedOffer& offer = answer.offers[part.offer];
    const std::optional<double> load = load_of(offer);
    if (!load || answer.herd->head < 2) continue;
    const double days = *load / bought_per_day(offer, part, answer.herd->head);
    page.line(fmt::format("a load of {} of {} lasts the herd {} days", load_in_words(offer, reader),
                          offer.id, fixed(days, 0)));
  }
  for (const MixPart& part : answer.mix.parts)
    page.append(part_load(answer.offers[part.offer], reader));
  return page;
}

std::string unmet_words(const Unmet& unmet, const Reader& reader) {
  const auto told = [&](double amount) {
    return unmet.limit == "nem" ? fixed(amount, 2) + " Mcal" : mass(amount, reader);
  };
  return fmt::format("out of reach: {}: {} asked, {} reached{}", unmet.words, told(unmet.asked),
                     told(unmet.reached),
                     unmet.in_the_way.empty() ? "" : "; in the way: " + unmet.in_the_way);
}

Table options_table(const PriceAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"feed alone", Align::left},
               {unit + "/day"},
               {reader.currency + "/day"},
               {"per " + unit + " CP"},
               {"per " + unit + " TDN"},
               {"pays up to", Align::right}});
  const auto per_unit = [&](const std::optional<double>& per_kg) {
    return per_kg ? fixed(per_mass_unit(*per_kg, reader), 2) : std::string("-");
  };
  for (const Option& option : answer.options) {
    const FeedOffer& offer = answer.offers[option.offer];
    const bool can = option.alone.status == MixStatus::optimal;
    const double fed =
        can && !option.alone.parts.empty() ? option.alone.parts[0].as_fed.value() : 0;
    table.add(
        {offer.id, can ? three_figures(in_mass_unit(fed, reader)) : "cannot",
         can ? fixed(option.alone.cost().value(), 2) : "-", per_unit(option.cost_per_kg_protein),
         per_unit(option.cost_per_kg_tdn),
         option.break_even_quote ? quote_words(offer, *option.break_even_quote, reader) : "-"});
  }
  return table;
}

/// "why: what, what, what", each reason once: limits are written "what: why".
std::vector<std::string> by_reason(const std::vector<std::string>& unchecked) {
  std::vector<std::string> reasons, told;
  for (const std::string& words : unchecked) {
    const std::size_t colon = words.rfind(": ");
    const std::string what = words.substr(0, colon);
    const std::string why = colon == std::string::npos ? "" : words.substr(colon + 2);
    const auto known = std::find(reasons.begin(), reasons.end(), why);
    if (known != reasons.end()) {
      told[static_cast<std::size_t>(known - reasons.begin())] += ", " + what;
      continue;
    }
    reasons.push_back(why);
    told.push_back(why.empty() ? what : why + ": " + what);
  }
  return told;
}

/// "It costs 0.37 USD a head and day, 51.80 USD a day for 140 head.": said after the cautions.
std::string cost_sentence(const PriceAnswer& answer, const Reader& reader) {
  const double each = answer.mix.cost().value();
  const int head = answer.herd->head;
  return fmt::format(
      "It costs {} a head and day{}.", money(each, reader),
      head == 1 ? "" : fmt::format(", {} a day for {} head", money(each * head, reader), head));
}

}  // namespace

std::string price_finding(const PriceAnswer& answer, const Reader& reader) {
  switch (answer.mix.status) {
    case MixStatus::none_needed:
      return fmt::format(
          "No supplement is needed for {}: the diet covers protein and {}{}.", whom(answer, reader),
          answer.day.energy == EnergyMeasure::nem ? "NEm" : "TDN",
          answer.pasture == nullptr ? ""
                                    : " in at least " + in_hundred(answer.cover) + " of outcomes");
    case MixStatus::optimal:
      return fmt::format("Cheapest safe supplement for {}: {} a head and day, {}.",
                         whom(answer, reader), parts_in_words(answer, answer.mix, reader),
                         per_feeding_words(answer.mix));
    case MixStatus::out_of_reach:
      return fmt::format("No safe mix of these feeds meets the need of {}.", whom(answer, reader));
    case MixStatus::not_trusted:
      break;
  }
  return fmt::format("The least-cost answer for {} failed its own check: do not use it.",
                     whom(answer, reader));
}

std::string price_in_brief(const PriceAnswer& answer, const Reader& reader) {
  switch (answer.mix.status) {
    case MixStatus::none_needed:
      return "No supplement is needed.";
    case MixStatus::optimal:
      return fmt::format("Feed {} a head daily: {} (herd {}).",
                         parts_in_words(answer, answer.mix, reader),
                         money(answer.mix.cost().value(), reader),
                         fixed(answer.mix.cost().value() * answer.herd->head, 2));
    case MixStatus::out_of_reach:
      return "No safe mix of these feeds meets the need.";
    case MixStatus::not_trusted:
      break;
  }
  return "The least-cost answer failed its own check: do not use it.";
}

Page price_tables(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  const std::string cover =
      answer.pasture == nullptr ? "" : " at " + fixed(answer.cover * 100, 0) + " % cover";
  page.heading(fmt::format("gap{}, per head and day, eating {} of dry matter", cover,
                           mass(answer.intake.amount.value(), reader)));
  page.add(gaps_table(answer, reader));
  if (answer.day.energy == EnergyMeasure::nem) page.line(nem_line(answer));
  for (const Unmet& unmet : answer.mix.unmet) page.sentence(unmet_words(unmet, reader));
  if (!answer.mix.unmet.empty())
    page.sentence(
        fmt::format("what would help: {}; or a smaller need or better grass: wean earlier, "
                    "move (pluckbook compare)",
                    answer.mix.unmet.front().what_helps));
  if (!answer.mix.parts.empty()) {
    page.heading(answer.mix.status == MixStatus::out_of_reach ? "the nearest mix" : "the mix");
    page.add(mix_table(answer, reader)).append(explanations(answer, reader));
    page.append(loads(answer, reader));
    page.append(alternatives(answer, reader));
  }
  page.append(certainty_page(answer, reader));
  if (answer.mix.status != MixStatus::none_needed) page.space().add(options_table(answer, reader));
  return page;
}

Page price_notes(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  for (const Option& option : answer.options) {
    if (option.why_not.empty() || answer.mix.status == MixStatus::none_needed) continue;
    page.note(answer.offers[option.offer].id + ": " + option.why_not);
  }
  if (answer.intake.protein_limits && answer.intake_recovered > answer.intake.amount) {
    page.note(fmt::format(
        "protein-poor grass holds her to {} of dry matter; once protein is met she may "
        "eat up to {} (published rises run from 10 to 50 %), and less energy need be "
        "bought: --intake-recovers prices that",
        mass(answer.intake.amount.value(), reader), mass(answer.intake_recovered.value(), reader)));
  }
  for (const std::string& note : answer.notes) page.note(note);
  if (!answer.mix.unchecked.empty()) {
    page.sentence(fmt::format("not checked, or by a class value: {}",
                              fmt::join(by_reason(answer.mix.unchecked), "; ")));
  }
  return page;
}

std::vector<std::string> what_changes_the_mix(const PriceAnswer& answer, const Reader& reader) {
  // A feed that would have to halve its price is no near rival.
  constexpr double near_rival = 0.5;
  std::vector<std::string> changes;
  for (const Option& option : answer.options) {
    const FeedOffer& offer = answer.offers[option.offer];
    if (!option.break_even_quote || !offer.cost) continue;
    const double quoted = offer.cost->as_quoted->amount;
    const bool in_mix =
        std::any_of(answer.mix.parts.begin(), answer.mix.parts.end(),
                    [&](const MixPart& part) { return part.offer == option.offer; });
    if (!in_mix && *option.break_even_quote < near_rival * quoted) continue;
    changes.push_back(fmt::format("{} {} {} (quoted at {})", offer.id,
                                  in_mix ? "stays in the mix up to" : "would be bought at up to",
                                  quote_words(offer, *option.break_even_quote, reader),
                                  fixed(quoted, 2)));
  }
  return changes;
}

Page page_of(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  page.sentence(price_finding(answer, reader));
  if (answer.mix.status != MixStatus::none_needed && !answer.cautions.empty()) {
    page.heading("cautions");
    for (const std::string& caution : answer.cautions) page.note(caution);
  }
  if (answer.mix.status == MixStatus::optimal) page.space().sentence(cost_sentence(answer, reader));
  return page.append(price_tables(answer, reader)).append(price_notes(answer, reader));
}

}  // namespace pluckbook
