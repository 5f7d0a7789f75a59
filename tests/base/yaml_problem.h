// yaml_problem.h - what the YAML door says of a text.
#pragma once

#include <string>

#include "base/yaml.h"

namespace pluckbook::testing {

/// The whole text of the Problem, or "read" with nothing wrong.
inline std::string problem_of(const std::string& yaml, const YamlLimits& limits = {}) {
  const Result<YamlDocument> document = read_yaml("f.yaml", yaml, limits);
  return document ? "read" : to_text(document.problems().front());
}

}  // namespace pluckbook::testing
