// rumen.h - what grass, urea and water bring to the rumen. What it makes of them: energetics.h.
#pragma once

namespace pluckbook {

/// Each figure with its source and standing: reference/rumen.yaml.
struct RumenFigures {
  double forage_undegraded;  // fraction of dry matter, where the laboratory has no figure
  double urea_cp;            // 2.81
  double sulfur_of_sulfate;  // 0.334
  double water_of_weight;    // litres a day per kg of body weight
};
const RumenFigures& rumen_figures();

}  // namespace pluckbook
