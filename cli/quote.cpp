#include <fmt/format.h>

#include "base/text.h"
#include "cli/kept.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

/// The newest dated quote of a feed on a day, or nullptr.
const Quote* quote_before(const Feed& feed, Date day) {
  const Quote* newest = nullptr;
  for (const Quote& quote : feed.quotes) {
    if (!quote.date || *quote.date > day) continue;
    if (newest == nullptr || *quote.date >= *newest->date) newest = &quote;
  }
  return newest;
}

/// "355 USD/ton on 2026-08-01"
std::string quote_in_words(const Quote& quote, const std::string& currency) {
  return fmt::format("{} {}/{} on {}", shortest(quote.amount), currency, quote.unit,
                     to_iso(*quote.date));
}

Result<Answer> run_quote(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments, no_pastures());
  if (!opened) return opened.problems();
  Result<const Feed*> feed = feed_named(opened->whole, arguments.words[0]);
  if (!feed) return feed.problems();
  Result<Date> day = recorded_day(arguments, opened->as_of);
  if (!day) return day.problems();
  const Quote* before = quote_before(**feed, *day);
  if (before != nullptr && *before->date == *day) {
    return usage_problem(
        fmt::format("{} has a quote of {} already", (*feed)->id, to_iso(*day)),
        fmt::format("nothing was written; correct it in {}:{} by hand if it is wrong",
                    (*feed)->origin.file, (*feed)->origin.line));
  }
  WrittenKeys quote = {{"price", arguments.words[1]}, {"date", to_iso(*day)}};
  for (const char* key : {"freight", "miles", "load"}) {
    if (arguments.has(key)) quote.emplace_back(key, arguments.get(key));
  }
  Result<Written> written = add_quote(opened->whole, (*feed)->id, quote);
  if (!written) return written.problems();
  Result<OpenedToChange> reread = open_to_change(arguments, no_pastures());
  if (!reread) return reread.problems();
  const Feed& now = **feed_named(reread->whole, (*feed)->id);
  const std::string& currency = opened->whole.currency;
  const std::string was = before == nullptr ? "" : ", was " + quote_in_words(*before, currency);
  const std::vector<Herd>& herds = opened->whole.herds;
  const Kept kept = {
      fmt::format("{} quoted at {}{}", now.name, quote_in_words(*quote_before(now, *day), currency),
                  was),
      herds.empty() ? "write your herds in herds.yaml" : "pluckbook price " + herds.front().id,
      {{"feed", (*feed)->id}, {"date", to_iso(*day)}}};
  return said_of(kept, "quote", *written, arguments);
}

}  // namespace

Command quote_command() {
  return {
      .name = "quote",
      .usage = "FEED PRICE/UNIT",
      .purpose = "what a seller asks for a feed",
      .group = "the herd and the feed",
      .examples = {"pluckbook quote cube-20 '340 USD/ton' --freight '12 USD/ton'",
                   "pluckbook quote tubs '105 USD/225 lb' --date 2026-08-01"},
      .options = {{"date", "DATE", "when it was given (as-of)"},
                  {"freight", "PRICE", "'12 USD/ton', or '4.50 USD/mile' with the two below"},
                  {"miles", "N", "one way, with freight by the mile"},
                  {"load", "AMOUNT", "what the truck brings: '24 ton'"}},
      .least_words = 2,
      .most_words = 2,
      .run = run_quote,
  };
}

}  // namespace pluckbook::cli
