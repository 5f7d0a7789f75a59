#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "report/bill.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

std::string tons(Hundredths amount, const Reader& reader) {
  return fmt::format("{} {}s", two_decimals(amount), ton_word(reader));
}

std::string money(Cents cents, const Reader& reader) {
  return two_decimals(cents) + " " + reader.currency;
}

bool is_fed(const FedWindow& fed) {
  return !fed.mix.parts.empty();
}

std::string nothing_needed(const Schedule& schedule) {
  const WindowSettings& days = schedule.settings.windows;
  return fmt::format(
      "No supplement is needed for {} from {} to {}: the diet covers protein and TDN in at least "
      "{} "
      "outcomes of every window.",
      schedule.herd->id, in_words(days.as_of), in_words(days.until), in_hundred(days.cover));
}

/// The outlook names middle dates; what is fed has to last in more years than half.
std::string certainty_words(const Schedule& schedule) {
  return fmt::format(
      "these amounts are enough in {} outcomes, so they begin before the outlook's date, by which "
      "half the years are below need",
      in_hundred(schedule.settings.windows.cover));
}

/// "48.71 tons of distillers and 29.34 tons of corn"
std::string feeds_in_words(const Bill& bill, const Reader& reader) {
  std::vector<std::string> feeds;
  for (const FeedLine& line : bill.feeds)
    feeds.push_back(tons(line.tons, reader) + " of " + line.offer->id);
  return feeds.empty() ? "nothing" : listed(feeds);
}

std::string first_line(const Schedule& schedule, const Bill& bill, const Reader& reader) {
  const WindowSettings& days = schedule.settings.windows;
  if (!schedule.within_reach()) {
    return fmt::format(
        "No safe mix of these feeds meets every need of {} from {} to {} in {} outcomes. The "
        "nearest: {}.",
        schedule.herd->id, in_words(days.as_of), in_words(days.until), in_hundred(days.cover),
        feeds_in_words(bill, reader));
  }
  if (bill.feeds.empty()) return nothing_needed(schedule);
  const auto first = std::find_if(schedule.windows.begin(), schedule.windows.end(), is_fed);
  const auto last = std::find_if(schedule.windows.rbegin(), schedule.windows.rend(), is_fed);
  return fmt::format("Feed {} from {} to {}: {}, covering {} outcomes.", schedule.herd->id,
                     in_words(first->window.first), in_words(last->window.last),
                     feeds_in_words(bill, reader), in_hundred(days.cover));
}

// ---- what to feed, window by window ------------------------------------------------------------

void add_fed_rows(const FedWindow& fed, int head, const Reader& reader, Table& table) {
  std::string from = in_words_without_year(fed.window.first);
  std::string to = in_words_without_year(fed.window.last);
  for (const MixPart& part : fed.mix.parts) {
    const FeedOffer& offer = fed.offers[part.offer];
    const double daily = in_mass_unit(part.as_fed.value(), reader);
    const bool self = offer.feed->self_fed || fed.mix.feedings_per_week == 0;
    const int a_week = fed.mix.feedings_per_week;
    const double bought =
        bought_per_day(offer, part, head) * static_cast<double>(fed.window.days());
    table.add({from, to, offer.id, three_figures(daily), self ? "self" : std::to_string(a_week),
               self ? "self" : fixed(daily * 7 / a_week * head, 0),
               two_decimals(hundredths_of_ton(bought, reader))});
    from = to = "";
  }
}

Table windows_table(const Schedule& schedule, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{"from"},
               {"to"},
               {"feed", Align::left},
               {unit + "/head/day"},
               {"days/week"},
               {"herd " + unit + "/feeding"},
               {ton_word(reader) + "s"}});
  for (std::size_t i = 0; i < schedule.windows.size(); ++i) {
    const FedWindow& fed = schedule.windows[i];
    if (is_fed(fed)) {
      add_fed_rows(fed, schedule.herd->head, reader, table);
      continue;
    }
    while (i + 1 < schedule.windows.size() && !is_fed(schedule.windows[i + 1])) ++i;
    table.add({in_words_without_year(fed.window.first),
               in_words_without_year(schedule.windows[i].window.last), "nothing", "-", "-", "-",
               "-"});
  }
  return table;
}

/// "the TDN the cow needs (in the way: ...)"; "" where every need is met.
std::string missed_in_words(const FedWindow& fed) {
  if (fed.mix.unmet.empty()) return "";
  std::vector<std::string> needs;
  for (const Unmet& unmet : fed.mix.unmet) needs.push_back("the " + unmet.words);
  const std::string& way = fed.mix.unmet.front().in_the_way;
  return listed(needs) + (way.empty() ? "" : " (in the way: " + way + ")");
}

/// The windows whose need no safe mix meets; those that miss alike are told together.
Page out_of_reach(const std::vector<FedWindow>& windows) {
  Page page;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const std::string missed = missed_in_words(windows[i]);
    if (missed.empty()) continue;
    const Date first = windows[i].window.first;
    while (i + 1 < windows.size() && missed_in_words(windows[i + 1]) == missed) ++i;
    page.note(fmt::format(
        "from {} to {} no safe mix of these feeds reaches {}: the nearest one is "
        "shown",
        in_words_without_year(first), in_words_without_year(windows[i].window.last), missed));
  }
  return page;
}

// ---- money -------------------------------------------------------------------------------------

/// "164.0 x 50 lb": how the seller counts it; by loads where that is by the ton.
std::string sold_as(const FeedLine& line, const Reader& reader) {
  const Quote* quote = line.offer->cost->as_quoted;
  if (quote == nullptr) return "-";
  const SellingUnit unit = selling_unit(*quote, reader);
  const double kg = kilograms_of(line.tons, reader);
  if (unit.word == ton_word(reader)) {
    const std::string loads = load_count(kg, *line.offer);
    return loads.empty() ? "-" : loads;
  }
  return fmt::format("{} x {}", fixed(kg / unit.kg, 1), unit.word);
}

Table bill_table(const Bill& bill, const Reader& reader) {
  Table table({{"to buy", Align::left},
               {ton_word(reader) + "s"},
               {"as sold"},
               {reader.currency + "/" + ton_word(reader)},
               {reader.currency}});
  for (const FeedLine& line : bill.feeds)
    table.add({line.offer->id, two_decimals(line.tons), sold_as(line, reader),
               two_decimals(line.a_ton), two_decimals(line.cost())});
  for (const TripLine& line : bill.trips)
    table.add(
        {fmt::format("{} trips to {} at {}", line.trips, line.pasture->id, two_decimals(line.each)),
         "", "", "", two_decimals(line.cost())});
  table.add({"total", "", "", "", two_decimals(bill.total())});
  return table;
}

/// "hull-pellets: the freight is a full load's share; 2.98 tons take one truck at 997.50 USD ...":
/// what the bill leaves out where a truck comes part empty.
Page part_loads(const Bill& bill, const Reader& reader) {
  Page page;
  for (const FeedLine& line : bill.feeds) {
    const std::optional<Haul> haul = haul_of(kilograms_of(line.tons, reader), *line.offer);
    if (!haul || haul->empty_part == 0) continue;
    const std::string trucks =
        haul->trucks == 1 ? fmt::format("one truck at {}, part empty", money(haul->each, reader))
                          : fmt::format("{} trucks at {}, the last part empty", haul->trucks,
                                        money(haul->each, reader));
    page.note(fmt::format(
        "{}: the freight is a full load's share; {} take {}, which adds {} "
        "unless the load is shared",
        line.offer->id, tons(line.tons, reader), trucks, money(haul->empty_part, reader)));
  }
  return page;
}

Table months_table(const Bill& bill, const Reader& reader) {
  std::vector<Column> columns{{"month", Align::left}, {reader.currency}, {"trips"}};
  for (const FeedLine& line : bill.feeds)
    columns.push_back({line.offer->id + ", " + ton_word(reader) + "s"});
  Table table(columns);
  for (const MonthLine& month : bill.months) {
    std::vector<std::string> cells{to_iso(month.first).substr(0, 7), two_decimals(month.cost),
                                   std::to_string(month.trips)};
    for (const Hundredths amount : month.tons) cells.push_back(two_decimals(amount));
    table.add(std::move(cells));
  }
  return table;
}

Table outcomes_table(const Plan& plan, const Reader& reader) {
  std::vector<OutcomeColumn> columns;
  std::vector<Column> heads{{"enough in so many outcomes", Align::left}};
  for (const double share : outcomes_shown) {
    columns.push_back(outcome_at(plan, share, reader));
    heads.push_back({fixed(share * 100, 0) + " %"});
  }
  Table table(heads);
  const auto row = [&](const std::string& name, auto cell_of) {
    std::vector<std::string> cells{name};
    for (const OutcomeColumn& column : columns) cells.push_back(cell_of(column));
    table.add(std::move(cells));
  };
  for (std::size_t i = 0; i < plan.demand.size(); ++i)
    row(plan.demand[i].feed + ", " + ton_word(reader) + "s",
        [&](const OutcomeColumn& c) { return two_decimals(c.feeds[i].tons); });
  row("trips", [](const OutcomeColumn& c) { return std::to_string(c.trips); });
  row(reader.currency, [](const OutcomeColumn& c) { return two_decimals(c.total()); });
  return table;
}

/// "61.20 tons of distillers (2.4 loads of 25 tons)"
std::string ordered_in_words(const FeedDemand& demand, const Reader& reader) {
  const std::string loads = loads_in_words(demand.order_kg, demand.offer, reader);
  return tons(hundredths_of_ton(demand.order_kg, reader), reader) + " of " + demand.feed +
         (loads.empty() ? "" : " (" + loads + ")");
}

Page order_page(const Plan& plan, const Reader& reader) {
  Page page;
  std::vector<std::string> orders;
  double late = 0, left = 0;
  Cents empty = 0;
  for (const FeedDemand& demand : plan.demand) {
    orders.push_back(ordered_in_words(demand, reader));
    late += demand.risk.too_little;
    left += demand.risk.too_much;
    if (const auto haul = haul_of(demand.order_kg, demand.offer)) empty += haul->empty_part;
  }
  page.sentence(fmt::format(
      "Order {}: enough in {} outcomes, since what is bought late costs {} % more and what is "
      "left over loses {} % of its price{}. Expected: {} for buying late, {} for what is left.",
      listed(orders), in_hundred(plan.order_cover), shortest(plan.terms.bought_late * 100),
      shortest(plan.terms.left_over * 100),
      plan.terms.assumed ? " (both assumed: --late-costs, --left-loses)" : "",
      money(to_cents(late), reader), money(to_cents(left), reader)));
  if (empty > 0)
    page.sentence(fmt::format("Trucks that come part empty for this order add {} of freight.",
                              money(empty, reader)));
  return page;
}

// ---- condition ---------------------------------------------------------------------------------

std::string condition_words(const ConditionAhead& ahead, Date until) {
  return fmt::format(
      "Doing nothing: condition goes from {} ({}) to {} on {} with the middle diet ({} to {}, 8 "
      "outcomes in 10); fed as planned, with the middle diet, to {}.",
      fixed(ahead.now, 1),
      ahead.scored ? "scored " + in_words(*ahead.scored) : "the herd's own figure",
      fixed(ahead.unfed, 1), in_words(until), fixed(ahead.unfed_low, 1), fixed(ahead.unfed_high, 1),
      fixed(ahead.fed, 1));
}

/// What the plan rests on that a reader might take for granted.
Page reservations(const Plan& plan) {
  Page page;
  const std::vector<FedWindow>& windows = plan.schedule.windows;
  const bool held = std::any_of(windows.begin(), windows.end(), [](const FedWindow& fed) {
    return fed.day.intake_recovered > fed.day.intake.amount;
  });
  if (held) {
    page.note(
        "protein-poor grass is taken to hold down what they eat all winter; once protein is met "
        "they may eat more (published rises run from 10 to 50 %), and less energy need be bought: "
        "--intake-recovers plans that");
  }
  if (plan.beyond_reach > 0) {
    page.note(
        fmt::format("{} outcomes hold a window in which these feeds, within their limits, do "
                    "not reach every need",
                    in_hundred(plan.beyond_reach)));
  }
  for (const std::string& note : plan.schedule.notes) page.note(note);
  return page;
}

}  // namespace

Page plan_finding(const Plan& plan, const Reader& reader) {
  Page page;
  page.sentence(first_line(plan.schedule, bill_of(plan.schedule, reader), reader));
  page.append(out_of_reach(plan.schedule.windows));
  if (!plan.condition) return page;
  return page.sentence(condition_words(*plan.condition, plan.schedule.settings.windows.until));
}

Page plan_cost(const Plan& plan, const Reader& reader) {
  const Bill bill = bill_of(plan.schedule, reader);
  Page page;
  if (bill.feeds.empty()) return page;
  return page.sentence(
      fmt::format("{} {}{}.", plan.schedule.within_reach() ? "It costs" : "The nearest costs",
                  money(bill.total(), reader), bill.trips.empty() ? "" : " with the trips"));
}

Page plan_purchases(const Plan& plan, const Reader& reader) {
  const Bill bill = bill_of(plan.schedule, reader);
  Page page;
  if (bill.feeds.empty()) return page;
  page.heading("what that buys, losses included").add(bill_table(bill, reader));
  page.append(part_loads(bill, reader));
  page.heading("what the season may ask for, when amounts follow each new bag");
  return page.add(outcomes_table(plan, reader)).append(order_page(plan, reader));
}

Page plan_windows(const Plan& plan, const Reader& reader) {
  Page page;
  page.heading(fmt::format("what to feed, {} head", plan.schedule.herd->head));
  page.add(windows_table(plan.schedule, reader));
  if (plan.schedule.settings.windows.cover > 0.5) page.note(certainty_words(plan.schedule));
  page.heading("month by month");
  return page.add(months_table(bill_of(plan.schedule, reader), reader));
}

Page page_of(const Plan& plan, const Reader& reader) {
  Page page = plan_finding(plan, reader);
  const Page purchases = plan_purchases(plan, reader);
  if (!purchases.blocks().empty()) {
    page.heading("cautions");
    for (const std::string& caution : plan.schedule.cautions) page.note(caution);
    page.space().append(plan_cost(plan, reader));
    page.append(plan_windows(plan, reader)).append(purchases);
  }
  return page.append(reservations(plan));
}

}  // namespace pluckbook
