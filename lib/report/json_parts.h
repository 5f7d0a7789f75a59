// json_parts.h - the values documents are made of: ten figures, null for what is no number, and
// every quantity with its unit.
#pragma once

#include "base/units.h"
#include "report/json.h"

namespace pluckbook {

Json number(double value);
/// Of dry matter.
Json share(Share value);
/// A mass a day.
Json amount(double kilograms, const Reader& reader);

}  // namespace pluckbook
