// pages.h - the answers as people read them: the finding first, in a sentence, then the table, then
// what to do next.
#pragma once

#include <string>

#include "advice/plan.h"
#include "advice/price.h"
#include "report/answers.h"
#include "report/page.h"
#include "report/shown.h"

namespace pluckbook {

Page page_of(const OutlookAnswer& answer, const Reader& reader);
/// "falls below need about 3 Sep (24 Aug to 15 Sep, 8 years in 10)", one nutrient of one herd.
std::string finding(const NutrientOutlook& nutrient, Date until);

Page page_of(const PriceAnswer& answer, const Reader& reader);
Page page_of(const Plan& plan, const Reader& reader);
Page page_of(const DietAnswer& answer, const Reader& reader);
Page page_of(const NeedAnswer& answer, const Reader& reader);
Page sources_page();

}  // namespace pluckbook
