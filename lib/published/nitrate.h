// nitrate.h - what published guides say of nitrate in forage. They disagree, so all are kept.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace pluckbook {

struct NitrateStep {
  std::optional<double> up_to_ppm;  // nitrate N of dry matter; none for the last
  std::string says;
};

struct NitrateGuide {
  std::string id, source, status;
  std::vector<NitrateStep> steps;
};

const std::vector<NitrateGuide>& nitrate_guides();

/// What a guide says of so much nitrate N.
const std::string& advice_of(const NitrateGuide& guide, double nitrate_n_ppm);

}  // namespace pluckbook
