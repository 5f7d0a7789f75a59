#include <fmt/format.h>

#include "base/text.h"
#include "published/energetics.h"
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

/// The three cells that say when: middle, range, and how likely it is by which day.
std::vector<std::string> when(const NutrientOutlook& n, const OutlookSettings& settings) {
  if (n.below_now) {
    const bool since = n.below_since && *n.below_since < settings.as_of;
    return {since ? "since " + in_words_without_year(*n.below_since) : "below now", "-",
            in_hundred(n.probability_below_now) + " today"};
  }
  return {n.falls_below.median ? in_words_without_year(*n.falls_below.median) : "not expected",
          range(n.falls_below),
          fmt::format("{} by {}", in_hundred(n.falls_below.probability_by_horizon),
                      in_words_without_year(settings.until))};
}

Table shares_table(const HerdOutlook& herd, const OutlookSettings& settings) {
  Table table({{"nutrient", Align::left},
               {"diet"},
               {"need"},
               {"falls below"},
               {"8 years in 10"},
               {"chance it is below"}});
  for (const NutrientOutlook& n : herd.nutrients) {
    const auto cells = when(n, settings);
    table.add({in_words(n.nutrient), fixed(in_percent(n.diet_now.median), 1),
               fixed(in_percent(n.need_now), 1), cells[0], cells[1], cells[2]});
  }
  return table;
}

std::string amount_falls(bool below_now, const Crossing& falls) {
  if (below_now) return "below now";
  return falls.median ? in_words_without_year(*falls.median) : "not expected";
}

Table amounts_table(const HerdOutlook& herd, const Reader& reader) {
  Table table({{"nutrient", Align::left},
               {"need, " + mass_unit(reader)},
               {"diet gives"},
               {"by other intake rules"},
               {"short"},
               {"falls below"}});
  const auto amount = [&](KgPerDay kg) { return three_figures(in_mass_unit(kg.value(), reader)); };
  for (const NutrientOutlook& n : herd.nutrients) {
    table.add({in_words(n.nutrient), amount(n.balance.need), amount(n.balance.supply),
               amount(n.supply_low) + " to " + amount(n.supply_high), amount(n.balance.gap()),
               amount_falls(n.below_now_amount, n.falls_below_amount)});
  }
  if (const auto& rdp = herd.degradable) {
    table.add({"RDP", amount(rdp->balance.need), amount(rdp->balance.supply), "-",
               amount(rdp->balance.gap()), amount_falls(rdp->below_now(), rdp->falls_below)});
  }
  return table;
}

/// What a week without feed risks.
Table waiting_table(const HerdOutlook& herd, const Reader& reader) {
  Table table({{"nutrient", Align::left},
               {"chance it is short by then"},
               {mass_unit(reader) + " short that week"},
               {"1 year in 10, over"}});
  for (const NutrientOutlook& n : herd.nutrients) {
    table.add({in_words(n.nutrient), in_hundred(n.waiting.probability),
               three_figures(in_mass_unit(n.waiting.lacking.value(), reader)),
               three_figures(in_mass_unit(n.waiting.lacking_at_worst.value(), reader))});
  }
  return table;
}

/// When a diet that falls short is back above need, in those years.
std::string recovery_note(const NutrientOutlook& n, Date until) {
  const Crossing& back = n.recovers;
  const std::string chance =
      fmt::format("{} of the years that fall short", in_hundred(back.probability_by_horizon));
  if (!back.median)
    return fmt::format("back above need by {}: {}", in_words_without_year(until), chance);
  return fmt::format("back above need about {} ({}, 8 years in 10); by {}: {}",
                     in_words_without_year(*back.median), range(back), in_words_without_year(until),
                     chance);
}

bool can_fall(const NutrientOutlook& n) {
  return n.below_now || n.falls_below.probability_by_horizon > 0;
}

/// "on North Draws, from 20 Oct on Teakettle Meadow, as planned"
std::string place_words(const HerdOutlook& herd) {
  std::string words = "on " + herd.pasture->name;
  for (const Whereabouts& next : herd.moves_ahead)
    words += fmt::format(", from {} on {}, as planned", in_words_without_year(next.move->date),
                         next.pasture->name);
  return words;
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
  if (herd.degradable) {
    notes.push_back(
        fmt::format("RDP is {:.0f} % of the protein (newest bag), set against what the rumen can "
                    "use, {:.0f} % of the TDN (NRC 2000)",
                    herd.degradable->of_protein.value() * 100, microbial_figures().share * 100));
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
  page.heading(fmt::format("outlook on {} for {} ({} head) {}, % of dry matter",
                           to_iso(settings.as_of), herd.herd->id, herd.herd->head,
                           place_words(herd)));
  page.add(shares_table(herd, settings));
  for (const NutrientOutlook& n : herd.nutrients) {
    if (can_fall(n)) page.note(in_words(n.nutrient) + ": " + recovery_note(n, settings.until));
  }
  page.heading(fmt::format("per head and day, eating {} of dry matter ({})",
                           mass(herd.intake.amount.value(), reader), to_string(herd.intake.rule)));
  page.add(amounts_table(herd, reader));
  for (const std::string& note : notes_of(herd)) page.note(note);
  page.heading(fmt::format("waiting a week, to {}, unfed, per head",
                           in_words_without_year(settings.as_of + Days(7))));
  page.add(waiting_table(herd, reader));
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
  if (!answer.first_feed.empty()) {
    page.space().sentence("The book holds no feed to price yet; add one for each on offer.");
    page.line(answer.first_feed).next("pluckbook feeds");
    return page;
  }
  for (const HerdOutlook& herd : answer.herds) {
    page.next(
        fmt::format("pluckbook price {} --as-of {}", herd.herd->id, to_iso(answer.settings.as_of)));
  }
  return page;
}

}  // namespace pluckbook
