// pages.h - the answers as people read them: the finding first, in a sentence, then the table, then
// what to do next.
#pragma once

#include <string>

#include "advice/compare.h"
#include "advice/plan.h"
#include "advice/price.h"
#include "advice/workings.h"
#include "published/feeds.h"
#include "report/answers.h"
#include "report/page.h"
#include "report/shown.h"

namespace pluckbook {

Page page_of(const OutlookAnswer& answer, const Reader& reader);
/// "falls below need about 3 Sep (24 Aug to 15 Sep, 8 years in 10)", one nutrient of one herd.
std::string finding(const NutrientOutlook& nutrient, Date until);

Page page_of(const PriceAnswer& answer, const Reader& reader);
Page page_of(const Plan& plan, const Reader& reader);
Page page_of(const Comparison& comparison, const Reader& reader);
Page page_of(const DietAnswer& answer, const Reader& reader);
Page page_of(const NeedAnswer& answer, const Reader& reader);
Page page_of(const Workings& workings, const Reader& reader);
Page feeds_page(const std::vector<const PublishedFeed*>& feeds);
Page sources_page();

// Parts of them, for a page that says the rest in its own place.
std::string price_finding(const PriceAnswer& answer, const Reader& reader);
/// The same in a dozen words, for the top of the page; amounts are the day's average.
std::string price_in_brief(const PriceAnswer& answer, const Reader& reader);
Page price_tables(const PriceAnswer& answer, const Reader& reader);
/// Why feeds cannot do it alone, and what the price rests on that a reader might take for granted.
Page price_notes(const PriceAnswer& answer, const Reader& reader);
/// "cube-38 would be bought at up to 22.08 USD/cwt (quoted at 24.50)": feeds of the mix and near
/// rivals.
std::vector<std::string> what_changes_the_mix(const PriceAnswer& answer, const Reader& reader);
Page outlook_tables(const HerdOutlook& herd, const OutlookSettings& settings, const Reader& reader);
Page diet_tables(const DietAnswer& answer);
/// What to feed from when to when, and the condition without it; no money, since the cautions come
/// first.
Page plan_finding(const Plan& plan, const Reader& reader);
/// "It costs 23868.95 USD with the trips.", said after the cautions; empty when nothing is bought.
Page plan_cost(const Plan& plan, const Reader& reader);
/// Tons, money and the order; empty when nothing is bought.
Page plan_purchases(const Plan& plan, const Reader& reader);
/// Window by window and month by month.
Page plan_windows(const Plan& plan, const Reader& reader);

}  // namespace pluckbook
