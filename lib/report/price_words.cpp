#include "report/price_words.h"

#include <fmt/format.h>

#include <cmath>
#include <map>

#include "base/text.h"

namespace pluckbook {
namespace {

/// "2.06 lb of distillers, fed 3 days a week", or why there is none.
std::string choice_in_words(const PriceAnswer& answer, const Mix& mix, const Reader& reader) {
  if (mix.status == MixStatus::none_needed) return "nothing is needed";
  if (mix.status != MixStatus::optimal) return "no safe mix";
  return parts_in_words(answer, mix, reader) + ", " + per_feeding_words(mix);
}

/// Money for what the seller quotes as money for what the reader counts in.
std::string in_selling_units(double amount, const Quote& quote, const SellingUnit& unit) {
  return fixed(amount * unit.kg / quote.kg_per_unit, 2);
}

/// "from 137.20 to 233.97 USD/ton", one end of it, or "at any price".
std::string range_words(const FeedOffer& offer, const QuoteRange& range, const Reader& reader) {
  if (!range.high && range.low <= 0) return "at any price";
  if (!range.high) return "at " + quote_words(offer, range.low, reader) + " or more";
  const std::string high = quote_words(offer, *range.high, reader);
  if (range.low <= 0) return "up to " + high;
  const Quote& quote = *offer.cost->as_quoted;
  return "from " + in_selling_units(range.low, quote, selling_unit(quote, reader)) + " to " + high;
}

/// Degradable and metabolizable protein, told beside a price that counts crude protein.
std::string protein_words(const PriceAnswer& answer, const Reader& reader) {
  const MixProtein& protein = answer.protein;
  return fmt::format(
      "with it: degradable protein {} of the {} her rumen could use, metabolizable protein {} of "
      "the {} she needs ({}{})",
      mass(protein.degradable.value(), reader), mass(protein.degradable_wanted.value(), reader),
      mass(protein.metabolizable.value(), reader),
      mass(protein.metabolizable_needed.value(), reader),
      protein.forage_by_class ? "grass by a class value" : "grass by its laboratory result",
      protein.feeds_known ? "" : ", a feed without its share taken as all degradable");
}

}  // namespace

std::string money(double amount, const Reader& reader) {
  return fixed(amount, 2) + " " + reader.currency;
}

std::string per_feeding_words(const Mix& mix) {
  if (mix.feedings_per_week == 0) return "self-fed";
  if (mix.feedings_per_week == 7) return "fed daily";
  if (mix.feedings_per_week == 1) return "fed once a week";
  return fmt::format("fed {} days a week", mix.feedings_per_week);
}

std::string parts_in_words(const PriceAnswer& answer, const Mix& mix, const Reader& reader) {
  std::vector<std::string> parts;
  for (const MixPart& part : mix.parts)
    parts.push_back(mass(part.as_fed.value(), reader) + " of " + answer.offers[part.offer].id);
  return listed(parts);
}

std::string quote_words(const FeedOffer& offer, double amount, const Reader& reader) {
  const Quote* quote = offer.cost ? offer.cost->as_quoted : nullptr;
  if (quote == nullptr || quote->unit.empty())
    return fixed(amount, 2) + " " + reader.currency + "/kg";
  const SellingUnit unit = selling_unit(*quote, reader);
  return in_selling_units(amount, *quote, unit) + " " + reader.currency + "/" + unit.word;
}

std::string deciding_words(const PriceAnswer& answer) {
  static const std::map<std::string, std::string> names = {{"dm", "dry matter"},
                                                           {"cp", "CP"},
                                                           {"tdn", "TDN"},
                                                           {"rup", "RUP of CP"},
                                                           {"ca", "calcium"},
                                                           {"p", "phosphorus"},
                                                           {"fat", "fat"},
                                                           {"s", "sulfur"},
                                                           {"ndf", "NDF"},
                                                           {"starch", "starch"},
                                                           {"npn_cpe", "CP from NPN"}};
  std::string words = "the answer rests on: ";
  const std::vector<DecidingFigure>& deciding = answer.mix.deciding;
  for (std::size_t i = 0; i < deciding.size(); ++i) {
    const auto& [offer, nutrient, figure] = deciding[i];
    const bool same_feed = i > 0 && deciding[i - 1].offer == offer;
    words += same_feed ? ", " : (i > 0 ? "; " : "") + answer.offers[offer].id + ": ";
    words += fmt::format("{} {} % ({})", names.at(nutrient),
                         shortest(std::round(figure.value * 1e4) / 100), figure.standing);
  }
  return words;
}

/// Between which quotes the amounts stay, and what one would feed else.
Page alternatives(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  page.sentence(protein_words(answer, reader));
  for (const Option& option : answer.options) {
    if (!option.stays) continue;
    const FeedOffer& offer = answer.offers[option.offer];
    page.sentence(fmt::format("the amounts stay while {} is quoted {}", offer.id,
                              range_words(offer, *option.stays, reader)));
  }
  if (answer.runner_up) {
    const Mix& second = *answer.runner_up;
    page.sentence(fmt::format("next best: {}: {} a head and day more",
                              choice_in_words(answer, second, reader),
                              money((second.cost() - answer.mix.cost()).value(), reader)));
  }
  for (const DisplacedMix& other : answer.displaced)
    page.sentence(fmt::format(
        "if feed pushes out {} grass than taken here (the {} end of the published range): {}, {}",
        other.end == DisplacementEnd::low ? "less" : "more",
        other.end == DisplacementEnd::low ? "low" : "high",
        choice_in_words(answer, other.mix, reader), money(other.mix.cost().value(), reader)));
  return page;
}

Page certainty_page(const PriceAnswer& answer, const Reader& reader) {
  Page page;
  if (answer.certainty.empty()) return page;
  page.heading("what each step of certainty costs, a head and day");
  for (const CoverStep& step : answer.certainty) {
    const bool fed = step.mix.status == MixStatus::optimal;
    page.note(fmt::format("{} %: {}{}", fixed(step.cover * 100, 0),
                          fed ? money(step.mix.cost().value(), reader) + ", " : "",
                          choice_in_words(answer, step.mix, reader)));
  }
  return page;
}

}  // namespace pluckbook
