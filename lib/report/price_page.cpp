#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

std::string money(double amount, const Reader& reader) {
  return fixed(amount, 2) + " " + reader.currency;
}

std::string per_feeding_words(const Mix& mix) {
  if (mix.feedings_per_week == 0) return "self-fed";
  if (mix.feedings_per_week == 7) return "fed daily";
  if (mix.feedings_per_week == 1) return "fed once a week";
  return fmt::format("fed {} days a week", mix.feedings_per_week);
}

std::string parts_in_words(const PriceAnswer& answer, const Reader& reader) {
  std::string words;
  const std::size_t count = answer.mix.parts.size();
  for (std::size_t i = 0; i < count; ++i) {
    const MixPart& part = answer.mix.parts[i];
    if (i > 0) words += i + 1 == count ? " and " : ", ";
    words += mass(part.as_fed.value(), reader) + " of " + answer.offers[part.offer].id;
  }
  return words;
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

Table mix_table(const PriceAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"feed", Align::left},
               {unit + " a head a day"},
               {"a feeding"},
               {"herd a feeding"},
               {reader.currency + "/day"}});
  const int feedings = answer.mix.feedings_per_week;
  for (const MixPart& part : answer.mix.parts) {
    const double daily = in_mass_unit(part.as_fed.value(), reader);
    const double feeding = feedings == 0 ? 0 : daily * 7 / feedings;
    const bool self = answer.offers[part.offer].feed->self_fed || feedings == 0;
    table.add({answer.offers[part.offer].id, three_figures(daily),
               self ? "self" : three_figures(feeding),
               self ? "self" : fixed(feeding * answer.herd->head, 0), fixed(part.cost.value(), 3)});
  }
  return table;
}

/// What the mix costs, what holds it where it is, and what one more unit would cost.
Page explanations(const PriceAnswer& answer, const Reader& reader) {
  const Mix& mix = answer.mix;
  Page page;
  page.line(fmt::format("feed {} + trips {} = {} {} a head and day",
                        fixed(mix.feed_cost.value(), 3), fixed(mix.trip_cost.value(), 3),
                        fixed(mix.cost().value(), 3), reader.currency));
  if (!mix.binding.empty()) {
    page.sentence(fmt::format("what binds: {}", fmt::join(mix.binding, "; ")));
  }
  for (const MarginalCost& cost : mix.marginal_costs) {
    if (cost.limit != "crude_protein" && cost.limit != "tdn" && cost.limit != "rumen_protein") {
      continue;
    }
    const std::string nutrient = cost.limit == "tdn" ? "TDN" : "protein";
    page.line(fmt::format("one more {} of {} a day costs {}", mass_unit(reader), nutrient,
                          money(per_mass_unit(cost.money, reader), reader)));
  }
  return page;
}

std::string unmet_words(const Unmet& unmet, const Reader& reader) {
  const bool mass_row = unmet.limit == "crude_protein" || unmet.limit == "tdn" ||
                        unmet.limit == "calcium" || unmet.limit == "phosphorus";
  const std::string figures = mass_row
                                  ? fmt::format("{} asked, {} reached", mass(unmet.asked, reader),
                                                mass(unmet.reached, reader))
                                  : std::string("not reached");
  return fmt::format("out of reach: {}: {}{}", unmet.words, figures,
                     unmet.in_the_way.empty() ? "" : "; in the way: " + unmet.in_the_way);
}

std::string quote_words(const FeedOffer& offer, double amount, const Reader& reader) {
  const Quote* quote = offer.cost ? offer.cost->as_quoted : nullptr;
  const std::string unit = quote == nullptr || quote->unit.empty() ? "kg" : quote->unit;
  return fixed(amount, 2) + " " + reader.currency + "/" + unit;
}

Table options_table(const PriceAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"feed alone", Align::left},
               {unit + "/day"},
               {reader.currency + "/day"},
               {"per " + unit + " CP"},
               {"comes in at", Align::right}});
  for (const Option& option : answer.options) {
    const FeedOffer& offer = answer.offers[option.offer];
    const bool can = option.alone.status == MixStatus::optimal;
    const double fed =
        can && !option.alone.parts.empty() ? option.alone.parts[0].as_fed.value() : 0;
    table.add(
        {offer.id, can ? three_figures(in_mass_unit(fed, reader)) : "cannot",
         can ? fixed(option.alone.cost().value(), 2) : "-",
         option.cost_per_kg_protein ? fixed(per_mass_unit(*option.cost_per_kg_protein, reader), 2)
                                    : "-",
         option.break_even_quote ? quote_words(offer, *option.break_even_quote, reader) : "-"});
  }
  return table;
}

}  // namespace

std::string price_finding(const PriceAnswer& answer, const Reader& reader) {
  const std::string herd = answer.herd->id;
  const std::string day = in_words(answer.date);
  switch (answer.mix.status) {
    case MixStatus::none_needed:
      return fmt::format(
          "No supplement is needed for {} on {}: the diet covers protein and TDN "
          "in at least {} of outcomes.",
          herd, day, in_hundred(answer.cover));
    case MixStatus::optimal:
      return fmt::format(
          "Cheapest safe supplement for {} on {}: {} a head and day, {}; {} a head "
          "and day, {} a day for {} head.",
          herd, day, parts_in_words(answer, reader), per_feeding_words(answer.mix),
          money(answer.mix.cost().value(), reader),
          money(answer.mix.cost().value() * answer.herd->head, reader), answer.herd->head);
    case MixStatus::out_of_reach:
      return fmt::format("No safe mix of these feeds meets the need of {} on {}.", herd, day);
    case MixStatus::not_trusted:
      break;
  }
  return fmt::format("The least-cost answer for {} on {} failed its own check: do not use it.",
                     herd, day);
}

std::string price_in_brief(const PriceAnswer& answer, const Reader& reader) {
  switch (answer.mix.status) {
    case MixStatus::none_needed:
      return "No supplement is needed.";
    case MixStatus::optimal:
      return fmt::format("Feed {} a head daily: {}, the herd {}.", parts_in_words(answer, reader),
                         money(answer.mix.cost().value(), reader),
                         money(answer.mix.cost().value() * answer.herd->head, reader));
    case MixStatus::out_of_reach:
      return "No safe mix of these feeds meets the need.";
    case MixStatus::not_trusted:
      break;
  }
  return "The least-cost answer failed its own check: do not use it.";
}

Page price_tables(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  page.heading(fmt::format("gap at {} cover, per head and day, eating {} of dry matter",
                           fixed(answer.cover * 100, 0) + " %",
                           mass(answer.intake.amount.value(), reader)));
  page.add(gaps_table(answer, reader));
  for (const Unmet& unmet : answer.mix.unmet) page.sentence(unmet_words(unmet, reader));
  if (!answer.mix.parts.empty()) {
    page.heading(answer.mix.status == MixStatus::out_of_reach ? "the nearest mix" : "the mix");
    page.add(mix_table(answer, reader)).append(explanations(answer, reader));
  }
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
    page.sentence(
        fmt::format("not checked, or by a class value: {}", fmt::join(answer.mix.unchecked, "; ")));
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
                                  in_mix ? "stays in the mix up to" : "comes into the mix at",
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
  return page.append(price_tables(answer, reader)).append(price_notes(answer, reader));
}

}  // namespace pluckbook
