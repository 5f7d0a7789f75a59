#include "report/feeding.h"

#include <cctype>

#include "book/market_unit.h"
#include "report/shown.h"

namespace pluckbook {

Feeding feeding_of(const FeedOffer& offer, const MixPart& part, int feedings_per_week) {
  const bool by_itself = feedings_per_week == 0 || (offer.feed != nullptr && offer.feed->self_fed);
  const double days = by_itself ? 7 : 7.0 / feedings_per_week;
  return {by_itself, part.as_fed.value() * days};
}

std::optional<double> load_of(const FeedOffer& offer) {
  const Quote* quote = offer.cost ? offer.cost->as_quoted : nullptr;
  if (quote == nullptr) return std::nullopt;
  const auto unit = market_unit(quote->unit);
  if (unit && unit->container == "load") return quote->kg_per_unit;
  return quote->load_kg;
}

std::string as_sold(double kg, const FeedOffer& offer, const Reader& reader) {
  const Quote* quote = offer.cost ? offer.cost->as_quoted : nullptr;
  if (quote == nullptr) return "";
  const SellingUnit sold_by = selling_unit(*quote, reader);
  const std::string count = three_figures(kg / sold_by.kg, 2);
  const auto unit = market_unit(sold_by.word);
  if (!unit) return count + " x " + sold_by.word;
  if (!unit->container.empty()) return count + " " + several(unit->container) + " of " + unit->size;
  const bool counted = std::isdigit(static_cast<unsigned char>(unit->size.front())) != 0;
  return count + (counted ? " x " : " ") + unit->size;
}

}  // namespace pluckbook
