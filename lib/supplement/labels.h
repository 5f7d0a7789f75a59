// labels.h - labels that allow or ask for more than a published ceiling.
#pragma once

#include <string>
#include <vector>

#include "supplement/least_cost.h"

namespace pluckbook {

/// In words, one a feed: the ceiling is held, whatever the label says.
std::vector<std::string> labels_over_ceilings(const GrazingDay& day,
                                              const std::vector<FeedOffer>& offers);

}  // namespace pluckbook
