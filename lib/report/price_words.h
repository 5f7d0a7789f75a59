// price_words.h - a mix, a quote and what one would feed else, in words.
#pragma once

#include <string>

#include "advice/price.h"
#include "report/page.h"
#include "report/shown.h"

namespace pluckbook {

std::string money(double amount, const Reader& reader);
/// "fed 3 days a week"
std::string per_feeding_words(const Mix& mix);
/// "2.06 lb of distillers and 0.50 lb of tub-30"
std::string parts_in_words(const PriceAnswer& answer, const Mix& mix, const Reader& reader);
/// "225.67 USD/ton", in the unit of the feed's quote.
std::string quote_words(const FeedOffer& offer, double amount, const Reader& reader);

/// Between which quotes the amounts stay, what her rumen gets, and what one would feed else.
Page alternatives(const PriceAnswer& answer, const Reader& reader);
/// The mix at other covers, and what each costs.
Page certainty_page(const PriceAnswer& answer, const Reader& reader);

/// "the answer rests on: distillers: dry matter 90 % (read), CP 30.6 % (own)"
std::string deciding_words(const PriceAnswer& answer);

}  // namespace pluckbook
