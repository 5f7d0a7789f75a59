// text.h - the answers as people read them: the finding in the first line, in a sentence, then the
// table, then what to do next.
#pragma once

#include <string>

#include "advice/price.h"
#include "report/answers.h"
#include "report/shown.h"

namespace pluckbook {

std::string outlook_text(const OutlookAnswer& answer, const Reader& reader);
/// "falls below need about 3 Sep (24 Aug to 15 Sep, 8 years in 10)", one nutrient of one herd.
std::string finding(const NutrientOutlook& nutrient, Date until);

std::string price_text(const PriceAnswer& answer, const Reader& reader);
std::string diet_text(const DietAnswer& answer);
std::string need_text(const NeedAnswer& answer, const Reader& reader);
std::string sources_text();

}  // namespace pluckbook
