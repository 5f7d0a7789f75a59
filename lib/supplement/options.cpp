#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "supplement/least_cost.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

constexpr int most_steps = 60;  // each step leaves a mix behind for good; a handful are met

Mix mix_of_one(const GrazingDay& day, const std::vector<FeedOffer>& offers, std::size_t j) {
  Mix mix = cheapest_mix(day, {offers[j]});
  for (MixPart& part : mix.parts) part.offer = j;
  return mix;
}

Mix mix_without(const GrazingDay& day, const std::vector<FeedOffer>& offers, std::size_t j) {
  std::vector<FeedOffer> rest = offers;
  rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(j));
  Mix mix = cheapest_mix(day, rest);
  for (MixPart& part : mix.parts) part.offer += part.offer >= j;  // back to all the offers
  return mix;
}

/// The offer at a price per kg as fed where the cows eat it, all losses and freight included.
FeedOffer priced_at(FeedOffer offer, double fed) {
  offer.cost = DeliveredCost{MoneyPerKgAsFed(fed), MoneyPerKgAsFed(0), 0, 0, std::nullopt};
  return offer;
}

double amount_as_fed(const Mix& mix, std::size_t j) {
  for (const MixPart& part : mix.parts)
    if (part.offer == j) return part.as_fed.value();
  return 0;
}

/// The price under which feed j is in the cheapest mix.
///   The least cost V(c) is, in the price c of one feed, the lower edge of lines 'rest + c amount',
///   one for each mix, and level at V(without) from the break-even on. From c = 0, each step goes
///   to where the line of the cheapest mix at c meets V(without); it stops at the last such line.
std::optional<double> break_even(const GrazingDay& day, std::vector<FeedOffer> offers,
                                 std::size_t j) {
  const Mix without = mix_without(day, offers, j);
  if (without.status != MixStatus::optimal) return std::nullopt;
  const double level = without.cost().value();
  std::optional<double> price;
  for (int step = 0; step < most_steps; ++step) {
    offers[j] = priced_at(offers[j], price.value_or(0));
    const Mix with = cheapest_mix(day, offers);
    const double amount = amount_as_fed(with, j);
    if (with.status != MixStatus::optimal || amount <= 0) return price;
    const double saved = level - with.cost().value();
    if (saved <= same_money) return price;
    price = price.value_or(0) + saved / amount;
  }
  return price;
}

/// The price of feed j, from `price` towards the best mix's own, up to which that mix is cheapest.
///   Cost falls along the best mix's line 'rest + c amount' or below it; where it is below, the
///   line of the mix that is cheaper there meets the best's nearer by. It stops where none is
///   cheaper.
double end_of_stay(const GrazingDay& day, std::vector<FeedOffer> offers, const Mix& best,
                   std::size_t j, double price) {
  const double own = offers[j].cost->fed().value(), amount = amount_as_fed(best, j);
  for (int step = 0; step < most_steps; ++step) {
    offers[j] = priced_at(offers[j], price);
    const Mix there = cheapest_mix(day, offers);
    const double saved = best.cost().value() + amount * (price - own) - there.cost().value();
    const double steeper = amount - amount_as_fed(there, j);
    if (saved <= same_money || steeper == 0) return price;
    price -= saved / steeper;
  }
  return price;
}

/// Back to what the seller says: before losses, without freight, per unit of the market.
std::optional<double> as_quote(const FeedOffer& offer, double fed) {
  if (!offer.cost || offer.cost->as_quoted == nullptr) return std::nullopt;
  const DeliveredCost& cost = *offer.cost;
  const double delivered = fed * (1 - cost.shrink) * (1 - cost.waste);
  return (delivered - cost.freight.value()) * cost.as_quoted->kg_per_unit;
}

constexpr double dear = 100;  // times its price: a feed that is fed then has no rival

/// The quotes between which the best mix stays as it is.
std::optional<QuoteRange> stay_of(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                                  const Mix& best, std::size_t j) {
  if (amount_as_fed(best, j) <= 0) return std::nullopt;
  const double top = dear * offers[j].cost->fed().value();
  const double high = end_of_stay(day, offers, best, j, top);
  const auto low = as_quote(offers[j], end_of_stay(day, offers, best, j, 0));
  if (!low) return std::nullopt;
  return QuoteRange{std::max(0.0, *low),
                    high < top ? as_quote(offers[j], high) : std::optional<double>()};
}

/// Why it takes no part in any of the ways it may be fed; "" when it does in one.
std::string left_out(const FeedOffer& offer) {
  std::string why;
  for (const int feedings : feeding_frequencies({offer})) {
    why = why_left_out(offer, feedings);
    if (why.empty()) break;
  }
  return why;
}

/// "the TDN the cow needs, the ... and the ..."
std::string needs_in_words(const std::vector<Unmet>& unmet) {
  std::vector<std::string> needs;
  for (const Unmet& need : unmet) needs.push_back("the " + need.words);
  return listed(needs);
}

std::string why_not(const FeedOffer& offer, const Mix& alone) {
  if (std::string why = left_out(offer); !why.empty()) return why;
  if (alone.status == MixStatus::not_trusted) return "its answer failed its own check";
  if (alone.status != MixStatus::out_of_reach || alone.unmet.empty()) return "";
  const std::string what = needs_in_words(alone.unmet);
  const std::string& way = alone.unmet.front().in_the_way;
  if (way.empty()) return "no amount of it reaches " + what;
  const bool several = way.find("; ") != std::string::npos;
  return "cannot reach " + what + ": " + way + (several ? " stand" : " stands") + " in the way";
}

}  // namespace

std::vector<Option> all_options(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                                const Mix& best) {
  std::vector<Option> options;
  for (std::size_t j = 0; j < offers.size(); ++j) {
    Option option;
    option.offer = j;
    option.alone = mix_of_one(day, offers, j);
    option.why_not = why_not(offers[j], option.alone);
    option.cost_per_kg_protein = offers[j].cost_per_kg_of("cp");
    option.cost_per_kg_tdn = offers[j].cost_per_kg_of("tdn");
    if (best.status == MixStatus::optimal) {
      option.stays = stay_of(day, offers, best, j);
      if (const auto fed = break_even(day, offers, j)) {
        option.break_even_fed = MoneyPerKgAsFed(*fed);
        option.break_even_quote = as_quote(offers[j], *fed);
      }
    }
    options.push_back(std::move(option));
  }
  return options;
}

std::optional<Mix> runner_up(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                             const Mix& best) {
  std::optional<Mix> second;
  if (best.status != MixStatus::optimal) return second;
  for (const MixPart& part : best.parts) {
    Mix other = mix_without(day, offers, part.offer);
    if (other.status != MixStatus::optimal) continue;
    if (!second || other.cost() < second->cost()) second = std::move(other);
  }
  return second;
}

}  // namespace pluckbook
