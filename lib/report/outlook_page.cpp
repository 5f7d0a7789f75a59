#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "published/energetics.h"
#include "published/rules.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

std::string not_by(Date until) {
  return "not by " + in_words_without_year(until);
}

/// "20 Aug to 28 Jan"; an end nobody sees before the horizon is said to lie after it.
std::string range(const Crossing& crossing, Date until) {
  if (!crossing.low) return not_by(until);
  return in_words_without_year(*crossing.low) + " to " +
         (crossing.high ? in_words_without_year(*crossing.high)
                        : "after " + in_words_without_year(until));
}

std::string short_now(const NutrientOutlook& n, Date today) {
  if (!n.below_now) return "no";
  const bool since = n.below_since && *n.below_since < today;
  return since ? "since " + in_words_without_year(*n.below_since) : "yes";
}

/// Today alone: what lies ahead is another table, so that no column speaks of both.
Table shares_table(const HerdOutlook& herd, const OutlookSettings& settings) {
  Table table(
      {{"nutrient", Align::left}, {"diet"}, {"need"}, {"short now"}, {"chance it is short today"}});
  for (const NutrientOutlook& n : herd.nutrients)
    table.add({in_words(n.nutrient), fixed(in_percent(n.diet_now.median), 1),
               fixed(in_percent(n.need_now), 1), short_now(n, settings.as_of),
               in_hundred(n.probability_below_now)});
  return table;
}

bool can_fall(const NutrientOutlook& n) {
  return n.below_now || n.falls_below.probability_by_horizon > 0;
}

/// What changes ahead: what is enough falls short, what is short is enough again.
Table turns_table(const HerdOutlook& herd, Date until) {
  Table table({{"nutrient", Align::left},
               {"what", Align::left},
               {"about"},
               {"8 years in 10"},
               {"chance by " + in_words_without_year(until)}});
  const auto row = [&](const NutrientOutlook& n, const char* what, const Crossing& turn) {
    table.add({in_words(n.nutrient), what,
               turn.median ? in_words_without_year(*turn.median) : not_by(until),
               range(turn, until), in_hundred(turn.probability_by_horizon)});
  };
  for (const NutrientOutlook& n : herd.nutrients) {
    if (!n.below_now) row(n, "falls short", n.falls_below);
    if (can_fall(n)) row(n, "enough again", n.recovers);
  }
  return table;
}

std::string short_from(bool below_now, const Crossing& falls, Date until) {
  if (below_now) return "now";
  return falls.median ? in_words_without_year(*falls.median) : not_by(until);
}

Table amounts_table(const HerdOutlook& herd, Date until, const Reader& reader) {
  Table table({{"nutrient", Align::left},
               {"need, " + mass_unit(reader)},
               {"diet gives"},
               {"by other intake rules"},
               {"short"},
               {"short from"}});
  const auto amount = [&](KgPerDay kg) { return three_figures(in_mass_unit(kg.value(), reader)); };
  for (const NutrientOutlook& n : herd.nutrients) {
    table.add({in_words(n.nutrient), amount(n.balance.need), amount(n.balance.supply),
               amount(n.supply_low) + " to " + amount(n.supply_high), amount(n.balance.gap()),
               short_from(n.below_now_amount, n.falls_below_amount, until)});
  }
  if (const auto& rdp = herd.degradable) {
    table.add({"RDP", amount(rdp->balance.need), amount(rdp->balance.supply), "-",
               amount(rdp->balance.gap()), short_from(rdp->below_now(), rdp->falls_below, until)});
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
                     in_words_without_year(*c.median), range(c, until));
}

Page outlook_tables(const HerdOutlook& herd, const OutlookSettings& settings,
                    const Reader& reader) {
  Page page;
  page.heading(fmt::format("outlook on {} for {} ({} head) {}, % of dry matter",
                           to_iso(settings.as_of), herd.herd->id, herd.herd->head,
                           place_words(herd)));
  page.add(shares_table(herd, settings));
  page.heading("what changes by " + in_words_without_year(settings.until));
  page.add(turns_table(herd, settings.until));
  if (std::any_of(herd.nutrients.begin(), herd.nutrients.end(), can_fall))
    page.note("enough again: for a week or longer, counted among the years that fall short");
  page.heading(fmt::format("per head and day, eating {} of dry matter ({})",
                           mass(herd.intake.amount.value(), reader), to_string(herd.intake.rule)));
  page.add(amounts_table(herd, settings.until, reader));
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
