// report.h - the page on the kitchen wall and the card in the truck: everything the book says on a
// day, in one HTML file that fetches nothing and needs no script.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "advice/plan.h"
#include "advice/price.h"
#include "advice/workings.h"
#include "report/answers.h"
#include "report/page.h"
#include "report/shown.h"

namespace pluckbook {

struct HerdReport {
  HerdOutlook outlook;
  std::shared_ptr<const DietSeries> series;  // what diet points into
  DietAnswer diet;
  std::optional<PriceAnswer> price;
  std::string no_price;  // why there is none
  std::optional<Plan> plan;
  Workings workings;
};

struct ReportAnswer {
  const Book* book = nullptr;
  OutlookSettings settings;
  std::vector<HerdReport> herds;
  std::optional<NextSample> next_sample;
};

/// Gathers the answers for the herds named.
/// Requires: `book` as known on settings.as_of; it outlives the answer.
/// Fails: a herd on no pasture, a need outside all tables. A price that cannot be had is said on
///        the page. `progress` is told how much is done.
Result<ReportAnswer> report_of(const Book& book, const std::vector<const Herd*>& herds,
                               const OutlookSettings& settings,
                               const std::function<void(double share)>& progress);

/// One self-contained HTML document: the advice first, then each herd with charts, tables,
/// cautions before prices, and what would change the advice; glossary and sources last.
std::string report_html(const ReportAnswer& report, const Reader& reader);

/// What to carry out to the truck: for each herd what to feed, on which days, how much a head and
/// a feeding, and what to watch for.
Page feeding_card(const ReportAnswer& report, const Reader& reader);
/// The same as an HTML document.
std::string feeding_card_html(const ReportAnswer& report, const Reader& reader);

}  // namespace pluckbook
