#include <fmt/format.h>

#include "base/text.h"
#include "book/write.h"
#include "cli/bag_plan.h"
#include "cli/command.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

Result<Bag> bag_from(const Arguments& arguments, const Opened& opened, const Pasture& pasture) {
  Bag bag;
  bag.pasture = pasture.id;
  Result<Date> plucked = recorded_day(arguments, opened.as_of);
  if (!plucked) return plucked.problems();
  bag.plucked = *plucked;
  bag.id = arguments.get("id", proposed_bag_id(opened.whole, pasture.id, bag.plucked));
  const std::string method = arguments.get("method", "hand-plucked");
  if (method != "hand-plucked" && method != "clipped") {
    return usage_problem(fmt::format("unknown method '{}'", shown(method)),
                         "write hand-plucked or clipped");
  }
  bag.method = method == "clipped" ? Method::clipped : Method::hand_plucked;
  Result<double> stops = arguments.number("stops", 0);
  if (!stops) return stops.problems();
  if (arguments.has("stops")) {
    if (*stops < 1 || *stops > 500 || *stops != static_cast<int>(*stops)) {
      return usage_problem("--stops is outside 1 to 500", "count the places you plucked at");
    }
    bag.stops = static_cast<int>(*stops);
  }
  Result<double> fill = arguments.number("fill", 0);
  if (!fill) return fill.problems();
  if (arguments.has("fill")) {
    if (*fill <= 0 || *fill > 100) {
      return usage_problem("--fill is outside 0 to 100 %", "two thirds full is 66");
    }
    bag.fill = *fill;
  }
  bag.note = arguments.get("note");
  return bag;
}

}  // namespace

Result<Answer> run_bag(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<const Pasture*> pasture = pasture_named(opened->whole, arguments.words[0]);
  if (!pasture) return pasture.problems();
  if (arguments.has("plan")) return plan_bag(arguments, *opened, **pasture);
  Result<Bag> bag = bag_from(arguments, *opened, **pasture);
  if (!bag) return bag.problems();
  Result<Written> written = add_bag(opened->whole, *bag);
  if (!written) return written.problems();
  Answer answer;
  answer.warnings = written->warnings;
  answer.text = fmt::format(
      "bag {} kept: {}, {}{}\n{}:{}\n", bag->id, (*pasture)->name, to_iso(bag->plucked),
      bag->stops ? fmt::format(", {} stops", *bag->stops) : "", written->file, written->line);
  if (bag->method == Method::clipped) {
    answer.text += "clipped: kept and shown, not used as diet, since stock select better\n";
  }
  answer.text +=
      fmt::format("next: dry it within a day or two, then  pluckbook mark {} dried\n", bag->id);
  return answer;
}

}  // namespace pluckbook::cli
