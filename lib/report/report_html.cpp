#include <fmt/format.h>

#include "advice/schedule.h"
#include "base/text.h"
#include "report/diet_chart.h"
#include "report/page_html.h"
#include "report/pages.h"
#include "report/report.h"
#include "report/report_style.h"

namespace pluckbook {
namespace {

std::string name_of(const Herd& herd) {
  return herd.name.empty() ? herd.id : herd.name;
}

Markup paragraph(const std::string& text) {
  return tag("p", words(text));
}

/// A sentence that leads to the table or the arithmetic behind it.
Markup leading(const std::string& text, const std::string& anchor) {
  return tag("p", element("a", {{"href", "#" + anchor}}, words(text)));
}

Markup section(const std::string& id, const Markup& content) {
  return element("section", {{"id", id}}, content);
}

/// A link to `id` opens the fold, since what it names lies inside.
Markup folded(const std::string& id, const std::string& title, const Markup& content) {
  return tag("details", tag("summary", words(title)) + element("div", {{"id", id}}, content));
}

/// Enough now, until when, what to buy: the herd in a few sentences.
Markup advice(const HerdReport& herd, const ReportAnswer& report, const Reader& reader) {
  const std::string id = herd.outlook.herd->id;
  Markup text =
      tag("h2",
          words(fmt::format("{} on {}", name_of(*herd.outlook.herd), herd.outlook.pasture->name)));
  for (const NutrientOutlook& n : herd.outlook.nutrients) {
    text += leading(
        fmt::format("{} {}.", sentence(in_words(n.nutrient)), finding(n, report.settings.until)),
        "workings-" + id);
  }
  text += herd.price ? leading(price_in_brief(*herd.price, reader), "price-" + id)
                     : paragraph("No price: " + herd.no_price + ".");
  return element("div", {{"class", "advice"}}, text);
}

Markup first_screen(const ReportAnswer& report, const Reader& reader) {
  Markup text =
      tag("h1", words(fmt::format("{}, {}", report.book->name, in_words(report.settings.as_of))));
  for (const HerdReport& herd : report.herds) text += advice(herd, report, reader);
  if (report.next_sample) {
    text += leading(fmt::format("Next bag: {} about {}.", report.next_sample->pasture->name,
                                in_words_without_year(report.next_sample->date)),
                    "next-bag");
  }
  return section("answers", text);
}

Markup charts(const HerdReport& herd) {
  Markup both;
  for (const DietNutrient nutrient : {DietNutrient::crude_protein, DietNutrient::tdn}) {
    Page page;
    page.add(diet_chart(herd.diet, nutrient));
    both += html_of(page, 4, json_name(nutrient) + "-" + herd.outlook.herd->id);
  }
  return element("div", {{"class", "charts"}}, both);
}

/// The figures of both charts, every second week.
Table chart_numbers(const DietAnswer& diet) {
  constexpr std::size_t step = 14;
  Table table({{"date", Align::left},
               {"CP low, %"},
               {"middle"},
               {"high"},
               {"TDN low, %"},
               {"middle"},
               {"high"},
               {"need CP, %"},
               {"need TDN, %"}});
  for (std::size_t i = 0; i < diet.cp_days.size(); i += step) {
    std::vector<std::string> cells = {to_iso(diet.cp_days[i].date)};
    for (const DietPoint* point : {&diet.cp_days[i], &diet.tdn_days[i]}) {
      for (const Share share : {point->low, point->median, point->high}) {
        cells.push_back(fixed(in_percent(share), 1));
      }
    }
    const bool needed = i < diet.need.size();
    cells.push_back(needed ? fixed(in_percent(diet.need[i].crude_protein), 1) : "-");
    cells.push_back(needed ? fixed(in_percent(diet.need[i].tdn), 1) : "-");
    table.add(std::move(cells));
  }
  return table;
}

Markup cautions(const std::vector<std::string>& all) {
  Markup list;
  for (const std::string& caution : all) list += tag("li", words(caution));
  if (list.empty()) return {};
  return element("div", {{"class", "cautions"}},
                 tag("h4", words("Before you feed")) + tag("ul", list));
}

/// What another price would do: the quotes at which feeds come in or go out.
Markup what_would_change(const PriceAnswer& price, const Reader& reader) {
  Markup list;
  for (const std::string& words_of_one : what_changes_the_mix(price, reader)) {
    list += tag("li", words(words_of_one));
  }
  if (list.empty()) return {};
  return tag("h3", words("What would change this")) + tag("ul", list);
}

/// The cautions on today's feeds and on those of the season, each once.
std::vector<std::string> all_cautions(const HerdReport& herd) {
  std::vector<std::string> all;
  if (herd.price) all = herd.price->cautions;
  if (herd.plan) join_cautions(all, herd.plan->schedule.cautions);
  return all;
}

/// What the season takes: tons, the condition without it, money; its cautions stand with the price.
Markup season(const HerdReport& herd, const Reader& reader) {
  if (!herd.plan) return {};
  const std::string id = herd.outlook.herd->id;
  return section("plan-" + id,
                 tag("h3", words("The season ahead")) +
                     html_of(plan_finding(*herd.plan, reader), 4, "plan-" + id) +
                     (herd.price ? Markup{} : cautions(all_cautions(herd))) +
                     html_of(plan_cost(*herd.plan, reader), 4, "cost-" + id) +
                     html_of(plan_purchases(*herd.plan, reader), 4, "buy-" + id) +
                     folded("windows-" + id, "Window by window, month by month",
                            html_of(plan_windows(*herd.plan, reader), 4, "windows-" + id)));
}

Markup herd_section(const HerdReport& herd, const ReportAnswer& report, const Reader& reader) {
  const std::string id = herd.outlook.herd->id;
  Markup text = tag("h2", words(fmt::format("{}: {} head on {}", name_of(*herd.outlook.herd),
                                            herd.outlook.herd->head, herd.outlook.pasture->name)));
  text += charts(herd);
  text += folded("numbers-" + id, "The charts in figures",
                 html_table(chart_numbers(herd.diet), "8 years in 10 between low and high"));
  text += section(
      "outlook-" + id,
      tag("h3", words("Diet against need")) +
          html_of(outlook_tables(herd.outlook, report.settings, reader), 4, "outlook-" + id));
  if (herd.price) {
    text += section("price-" + id,
                    tag("h3", words("What to feed")) + cautions(all_cautions(herd)) +
                        html_of(price_tables(*herd.price, reader), 4, "price-" + id) +
                        what_would_change(*herd.price, reader) +
                        folded("notes-" + id, "Why not another feed, and what was not checked",
                               html_of(price_notes(*herd.price, reader), 4, "notes-" + id)));
  }
  text += season(herd, reader);
  text += folded("workings-" + id, "The arithmetic of " + in_words(report.settings.as_of),
                 html_of(page_of(herd.workings, reader), 4, "workings-" + id));
  text += folded("bags-" + id, "Bags and readings of " + herd.outlook.pasture->name,
                 html_of(diet_tables(herd.diet), 4, "bags-" + id));
  return element("section", {{"id", "herd-" + id}}, text);
}

Markup next_bag(const ReportAnswer& report) {
  if (!report.next_sample) return {};
  const NextSample& next = *report.next_sample;
  return section("next-bag", tag("h2", words("The next bag")) +
                                 paragraph(fmt::format("{} about {}: {}.", next.pasture->name,
                                                       in_words(next.date), next.why)));
}

Markup glossary() {
  static constexpr std::pair<const char*, const char*> terms[] = {
      {"8 years in 10", "the range that should hold the truth in eight of ten such seasons"},
      {"ADF, NDF", "acid and neutral detergent fibre: what is slow or hard to digest"},
      {"CP", "crude protein: nitrogen x 6.25"},
      {"cover", "the share of outcomes for which the supplement should be enough"},
      {"DM", "dry matter: feed without its water; every % here is of dry matter"},
      {"gap", "what the cow needs less what the grass gives, when that is more than nothing"},
      {"NEm", "net energy for maintenance"},
      {"NPN", "non-protein nitrogen, such as urea"},
      {"pays up to", "the quote at which a feed would be bought, or would no longer be"},
      {"TDN", "total digestible nutrients: a measure of energy"},
      {"usual season", "how such grass usually runs, from published clips of many years"},
  };
  Markup list;
  for (const auto& [term, meaning] : terms) {
    list += tag("dt", words(term)) + tag("dd", words(meaning));
  }
  return element("section", {{"id", "words"}}, tag("h2", words("Words used")) + tag("dl", list));
}

Markup head(const std::string& title) {
  return tag("head",
             element("meta", {{"charset", "utf-8"}}) +
                 element("meta", {{"name", "viewport"},
                                  {"content", "width=device-width, initial-scale=1"}}) +
                 element("meta", {{"http-equiv", "Content-Security-Policy"},
                                  {"content", "default-src 'none'; style-src 'unsafe-inline'"}}) +
                 tag("title", words(title)) + style_sheet(report_style));
}

std::string document_of(const std::string& title, const Markup& content) {
  return "<!doctype html>\n" +
         element("html", {{"lang", "en"}}, head(title) + tag("body", tag("main", content))).text() +
         "\n";
}

}  // namespace

std::string report_html(const ReportAnswer& report, const Reader& reader) {
  Markup text = first_screen(report, reader);
  for (const HerdReport& herd : report.herds) text += herd_section(herd, report, reader);
  text += next_bag(report) + glossary();
  text += folded("sources", "Where the numbers come from", html_of(sources_page(), 3, "sources"));
  text +=
      element("p", {{"class", "quiet"}},
              words("This page fetches nothing and needs no script. Labels, a veterinarian or a "
                    "qualified nutritionist, and local rules come before anything said here."));
  return document_of(fmt::format("{}, {}", report.book->name, in_words(report.settings.as_of)),
                     text);
}

std::string feeding_card_html(const ReportAnswer& report, const Reader& reader) {
  const std::string title = fmt::format("Feeding card, {}", in_words(report.settings.as_of));
  return document_of(title,
                     tag("h1", words(title)) + html_of(feeding_card(report, reader), 2, "card"));
}

}  // namespace pluckbook
