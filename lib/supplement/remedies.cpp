#include "supplement/remedies.h"

#include <array>
#include <string_view>

namespace pluckbook {
namespace {

struct Remedy {
  std::string_view limit;  // the beginning of its id
  std::string_view words;
};

constexpr std::array remedies{
    Remedy{"npn", "a feed whose protein is not from urea"},
    Remedy{"urea", "a feed whose protein is not from urea"},
    Remedy{"grain", "an energy feed with little starch (hulls, gluten feed, beet pulp)"},
    Remedy{"supplement_tdn",
           "hay in place of grass: more feed beside it only leaves grass ungrazed"},
    Remedy{"fat", "a feed with less fat"},
    Remedy{"sulfur", "a feed, or water, with less sulfur"},
    Remedy{"calcium_", "a mineral that mends the ratio: limestone for calcium"},
    Remedy{"gut", "a feed with less fibre"},
    Remedy{"intake", "a feed that holds more in a pound"},
    Remedy{"displacement", "a feed that holds more in a pound"},
    Remedy{"forage", "a feed that holds more in a pound"},
};

}  // namespace

std::string remedy_for(const std::string& limit) {
  if (limit.empty()) return "a feed that holds more of what is short";
  for (const Remedy& remedy : remedies)
    if (limit.starts_with(remedy.limit)) return std::string(remedy.words);
  return "another feed beside it";
}

}  // namespace pluckbook
