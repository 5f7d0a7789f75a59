#include "book/market_unit.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "book/values.h"

namespace pluckbook {
namespace {

constexpr std::array<std::string_view, 14> containers = {
    "bag",  "sack",   "bale", "roll", "tub",  "block", "barrel",
    "drum", "bushel", "tote", "load", "tank", "stack", "box",
};

}  // namespace

std::string several(const std::string& container) {
  return container == "box" ? "boxes" : container + "s";
}

std::string container_in(std::string_view word) {
  if (word == "bu") return "bushel";
  const auto known = std::find_if(containers.begin(), containers.end(), [&](std::string_view one) {
    return word == one || word == several(std::string(one));
  });
  return known == containers.end() ? "" : std::string(*known);
}

std::optional<MarketUnit> market_unit(std::string_view text) {
  if (const auto kg = kg_in(text)) return MarketUnit{*kg, std::string(text), ""};
  const std::size_t space = text.rfind(' ');
  if (space == std::string_view::npos) return std::nullopt;
  const std::string container = container_in(trimmed(text.substr(space)));
  const std::string_view size = trimmed(text.substr(0, space));
  const bool counted = !size.empty() && size[0] >= '0' && size[0] <= '9';  // "lb bag" is no size
  const auto kg = kg_in(size);
  if (container.empty() || !counted || !kg) return std::nullopt;
  return MarketUnit{*kg, std::string(size), container};
}

}  // namespace pluckbook
