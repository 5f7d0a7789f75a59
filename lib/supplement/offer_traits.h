// offer_traits.h - what the model asks of a feed besides its figures: how it may be fed, and to
// which published ceilings it belongs.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "supplement/least_cost.h"

namespace pluckbook {

/// The newest quote on or before a day; one without a date only where no dated one stands.
const Quote* newest_quote(const Feed& feed, Date on);

bool is_self_fed(const FeedOffer& offer);
bool carries_npn(const FeedOffer& offer);  // urea or other non-protein nitrogen
bool is_grain(const FeedOffer& offer);     // of class grain, or half starch by its own figure

/// The feed is the published feed of that id, or of that class.
bool belongs_to(const FeedOffer& offer, const std::string& feed_or_class);

/// Why a feed cannot be fed at that many feedings a week (0: only what is self-fed), in words;
/// "" when it can.
std::string why_left_out(const FeedOffer& offer, int feedings_per_week);

/// All ways of feeding that the feeds allow, fewest trips first; 0 where one feeds itself.
std::set<int> feeding_frequencies(const std::vector<FeedOffer>& offers);

/// How much of a week's feed one feeding holds, against one day's share: 7 / feedings.
double days_in_one_feeding(const FeedOffer& offer, int feedings_per_week);

/// kg forage DM left ungrazed for each kg DM of the feed.
///   Protein-short forage (TDN:CP over 7) is displaced less, by a feed of 25 % protein or more.
/// Source: published/rules.h, displacement; a feed without a class is taken as a mixed cube, or as
///         grain when half of it is starch (assumed). The day says which end of the range. Where
///         nothing is grazed nothing is displaced.
double displacement_on(const FeedOffer& offer, const GrazingDay& day);

/// The same where protein is not short, and for protein feed beyond the first small amount.
double usual_displacement(const FeedOffer& offer, DisplacementEnd end);

}  // namespace pluckbook
