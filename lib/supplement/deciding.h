// deciding.h - on which figures of which feeds an answer rests.
#pragma once

#include <vector>

#include "supplement/least_cost.h"

namespace pluckbook {

/// Of every feed in the mix: its dry matter, and what each limit counts that has a price. A figure
/// the feed does not have decides nothing.
std::vector<DecidingFigure> deciding_figures(const std::vector<FeedOffer>& offers, const Mix& mix);

}  // namespace pluckbook
