// scenarios.h - the demo books of scenarios/, compiled in.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace pluckbook::cli {

struct ScenarioFile {
  std::string scenario;   // "northern"
  std::string path;       // "samples/2026/draws.yaml"
  std::string_view text;  // the bytes of the file
};

const std::vector<ScenarioFile>& scenario_files();

}  // namespace pluckbook::cli
