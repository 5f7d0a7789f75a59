#include "advice/schedule.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace pluckbook {
namespace {

Result<FedWindow> fed_window(const Book& book, const Herd& herd, FeedingWindow window,
                             FedIntake fed) {
  FedWindow out;
  out.offers = offers_on(book, window.first).offers;
  out.day = day_in(window, herd, window.at_cover, fed);
  out.mix = cheapest_mix(out.day.grazing, out.offers);
  if (out.mix.status == MixStatus::not_trusted) {
    return input_problem(
        "the least-cost answer from " + to_iso(window.first) + " on failed its own check",
        "price the herd on that day to see which feed it is");
  }
  out.trips = trips_in(out.mix, window.days());
  out.window = std::move(window);
  return out;
}

void add_cautions(Schedule& schedule) {
  for (const FedWindow& fed : schedule.windows) {
    std::vector<std::size_t> which;
    for (const MixPart& part : fed.mix.parts) which.push_back(part.offer);
    if (!which.empty())
      join_cautions(schedule.cautions, cautions_for(fed.day.grazing, fed.offers, which));
  }
}

void add_notes(const Book& book, Schedule& schedule) {
  const std::set<std::string> used = schedule.feeds();
  for (const FeedOffer& offer : offers_on(book, schedule.settings.windows.as_of).offers) {
    if (!used.contains(offer.id)) continue;
    for (const std::string& note : offer.notes) schedule.notes.push_back(offer.id + ": " + note);
    if (offer.old_quote_days)
      schedule.notes.push_back(
          fmt::format("{}: the quote is {} days old", offer.id, *offer.old_quote_days));
  }
}

}  // namespace

bool Schedule::within_reach() const {
  return std::none_of(windows.begin(), windows.end(), [](const FedWindow& fed) {
    return fed.mix.status == MixStatus::out_of_reach;
  });
}

double Schedule::feed_cost() const {
  double money = 0;
  for (const FedWindow& fed : windows)
    money += fed.mix.feed_cost.value() * herd->head * static_cast<double>(fed.window.days());
  return money;
}

double Schedule::trip_cost() const {
  double money = 0;
  for (const FedWindow& fed : windows) money += fed.window.trip_per_head * herd->head * fed.trips;
  return money;
}

std::set<std::string> Schedule::feeds() const {
  std::set<std::string> ids;
  for (const FedWindow& fed : windows)
    for (const MixPart& part : fed.mix.parts) ids.insert(fed.offers[part.offer].id);
  return ids;
}

int trips_in(const Mix& mix, long days) {
  if (mix.parts.empty()) return 0;
  const int a_week = std::max(1, mix.feedings_per_week);  // what feeds itself is filled once
  return static_cast<int>(std::ceil(static_cast<double>(days * a_week) / 7 - 1e-9));
}

double bought_per_day(const FeedOffer& offer, const MixPart& part, int head) {
  const double kept = (1 - offer.cost->shrink) * (1 - offer.cost->waste);
  return part.as_fed.value() * head / kept;
}

void join_cautions(std::vector<std::string>& all, std::vector<std::string> more) {
  std::erase_if(more, [&](const std::string& caution) {
    return std::find(all.begin(), all.end(), caution) != all.end();
  });
  const auto deferral = all.empty() ? 0 : 1;
  all.insert(all.end() - deferral, more.begin(), more.end());
}

Result<Schedule> schedule_for(const Book& book, const Herd& herd,
                              const ScheduleSettings& settings) {
  Result<std::vector<FeedingWindow>> windows = windows_ahead(book, herd, settings.windows);
  if (!windows) return windows.problems();
  return schedule_on(book, herd, std::move(*windows), settings);
}

Result<Schedule> schedule_on(const Book& book, const Herd& herd, std::vector<FeedingWindow> windows,
                             const ScheduleSettings& settings) {
  Schedule schedule;
  schedule.herd = &herd;
  schedule.settings = settings;
  for (FeedingWindow& window : windows) {
    Result<FedWindow> fed = fed_window(book, herd, std::move(window), settings.fed);
    if (!fed) return fed.problems();
    schedule.windows.push_back(std::move(*fed));
  }
  add_cautions(schedule);
  add_notes(book, schedule);
  return schedule;
}

}  // namespace pluckbook
