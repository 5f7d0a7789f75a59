// market_unit.h - the unit a feed is sold by: "ton", "cwt", "50 lb", "50 lb bag", "56 lb bushel".
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace pluckbook {

struct MarketUnit {
  double kg = 0;
  std::string size;       // "50 lb", "ton"
  std::string container;  // "bag", "bale", "tub", ...; "" where it is sold by weight alone
};

/// A mass, or a mass and what it comes in. Nothing for a unit nobody knows.
std::optional<MarketUnit> market_unit(std::string_view text);

/// "bag" for "bag" and "bags"; "" for a word that is no container. A container without its weight
/// is no unit: bales differ twofold.
std::string container_in(std::string_view word);

/// What a container is called when there are several: "bags", "boxes".
std::string several(const std::string& container);

}  // namespace pluckbook
