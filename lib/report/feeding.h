// feeding.h - what one feeding holds, and amounts in the unit a feed is sold by.
#pragma once

#include <optional>
#include <string>

#include "report/shown.h"
#include "supplement/least_cost.h"

namespace pluckbook {

struct Feeding {
  bool by_itself = false;  // set out for a week
  double kg_per_head = 0;  // as fed, at one feeding; a week of it where it feeds itself
};

Feeding feeding_of(const FeedOffer& offer, const MixPart& part, int feedings_per_week);

/// "13.5 bags of 50 lb", "0.34 ton", "4.2 x 56 lb"; "" without a quote.
std::string as_sold(double kg, const FeedOffer& offer, const Reader& reader);

/// What the truck brings, kg: the load of its quote, or the unit itself where it is sold by the
/// load; nothing where the quote does not say.
std::optional<double> load_of(const FeedOffer& offer);

}  // namespace pluckbook
