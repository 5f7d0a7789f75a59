#include <fmt/format.h>

#include <map>

#include "base/text.h"
#include "report/bill.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

Cents cost_of(const Alternative& alternative, const Reader& reader) {
  Cents sum = 0;
  for (const FedGroup& group : alternative.groups) sum += bill_of(group.schedule, reader).total();
  return sum;
}

/// Tons of every feed over all groups.
std::map<std::string, Hundredths> bought(const Alternative& alternative, const Reader& reader) {
  std::map<std::string, Hundredths> feeds;
  for (const FedGroup& group : alternative.groups)
    for (const FeedLine& line : bill_of(group.schedule, reader).feeds)
      feeds[line.offer->id] += line.tons;
  return feeds;
}

std::string bought_in_words(const Alternative& alternative, const Reader& reader) {
  std::vector<std::string> words;
  for (const auto& [feed, tons] : bought(alternative, reader))
    words.push_back(fmt::format("{} {}s of {}", two_decimals(tons), ton_word(reader), feed));
  return words.empty() ? "no feed" : fmt::format("{}", fmt::join(words, ", "));
}

std::string score(const std::optional<double>& value) {
  return value ? fixed(*value, 1) : "-";
}

std::string first_line(const Comparison& comparison) {
  const Alternative& first = comparison.ranked.front();
  const WindowSettings& days = comparison.settings.windows;
  if (!first.covers()) {
    return fmt::format(
        "None of these covers every need of {} from {} to {} in {} outcomes; '{}' keeps the most "
        "condition: {} at the end.",
        comparison.asked->herd, in_words(days.as_of), in_words(days.until), in_hundred(days.cover),
        first.what_if->name, score(first.score_at_end()));
  }
  return fmt::format(
      "For {} from {} to {}, '{}' is cheapest of what covers {} outcomes: condition {} at the end.",
      comparison.asked->herd, in_words(days.as_of), in_words(days.until), first.what_if->name,
      in_hundred(days.cover), score(first.score_at_end()));
}

Page cautions_page(const Comparison& comparison) {
  std::vector<std::string> all;
  for (const Alternative& alternative : comparison.ranked)
    for (const FedGroup& group : alternative.groups) join_cautions(all, group.schedule.cautions);
  Page page;
  if (!all.empty()) page.heading("cautions, for the feeds of any of them");
  for (const std::string& caution : all) page.note(caution);
  return page;
}

Table ranking(const Comparison& comparison, const Reader& reader) {
  Table table({{""},
               {"what if", Align::left},
               {reader.currency},
               {"more"},
               {"score at end"},
               {"every need", Align::left}});
  const Cents first = cost_of(comparison.ranked.front(), reader);
  int rank = 0;
  for (const Alternative& alternative : comparison.ranked) {
    const Cents cost = cost_of(alternative, reader);
    table.add({std::to_string(++rank), shown(alternative.what_if->name, 34), two_decimals(cost),
               two_decimals(cost - first), score(alternative.score_at_end()),
               alternative.covers() ? "met" : "not met"});
  }
  return table;
}

Page feeds_page(const Comparison& comparison, const Reader& reader) {
  Page page;
  for (const Alternative& alternative : comparison.ranked)
    page.note(alternative.what_if->name + ": " + bought_in_words(alternative, reader));
  return page;
}

/// What each group comes to where a herd is split.
Page splits_page(const Comparison& comparison) {
  Page page;
  for (const Alternative& alternative : comparison.ranked) {
    if (alternative.groups.size() < 2) continue;
    const FedGroup& rest = alternative.groups.front();
    const FedGroup& split = alternative.groups.back();
    if (!rest.condition || !split.condition) continue;
    page.note(fmt::format("{}: {} end at {}, {} at {}; fed like the others, {} would end at {}",
                          alternative.what_if->name, rest.schedule.herd->id,
                          fixed(rest.condition->fed, 1), split.schedule.herd->id,
                          fixed(split.condition->fed, 1), split.schedule.herd->id,
                          score(alternative.split_fed_alike)));
  }
  return page;
}

std::string priced(double amount, const Quote& quote, const Reader& reader) {
  const SellingUnit unit = selling_unit(quote, reader);
  return fmt::format("{} {}/{}", fixed(amount * unit.kg / quote.kg_per_unit, 2), reader.currency,
                     unit.word);
}

std::string date_swap_words(const DateSwap& swap, const std::string& first,
                            const std::string& second) {
  const std::string what = swap.of == DateSwap::Of::weaning ? "weaned" : "moved";
  return fmt::format("'{}' {} on {} (now {}): '{}' and '{}' change places", swap.what_if->name,
                     what, in_words_without_year(swap.then), in_words_without_year(swap.now), first,
                     second);
}

/// What would change the order of the first two.
Page swaps_page(const Comparison& comparison, const Reader& reader) {
  Page page;
  if (comparison.ranked.size() < 2 || !comparison.ranked[1].covers()) {
    page.sentence("Only one of these covers every need: no quote or date changes the order.");
    return page;
  }
  const std::string& first = comparison.ranked[0].what_if->name;
  const std::string& second = comparison.ranked[1].what_if->name;
  for (const Swap& swap : comparison.swaps)
    page.note(fmt::format("{} at {} (now {}): '{}' and '{}' change places", swap.feed,
                          priced(swap.amount, *swap.quote, reader),
                          priced(swap.quote->amount, *swap.quote, reader), first, second));
  for (const DateSwap& swap : comparison.date_swaps)
    page.note(date_swap_words(swap, first, second));
  if (comparison.swaps.empty())
    page.sentence(fmt::format("No quote from a fifth to three times today's puts '{}' before '{}'.",
                              second, first));
  return page;
}

}  // namespace

Page page_of(const Comparison& comparison, const Reader& reader) {
  Page page;
  page.sentence(first_line(comparison)).append(cautions_page(comparison));
  page.heading("side by side; score with the middle diet");
  page.add(ranking(comparison, reader)).append(feeds_page(comparison, reader));
  page.append(splits_page(comparison));
  page.heading("what changes the order");
  page.append(swaps_page(comparison, reader));
  page.note(
      "the cost is feed and feeding trips; the weight of calves weaned early, rent, the work of a "
      "move and trucks that come part empty are not in it");
  return page;
}

}  // namespace pluckbook
