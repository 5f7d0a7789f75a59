#include "cli/bag_plan.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "base/text.h"
#include "book/read.h"
#include "forage/walk.h"
#include "report/json.h"
#include "report/table.h"

namespace pluckbook::cli {
namespace {

constexpr double usual_within_percent = 8;  // 20 stops, as many as are usual

struct Walk {
  double metres = 0;
  std::string how;
};

/// --walk, else straight across a square of the pasture's area; nothing where neither is known.
Result<std::optional<Walk>> walk_of(const Arguments& arguments, const Pasture& pasture,
                                    UnitSystem units) {
  if (arguments.has("walk")) {
    Result<double> metres = parse_metres(arguments.get("walk"), units);
    if (!metres) return metres.problems();
    return std::optional(Walk{*metres, "as given"});
  }
  if (!pasture.area_ha) return std::optional<Walk>();
  constexpr double square_metres_per_ha = 10'000;
  return std::optional(Walk{std::sqrt(*pasture.area_ha * square_metres_per_ha),
                            "across a square of the pasture's area, assumed"});
}

std::string length(double metres, UnitSystem units) {
  constexpr double metres_per_mile = 1609.344;
  return units == UnitSystem::us ? fixed(metres / metres_per_mile, 2) + " miles"
                                 : fixed(metres / 1000, 2) + " km";
}

/// Dry in two days, then the first of Monday to Wednesday. Common practice.
Date mailing_day(Date plucked) {
  Date day = plucked + Days(2);
  while (day.day_of_week() < 1 || day.day_of_week() > 3) day += Days(1);
  return day;
}

std::string percent_text(double share) {
  return fixed(100 * share, 0) + " %";
}

std::string plan_text(const WalkPlan& plan, const std::optional<Walk>& walk, const Pasture& pasture,
                      const Opened& opened) {
  std::string text = fmt::format("{}: {} stops", pasture.name, plan.stops);
  if (walk) {
    text += fmt::format(", about {} paces apart\nwalk of {} ({}), pace {}\n",
                        paces_between(walk->metres, plan.stops),
                        length(walk->metres, opened.reader.units), walk->how,
                        opened.reader.units == UnitSystem::us ? "2.5 ft" : "0.76 m");
  } else {
    text += "\nhow far apart: say --walk '1 mile', or write the area into pastures.yaml\n";
  }
  text += "\n" + wrapped(fmt::format("the stops' protein is then within {} of the pasture's, 19 "
                                     "times in 20: (1.96 x {} / {})^2, {} from stop to stop "
                                     "(computed, 22 Florida pastures)",
                                     percent_text(plan.within), percent_text(plan.stop_sd),
                                     percent_text(plan.within), percent_text(plan.stop_sd)));
  text += wrapped(fmt::format(
      "the whole bag within {}: the picker's day ({}, assumed) and the "
      "laboratory ({}, computed) stay; past 20 stops a second walk tells "
      "more",
      percent_text(plan.bag_within), percent_text(plan.trip_sd), percent_text(plan.lab_sd)));
  text += "\n" + wrapped(
                     "common practice: pluck what they take, as they take it; a paper bag two "
                     "thirds to three quarters full; air-dry it within a day or two, before it "
                     "moulds; mail it early in the week, plucked today about " +
                     in_words_without_year(mailing_day(opened.as_of)));
  return text + fmt::format("next: after the walk,  pluckbook bag {} --stops {} --fill 70\n",
                            pasture.id, plan.stops);
}

Json plan_json(const WalkPlan& plan, const std::optional<Walk>& walk, const Pasture& pasture) {
  Json json = document("bag_plan");
  json["pasture"] = pasture.id;
  json["stops"] = plan.stops;
  json["paces_between"] = walk ? Json(paces_between(walk->metres, plan.stops)) : Json(nullptr);
  json["walk"] = walk ? quantity(walk->metres, "m") : Json(nullptr);
  json["stops_within"] = quantity(100 * plan.within, "% of crude protein");
  json["bag_within"] = quantity(100 * plan.bag_within, "% of crude protein");
  return json;
}

}  // namespace

Result<Answer> plan_bag(const Arguments& arguments, const Opened& opened, const Pasture& pasture) {
  Result<double> within = arguments.number("within", usual_within_percent);
  if (!within) return within.problems();
  if (*within < 3 || *within > 50) {
    return arguments.beyond("within", "3 to 50 %", "8 is usual, and takes 20 stops");
  }
  Result<std::optional<Walk>> walk = walk_of(arguments, pasture, opened.reader.units);
  if (!walk) return walk.problems();
  const WalkPlan plan = plan_walk(*within / 100);
  Answer answer;
  answer.text = arguments.has("json") ? printed(plan_json(plan, *walk, pasture))
                                      : plan_text(plan, *walk, pasture, opened);
  return answer;
}

}  // namespace pluckbook::cli
