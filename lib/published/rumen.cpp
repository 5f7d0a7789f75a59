#include "published/rumen.h"

#include "published/bundled.h"

namespace pluckbook {

const RumenFigures& rumen_figures() {
  static const RumenFigures figures = [] {
    const Bundled file = Bundled::topic("rumen").at("figures");
    const auto value = [&](const char* id) { return file.with_id(id).number("value"); };
    return RumenFigures{value("forage_undegraded") / 100, value("urea_cp"),
                        value("sulfur_of_sulfate"), value("water_of_weight")};
  }();
  return figures;
}

}  // namespace pluckbook
