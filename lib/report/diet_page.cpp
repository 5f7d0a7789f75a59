#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

#include "base/text.h"
#include "forage/method_shift.h"
#include "report/diet_chart.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

/// The first clause of a reason; the JSON holds the whole of it.
std::string short_reason(const std::string& why_not) {
  return why_not.substr(0, why_not.find_first_of(":;,"));
}

Table bags_table(const DietAnswer& answer) {
  Table table({{"bag", Align::left}, {"plucked"}, {"CP, %"}, {"TDN, %"}, {"used", Align::left}});
  for (const BagReading& reading : answer.series->bags()) {
    if (reading.bag->plucked < answer.first) continue;
    std::string cp = "-";
    std::string tdn = "-";
    std::string how = reading.used ? "yes" : "no: " + short_reason(reading.why_not);
    if (!reading.results.empty()) {
      const FootedResult& result = reading.results.back();
      if (result.crude_protein) cp = fixed(in_percent(result.crude_protein->value), 1);
      if (result.tdn) {
        tdn = fixed(in_percent(result.tdn->value), 1);
        if (result.tdn->method != "laboratory" && reading.used)
          how += "; TDN by " + result.tdn->method;
      }
    }
    table.add({reading.bag->id, to_iso(reading.bag->plucked), cp, tdn, how});
  }
  return table;
}

Table readings_table(const DietAnswer& answer) {
  Table table({{"on " + in_words_without_year(answer.as_of), Align::left},
               {"middle, %"},
               {"8 years in 10"},
               {"straight line"},
               {"cubic"},
               {"usual season"}});
  const auto row = [&](const std::string& name, const DietReading& r) {
    const auto optional = [](const std::optional<Share>& share) {
      return share ? fixed(in_percent(*share), 1) : "-";
    };
    table.add({name, fixed(in_percent(r.model.median), 1),
               fixed(in_percent(r.model.low), 1) + " to " + fixed(in_percent(r.model.high), 1),
               optional(r.linear), optional(r.cubic), fixed(in_percent(r.class_curve), 1)});
  };
  row("protein", answer.crude_protein);
  row("TDN", answer.tdn);
  return table;
}

std::string days_in_words(long days) {
  return fmt::format("{} {}", days, days == 1 ? "day" : "days");
}

std::string green_up_note(const GreenUpEstimate& green_up) {
  const long late = days_between(green_up.usual, green_up.date);
  const std::string than_usual = late == 0 ? "as usual"
                                           : days_in_words(std::labs(late)) +
                                                 (late > 0 ? " later" : " earlier") + " than usual";
  return fmt::format("green-up {} {}, {}, give or take {}",
                     green_up.recorded ? "recorded, taken as" : "about", in_words(green_up.date),
                     than_usual, days_in_words(std::lround(green_up.sd)));
}

/// Where the curve and its band come from.
std::string model_note(const DietModel& model) {
  if (!model.refit) return "curve and band: published for this class of forage";
  return fmt::format("curve and band: published, refitted on {} bags of {} seasons in this book",
                     model.refit->bags, model.refit->seasons);
}

/// What the season's pages signal, and where their TDN was got another way than usual.
void add_notes(const DietAnswer& answer, Page& page) {
  for (const MethodShift& shift : method_shifts(answer.series->bags()))
    if (shift.bags.back()->plucked >= answer.first) page.note(in_words(shift));
  for (const BagReading& reading : answer.series->bags()) {
    if (reading.bag->plucked < answer.first) continue;
    for (const FootedResult& result : reading.results) {
      for (const std::string& note : result.notes) page.note(reading.bag->id + ": " + note);
      for (const std::string& caution : result.cautions)
        page.note(reading.bag->id + ": " + caution);
    }
  }
}

}  // namespace

Page diet_tables(const DietAnswer& answer) {
  Page page;
  page.add(readings_table(answer)).space();
  const Table bags = bags_table(answer);
  if (bags.empty()) return page.sentence("no bag this season");
  page.add(bags);
  add_notes(answer, page);
  return page;
}

Page page_of(const DietAnswer& answer, const Reader& /*shares need no units*/) {
  const DietPoint& cp = answer.crude_protein.model;
  const DietPoint& tdn = answer.tdn.model;
  Page page;
  page.sentence(fmt::format("The diet on {} holds about {} protein and {} TDN on {}.",
                            answer.series->pasture().name, percent(cp.median), percent(tdn.median),
                            in_words(answer.as_of)));
  page.space().append(diet_tables(answer));
  page.note(green_up_note(answer.series->green_up(answer.as_of)));
  page.note(model_note(answer.series->model()));
  const DietChart chart = diet_chart(answer, DietNutrient::crude_protein);
  page.add(chart);
  if (!chart.finding.empty()) page.sentence(chart.finding + ".");
  if (!answer.herd.empty()) {
    page.line("need: " + answer.herd);
    page.next(fmt::format("pluckbook outlook {} --as-of {}", answer.herd, to_iso(answer.as_of)));
  }
  return page;
}

}  // namespace pluckbook
