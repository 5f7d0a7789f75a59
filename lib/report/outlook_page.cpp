#include <fmt/format.h>

#include "published/rules.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

std::string day(const std::optional<Date>& date) {
  return date ? in_words_without_year(*date) : "later";
}

std::string range(const Crossing& crossing) {
  if (!crossing.low) return "-";
  if (!crossing.high) return fmt::format("from {} on", day(crossing.low));
  return fmt::format("{} to {}", day(crossing.low), day(crossing.high));
}

/// The three cells that say when: middle, range, chance by the horizon.
std::vector<std::string> when(const NutrientOutlook& n, Date as_of) {
  if (n.below_now) {
    const bool since = n.below_since && *n.below_since < as_of;
    return {since ? "since " + in_words_without_year(*n.below_since) : "below now", "-",
            in_hundred(n.probability_below_now) + " today"};
  }
  return {n.falls_below.median ? in_words_without_year(*n.falls_below.median) : "not expected",
          range(n.falls_below), in_hundred(n.falls_below.probability_by_horizon)};
}

Table shares_table(const HerdOutlook& herd, const OutlookSettings& settings) {
  Table table({{"nutrient", Align::left},
               {"diet"},
               {"need"},
               {"falls below"},
               {"8 years in 10"},
               {"by " + in_words_without_year(settings.until)}});
  for (const NutrientOutlook& n : herd.nutrients) {
    const auto cells = when(n, settings.as_of);
    table.add({in_words(n.nutrient), percent(n.diet_now.median), percent(n.need_now), cells[0],
               cells[1], cells[2]});
  }
  return table;
}

Table amounts_table(const HerdOutlook& herd, const Reader& reader) {
  Table table({{"nutrient", Align::left},
               {"need, " + mass_unit(reader)},
               {"diet gives"},
               {"over intake rules"},
               {"short"},
               {"falls below"}});
  for (const NutrientOutlook& n : herd.nutrients) {
    const auto amount = [&](KgPerDay kg) {
      return three_figures(in_mass_unit(kg.value(), reader));
    };
    table.add({in_words(n.nutrient), amount(n.balance.need), amount(n.balance.supply),
               amount(n.supply_low) + " to " + amount(n.supply_high), amount(n.balance.gap()),
               n.below_now_amount            ? "below now"
               : n.falls_below_amount.median ? in_words_without_year(*n.falls_below_amount.median)
                                             : "not expected"});
  }
  return table;
}

/// The rows of dry cows ask for less protein than the rumen; slices of a herd may differ.
std::string rumen_note(const NutrientOutlook& protein) {
  const bool all = protein.need_now <= from_percent(intake_rules().cp_floor_percent * 1.0001);
  return all ? "the protein need shown is the rumen's least, 7 % of what she eats; the cow's own "
               "need is lower at this stage"
             : "for a part of the herd the rumen's least, 7 % of what she eats, stands above the "
               "cow's own need";
}

/// What the figures rest on, in the order a reader would ask.
std::vector<std::string> notes_of(const HerdOutlook& herd) {
  std::vector<std::string> notes = herd.notes;
  if (!herd.first_short.empty()) notes.push_back(herd.first_short);
  for (const NutrientOutlook& n : herd.nutrients) {
    if (n.rumen_floor_governs) notes.push_back(rumen_note(n));
    for (const std::string& note : n.notes) notes.push_back(in_words(n.nutrient) + ": " + note);
  }
  return notes;
}

}  // namespace

std::string finding(const NutrientOutlook& n, Date until) {
  if (n.below_now) {
    const std::string how =
        n.below_since ? "has been below need since " + in_words_without_year(*n.below_since)
                      : "is below need";
    return fmt::format("{}: {} against {} needed", how, percent(n.diet_now.median),
                       percent(n.need_now));
  }
  const Crossing& c = n.falls_below;
  if (!c.median) {
    return fmt::format("is not expected below need by {} ({} that it falls)", in_words(until),
                       in_hundred(c.probability_by_horizon));
  }
  return fmt::format("falls below need about {} ({}, 8 years in 10)",
                     in_words_without_year(*c.median), range(c));
}

Page outlook_tables(const HerdOutlook& herd, const OutlookSettings& settings,
                    const Reader& reader) {
  Page page;
  page.heading(fmt::format("outlook on {} for {} ({} head) on {}, % of dry matter",
                           to_iso(settings.as_of), herd.herd->id, herd.herd->head,
                           herd.pasture->name));
  page.add(shares_table(herd, settings));
  page.heading(fmt::format("per head and day, eating {} of dry matter ({})",
                           mass(herd.intake.amount.value(), reader), to_string(herd.intake.rule)));
  page.add(amounts_table(herd, reader));
  for (const std::string& note : notes_of(herd)) page.note(note);
  return page;
}

Page page_of(const OutlookAnswer& answer, const Reader& reader) {
  Page page;
  for (const HerdOutlook& herd : answer.herds) {
    if (!page.blocks().empty()) page.space();
    if (herd.bags_used == 0) {
      page.sentence(
          fmt::format("No bag of {} has a result yet: what follows is the published "
                      "season of its kind of grass, not this pasture's own.",
                      herd.pasture->name));
    }
    for (const NutrientOutlook& n : herd.nutrients) {
      page.sentence(fmt::format("{} in the diet of {} {}.", sentence(in_words(n.nutrient)),
                                herd.herd->id, finding(n, answer.settings.until)));
    }
    page.append(outlook_tables(herd, answer.settings, reader));
  }
  if (answer.next_sample) {
    const NextSample& next = *answer.next_sample;
    page.space().sentence(fmt::format("next bag: {} about {}: {}", next.pasture->name,
                                      in_words_without_year(next.date), next.why));
  }
  for (const HerdOutlook& herd : answer.herds) {
    page.next(
        fmt::format("pluckbook price {} --as-of {}", herd.herd->id, to_iso(answer.settings.as_of)));
  }
  return page;
}

}  // namespace pluckbook
