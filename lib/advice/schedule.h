// schedule.h - what to feed a herd in each window of the days ahead: the cheapest safe mix at the
// cover asked for, at the quotes known by the window's first day.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "advice/windows.h"

namespace pluckbook {

struct FedWindow {
  FeedingWindow window;
  std::vector<FeedOffer> offers;
  FeedingDay day;  // the middle day at the cover
  Mix mix;
  int trips = 0;  // over the window
};

struct ScheduleSettings {
  WindowSettings windows;
  FedIntake fed = FedIntake::held;
};

struct Schedule {
  const Herd* herd = nullptr;  // into the book
  ScheduleSettings settings;
  std::vector<FedWindow> windows;
  std::vector<std::string> cautions;  // of the feeds in it, most serious first
  std::vector<std::string> notes;     // on quotes and figures of the feeds in it

  bool within_reach() const;  // every window's need is met by its mix
  /// Money for the herd, unrounded.
  double feed_cost() const;
  double trip_cost() const;
  double cost() const { return feed_cost() + trip_cost(); }
  std::set<std::string> feeds() const;  // ids
};

/// Feeding trips in so many days: those days on which a mix is fed.
int trips_in(const Mix& mix, long days);

/// Kilograms bought for a herd for each day: as fed, and what is lost in storage and at feeding.
double bought_per_day(const FeedOffer& offer, const MixPart& part, int head);

/// Adds cautions to those there, each once, in order; the deferral to label and veterinarian, which
/// ends every list of them, stays last.
void join_cautions(std::vector<std::string>& all, std::vector<std::string> more);

/// Solves every window on its own. A book without feeds is a schedule that feeds nothing.
/// Fails: as windows_ahead; a least-cost answer that failed its own check.
/// Requires: `book` outlives the answer.
Result<Schedule> schedule_for(const Book& book, const Herd& herd, const ScheduleSettings& settings);
/// The same on windows that are known already: quotes alone are read from the book.
Result<Schedule> schedule_on(const Book& book, const Herd& herd, std::vector<FeedingWindow> windows,
                             const ScheduleSettings& settings);

}  // namespace pluckbook
