#include "report/bill.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"
#include "report/feeding.h"

namespace pluckbook {
namespace {

double kg_per_ton(const Reader& reader) {
  return reader.units == UnitSystem::us ? kg_per_us_ton : kg_per_tonne;
}

Cents cost_of(Hundredths tons, Cents a_ton) {
  return std::lround(static_cast<double>(tons) * static_cast<double>(a_ton) / 100);
}

Cents price_of(const FeedOffer& offer, const Reader& reader) {
  return to_cents(offer.cost->delivered().value() * kg_per_ton(reader));
}

Date month_of(Date day) {
  return {day.year(), day.month(), 1};
}

/// Kilograms and trips before they are rounded, by line and month.
struct Ledger {
  std::vector<FeedLine> feeds;
  std::vector<TripLine> trips;
  std::map<Date, std::vector<double>> kg;  // one a feed line
  std::map<Date, std::vector<long>> runs;  // one a trip line

  std::size_t line_of(const FeedOffer& offer, const Reader& reader) {
    for (std::size_t i = 0; i < feeds.size(); ++i)
      if (feeds[i].offer->id == offer.id &&
          feeds[i].offer->cost->as_quoted == offer.cost->as_quoted)
        return i;
    feeds.push_back({&offer, 0, price_of(offer, reader)});
    return feeds.size() - 1;
  }
  std::size_t line_of(const Pasture& pasture, Cents each) {
    for (std::size_t i = 0; i < trips.size(); ++i)
      if (trips[i].pasture == &pasture) return i;
    trips.push_back({&pasture, 0, each});
    return trips.size() - 1;
  }
};

template <class Number>
Number& at_line(std::map<Date, std::vector<Number>>& months, Date day, std::size_t line) {
  std::vector<Number>& numbers = months[month_of(day)];
  if (numbers.size() <= line) numbers.resize(line + 1);
  return numbers[line];
}

void enter(const FedWindow& fed, int head, const Reader& reader, Ledger& ledger) {
  const FeedingWindow& window = fed.window;
  for (const MixPart& part : fed.mix.parts) {
    const FeedOffer& offer = fed.offers[part.offer];
    const std::size_t line = ledger.line_of(offer, reader);
    for (Date day = window.first; day <= window.last; day += Days(1))
      at_line(ledger.kg, day, line) += bought_per_day(offer, part, head);
  }
  if (fed.trips == 0) return;
  const std::size_t line = ledger.line_of(*window.pasture, to_cents(window.trip_per_head * head));
  for (long run = 0; run < fed.trips; ++run)
    ++at_line(ledger.runs, window.first + Days(run * window.days() / fed.trips), line);
}

/// One month: what the running sums grow by when it is added.
MonthLine month_line(Date month, const std::vector<double>& kg, const Reader& reader,
                     std::vector<double>& running, std::vector<FeedLine>& feeds) {
  MonthLine line{month, std::vector<Hundredths>(feeds.size(), 0), 0, 0};
  for (std::size_t i = 0; i < kg.size(); ++i) {
    const FeedLine before = feeds[i];
    running[i] += kg[i];
    feeds[i].tons = hundredths_of_ton(running[i], reader);
    line.tons[i] = feeds[i].tons - before.tons;
    line.cost += feeds[i].cost() - before.cost();
  }
  return line;
}

std::vector<Date> months_of(const Schedule& schedule) {
  std::vector<Date> months;
  const WindowSettings& days = schedule.settings.windows;
  for (Date month = month_of(days.as_of); month <= days.until; month = month_of(month + Days(31)))
    months.push_back(month);
  return months;
}

}  // namespace

std::string ton_word(const Reader& reader) {
  return reader.units == UnitSystem::us ? "ton" : "tonne";
}

Hundredths hundredths_of_ton(double kilograms, const Reader& reader) {
  return std::lround(kilograms / kg_per_ton(reader) * 100);
}

double kilograms_of(Hundredths tons, const Reader& reader) {
  return static_cast<double>(tons) / 100 * kg_per_ton(reader);
}

std::optional<Haul> haul_of(double kilograms, const FeedOffer& offer) {
  const Quote* quote = offer.cost ? offer.cost->as_quoted : nullptr;
  if (quote == nullptr || quote->a_truck <= 0 || !quote->load_kg) return std::nullopt;
  const double loads = kilograms / *quote->load_kg;
  const double trucks = std::ceil(loads - 1e-9);
  return Haul{std::lround(trucks), to_cents(quote->a_truck),
              to_cents(quote->a_truck * std::max(0.0, trucks - loads))};
}

std::string load_in_words(const FeedOffer& offer, const Reader& reader) {
  const std::optional<double> load = load_of(offer);
  if (!load) return "";
  const double tons = std::round(*load / kg_per_ton(reader) * 100) / 100;
  return shortest(tons) + " " + ton_word(reader) + (tons == 1 ? "" : "s");
}

std::string load_count(double kilograms, const FeedOffer& offer) {
  const std::optional<double> load = load_of(offer);
  if (!load) return "";
  const double loads = kilograms / *load;
  return fixed(loads, loads < 1 ? 2 : 1) + " loads";
}

std::string loads_in_words(double kilograms, const FeedOffer& offer, const Reader& reader) {
  const std::string count = load_count(kilograms, offer);
  return count.empty() ? "" : count + " of " + load_in_words(offer, reader);
}

Cents to_cents(double money) {
  return std::lround(money * 100);
}

std::string two_decimals(long hundredths) {
  return fixed(static_cast<double>(hundredths) / 100, 2);
}

Cents FeedLine::cost() const {
  return cost_of(tons, a_ton);
}

Cents Bill::total() const {
  Cents sum = 0;
  for (const FeedLine& line : feeds) sum += line.cost();
  for (const TripLine& line : trips) sum += line.cost();
  return sum;
}

Cents OutcomeColumn::total() const {
  Cents sum = trip_cost;
  for (const FeedLine& line : feeds) sum += line.cost();
  return sum;
}

Bill bill_of(const Schedule& schedule, const Reader& reader) {
  Ledger ledger;
  for (const FedWindow& fed : schedule.windows) enter(fed, schedule.herd->head, reader, ledger);
  Bill bill{std::move(ledger.feeds), std::move(ledger.trips), {}};
  std::vector<double> running(bill.feeds.size(), 0);
  for (const Date month : months_of(schedule)) {
    MonthLine line = month_line(month, ledger.kg[month], reader, running, bill.feeds);
    const std::vector<long>& runs = ledger.runs[month];
    for (std::size_t i = 0; i < runs.size(); ++i) {
      bill.trips[i].trips += runs[i];
      line.trips += runs[i];
      line.cost += runs[i] * bill.trips[i].each;
    }
    bill.months.push_back(std::move(line));
  }
  return bill;
}

OutcomeColumn outcome_at(const Plan& plan, double share, const Reader& reader) {
  OutcomeColumn column;
  column.share = share;
  for (const FeedDemand& demand : plan.demand)
    column.feeds.push_back({&demand.offer, hundredths_of_ton(covering(demand.kg, share), reader),
                            price_of(demand.offer, reader)});
  column.trips = std::lround(covering(plan.trips, share));
  column.trip_cost = to_cents(covering(plan.trip_money, share));
  return column;
}

}  // namespace pluckbook
