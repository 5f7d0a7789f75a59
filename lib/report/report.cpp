#include "report/report.h"

#include <mutex>

#include "base/parallel.h"

namespace pluckbook {
namespace {

Result<HerdReport> herd_report(const Book& book, const Herd& herd,
                               const OutlookSettings& settings) {
  HerdReport report;
  Result<HerdOutlook> outlook = outlook_of(book, herd, settings);
  if (!outlook) return outlook.problems();
  report.outlook = std::move(*outlook);
  Result<DietSeries> series = DietSeries::of(book, *report.outlook.pasture);
  if (!series) return series.problems();
  report.series = std::make_shared<const DietSeries>(std::move(*series));
  report.diet = diet_answer(book, *report.series, settings, &report.outlook);
  Result<PriceAnswer> price = price_for(book, herd, {settings.as_of, book.cover});
  if (price) {
    report.price = std::move(*price);
  } else {
    report.no_price = price.problems().front().what;
  }
  if (Result<Plan> plan =
          plan_for(book, herd, usual_plan(settings.as_of, settings.until, book.cover))) {
    report.plan = std::move(*plan);
  }
  const Result<Whereabouts> grazing = grazing_of(book, herd, settings.as_of);
  if (!grazing) return grazing.problems();
  Result<HerdDay> day = herd_day(herd, *grazing, *report.series, settings.as_of);
  if (!day) return day.problems();
  report.workings = workings_of(*day);
  return report;
}

}  // namespace

Result<ReportAnswer> report_of(const Book& book, const std::vector<const Herd*>& herds,
                               const OutlookSettings& settings,
                               const std::function<void(double share)>& progress) {
  ReportAnswer report;
  report.book = &book;
  report.settings = settings;
  std::mutex one_at_a_time;
  std::size_t done = 0;
  Result<std::vector<HerdReport>> all =
      all_in_parallel<HerdReport>(herds.size(), [&](std::size_t i) {
        Result<HerdReport> one = herd_report(book, *herds[i], settings);
        const std::lock_guard<std::mutex> held(one_at_a_time);
        progress(static_cast<double>(++done) / static_cast<double>(herds.size()));
        return one;
      });
  if (!all) return all.problems();
  report.herds = *std::move(all);
  std::vector<HerdOutlook> outlooks;
  for (const HerdReport& one : report.herds) outlooks.push_back(one.outlook);
  report.next_sample = next_sample(book, outlooks, settings);
  return report;
}

}  // namespace pluckbook
