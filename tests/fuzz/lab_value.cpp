// name=value as it is typed from a laboratory's page.
#include <cmath>

#include "book/read.h"
#include "fuzz/properties.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace pluckbook;
  const Result<TypedValue> typed = parse_lab_value(fuzz::text_of(data, size));
  if (!typed) {
    fuzz::require_useful(typed.problems());
  } else {
    fuzz::require(std::isfinite(typed->percent) && !typed->analyte.empty(), "a value is a number");
  }
  return 0;
}
