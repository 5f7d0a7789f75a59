#include "supplement/deciding.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace pluckbook {
namespace {

/// What a limit counts of a feed; a limit that counts its kilograms has none here.
constexpr std::array<std::pair<std::string_view, std::string_view>, 20> counted{{
    {"crude_protein", "cp"},
    {"rumen_protein", "cp"},
    {"tdn", "tdn"},
    {"supplement_tdn", "tdn"},
    {"nem", "tdn"},
    {"rdp", "cp"},
    {"rdp", "rup"},
    {"mp", "cp"},
    {"mp", "rup"},
    {"calcium", "ca"},
    {"phosphorus", "p"},
    {"fat", "fat"},
    {"sulfur", "s"},
    {"gut", "ndf"},
    {"npn", "npn_cpe"},
    {"npn_of_rdp", "npn_cpe"},
    {"npn_usable", "npn_cpe"},
    {"npn_counted", "npn_cpe"},
    {"urea_share", "npn_cpe"},
    {"urea_amount", "npn_cpe"},
}};

std::vector<std::string_view> nutrients_that_decide(const Mix& mix) {
  std::vector<std::string_view> nutrients;
  for (const auto& [limit, nutrient] : counted) {
    const bool priced = std::ranges::find(mix.marginal_costs, limit, &MarginalCost::limit) !=
                        mix.marginal_costs.end();
    const bool known = std::find(nutrients.begin(), nutrients.end(), nutrient) != nutrients.end();
    if (priced && !known) nutrients.push_back(nutrient);
  }
  return nutrients;
}

}  // namespace

std::vector<DecidingFigure> deciding_figures(const std::vector<FeedOffer>& offers, const Mix& mix) {
  std::vector<DecidingFigure> deciding;
  const auto nutrients = nutrients_that_decide(mix);
  for (const MixPart& part : mix.parts) {
    const FeedOffer& offer = offers[part.offer];
    deciding.push_back({part.offer, "dm", {offer.dm.value(), offer.dm_standing}});
    for (const std::string_view nutrient : nutrients)
      if (const auto it = offer.figures.find(std::string(nutrient)); it != offer.figures.end())
        deciding.push_back({part.offer, it->first, it->second});
  }
  return deciding;
}

}  // namespace pluckbook
