// equation_figures.h - one equation of a bundled file: its citation and its coefficients by name.
#pragma once

#include "published/bundled.h"

namespace pluckbook {

class EquationFigures {
 public:
  /// The entry `id` under `equations` of reference/TOPIC.yaml.
  EquationFigures(std::string_view topic, std::string_view id)
      : block_(Bundled::topic(topic).at("equations").with_id(id)), figures_(block_.at("figures")) {}

  double operator[](std::string_view id) const { return figures_.with_id(id).number("value"); }
  Citation citation() const { return citation_of(block_); }

 private:
  Bundled block_, figures_;
};

}  // namespace pluckbook
