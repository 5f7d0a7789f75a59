#include <fmt/format.h>

#include "base/text.h"
#include "report/pages.h"
#include "report/report.h"

namespace pluckbook {
namespace {

/// Days spread over the week as evenly as whole days allow, from Monday.
std::string feeding_days(int feedings_per_week) {
  static const char* const days[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  if (feedings_per_week <= 0) return "always there";
  if (feedings_per_week >= 7) return "every day";
  std::string words;
  for (int i = 0; i < feedings_per_week; ++i) {
    words += (i > 0 ? " " : "") + std::string(days[i * 7 / feedings_per_week]);
  }
  return words;
}

Table amounts(const PriceAnswer& price, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"feed", Align::left},
               {"days", Align::left},
               {unit + " a head a feeding"},
               {unit + " for the herd"}});
  for (const MixPart& part : price.mix.parts) {
    const FeedOffer& offer = price.offers[part.offer];
    const int feedings = offer.feed->self_fed ? 0 : price.mix.feedings_per_week;
    const double daily = in_mass_unit(part.as_fed.value(), reader);
    const double feeding = feedings == 0 ? daily * 7 : daily * 7 / feedings;
    const std::string& name = offer.feed->name.empty() ? offer.id : offer.feed->name;
    table.add({name, feeding_days(feedings),
               three_figures(feeding) + (feedings == 0 ? " a week" : ""),
               fixed(feeding * price.herd->head, 0) + (feedings == 0 ? " a week" : "")});
  }
  return table;
}

Page herd_card(const HerdReport& herd, const Reader& reader) {
  Page page;
  const Herd& cows = *herd.outlook.herd;
  page.heading(fmt::format("{}: {} head on {}", cows.name.empty() ? cows.id : cows.name, cows.head,
                           herd.outlook.pasture->name));
  if (!herd.price) return page.sentence("No card: " + herd.no_price + ".");
  const PriceAnswer& price = *herd.price;
  if (price.mix.status != MixStatus::optimal) return page.sentence(price_finding(price, reader));
  for (const std::string& caution : price.cautions) page.note(caution);
  return page.space().add(amounts(price, reader));
}

}  // namespace

Page feeding_card(const ReportAnswer& report, const Reader& reader) {
  Page page;
  page.sentence(
      fmt::format("{}: what to feed from {}.", report.book->name, in_words(report.settings.as_of)));
  for (const HerdReport& herd : report.herds) page.append(herd_card(herd, reader));
  return page;
}

}  // namespace pluckbook
