#include <fmt/format.h>

#include "base/text.h"
#include "book/write.h"
#include "cli/bag_plan.h"
#include "cli/kept.h"
#include "cli/open_book.h"
#include "cli/whereabouts.h"

namespace pluckbook::cli {
namespace {

Result<Bag> bag_from(const Arguments& arguments, const OpenedToChange& opened,
                     const Pasture& pasture) {
  Bag bag;
  bag.pasture = pasture.id;
  Result<Date> plucked = recorded_day(arguments, opened.as_of);
  if (!plucked) return plucked.problems();
  bag.plucked = *plucked;
  bag.id = arguments.get("id", proposed_bag_id(opened.whole, pasture.id, bag.plucked));
  const std::string method = arguments.get("method", "hand-plucked");
  if (method != "hand-plucked" && method != "clipped") {
    return usage_problem(fmt::format("--method cannot be '{}'", shown(method)),
                         "write hand-plucked or clipped");
  }
  bag.method = method == "clipped" ? Method::clipped : Method::hand_plucked;
  Result<double> stops = arguments.number("stops", 0);
  if (!stops) return stops.problems();
  if (arguments.has("stops")) {
    if (*stops < 1 || *stops > 500 || *stops != static_cast<int>(*stops)) {
      return arguments.beyond("stops", "1 to 500", "count the places you plucked at");
    }
    bag.stops = static_cast<int>(*stops);
  }
  Result<double> fill = arguments.number("fill", 0);
  if (!fill) return fill.problems();
  if (arguments.has("fill")) {
    if (*fill <= 0 || *fill > 100) {
      return arguments.beyond("fill", "0 to 100 %", "two thirds full is 66");
    }
    bag.fill = *fill;
  }
  bag.note = arguments.get("note");
  return bag;
}

/// What the one who plucked it should know at once.
std::string remark_on(const Bag& bag) {
  std::string remark;
  if (bag.method == Method::clipped) {
    remark += "\nclipped: kept and shown, not used as diet, since stock select better";
  }
  if (has_too_little(bag)) {
    remark += "\ntoo little in it: two thirds to three quarters full is wanted; pluck on";
  }
  return remark;
}

Result<Answer> run_bag(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments);
  if (!opened) return opened.problems();
  Result<const Pasture*> pasture = pasture_named(opened->whole, arguments.words[0]);
  if (!pasture) return pasture.problems();
  if (arguments.has("plan")) return plan_bag(arguments, *opened, **pasture);
  Result<Bag> bag = bag_from(arguments, *opened, **pasture);
  if (!bag) return bag.problems();
  Result<Written> written = add_bag(opened->whole, *bag);
  if (!written) return written.problems();
  const std::string stops = bag->stops ? fmt::format(", {} stops", *bag->stops) : "";
  const Kept kept = {
      fmt::format("bag {} kept: {}, {}{}{}", bag->id, (*pasture)->name, to_iso(bag->plucked), stops,
                  remark_on(*bag)),
      fmt::format("dry it within a day or two, then  pluckbook mark {} dried", bag->id),
      {{"bag", bag->id}, {"pasture", bag->pasture}, {"date", to_iso(bag->plucked)}}};
  return said_of(kept, "bag", *written, arguments);
}

}  // namespace

Command bag_command() {
  return {
      .name = "bag",
      .usage = "PASTURE",
      .purpose = "records a plucked bag and prints its tag",
      .group = "the bag",
      .examples = {"pluckbook bag draws --plan --walk '1 mile'      before the walk",
                   "pluckbook bag draws --stops 20 --fill 70",
                   "pluckbook bag draws --date 2026-07-06 --method clipped"},
      .options = {{"date", "DATE", "when it was plucked (as-of)"},
                  {"id", "ID", "the tag (proposed from year and pasture)"},
                  {"stops", "N", "places where plants were plucked"},
                  {"fill", "PERCENT", "how full the bag is; 66 to 75 is good"},
                  {"method", "WORD", "hand-plucked (default) or clipped"},
                  {"note", "TEXT", "plants, weather, what was seen"},
                  {"plan", "", "write nothing: how many stops, how far apart"},
                  {"within", "PERCENT", "with plan: how near the pasture's protein (8)"},
                  {"walk", "LENGTH", "with plan: miles or km (across the pasture)"}},
      .least_words = 1,
      .most_words = 1,
      .run = run_bag,
  };
}

}  // namespace pluckbook::cli
