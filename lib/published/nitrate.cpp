#include "published/nitrate.h"

#include "published/bundled.h"

namespace pluckbook {
namespace {

std::vector<NitrateGuide> read_guides() {
  std::vector<NitrateGuide> guides;
  for (const Bundled& entry : Bundled::topic("nitrate").at("guides").items()) {
    NitrateGuide guide{entry.text("id"), entry.text("source"), entry.text("status"), {}};
    for (const Bundled& step : entry.at("steps").items()) {
      const bool last = !step.has("up_to");
      guide.steps.push_back(
          {last ? std::nullopt : std::optional(step.number("up_to")), step.text("says")});
    }
    if (guide.steps.empty() || guide.steps.back().up_to_ppm) entry.fail("the last step is open");
    guides.push_back(std::move(guide));
  }
  return guides;
}

}  // namespace

const std::vector<NitrateGuide>& nitrate_guides() {
  static const auto guides = read_guides();
  return guides;
}

const std::string& advice_of(const NitrateGuide& guide, double nitrate_n_ppm) {
  for (const NitrateStep& step : guide.steps)
    if (!step.up_to_ppm || nitrate_n_ppm <= *step.up_to_ppm) return step.says;
  return guide.steps.back().says;
}

}  // namespace pluckbook
