#include <fmt/format.h>

#include <set>

#include "base/text.h"
#include "report/pages.h"

namespace pluckbook {

namespace {

Table rows_table(const NeedAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table({{answer.rows.empty() || answer.rows.front().date ? "date" : "month"},
               {"stage", Align::left},
               {"DM " + unit},
               {"CP %"},
               {"CP " + unit},
               {"TDN %"},
               {"TDN " + unit},
               {"NEm"},
               {"Ca %"},
               {"P %"}});
  for (const NeedRow& row : answer.rows) {
    const Need& n = row.need;
    const auto amount = [&](double kg, int decimals) {
      return fixed(in_mass_unit(kg, reader), decimals);
    };
    table.add({row.date ? to_iso(*row.date) : std::to_string(row.month.value_or(0)), row.stage,
               amount(n.intake.value(), 1),
               fixed(in_percent(n.crude_protein), 2) + (n.rumen_floor_governs ? "*" : " "),
               amount(n.crude_protein_amount().value(), 2), fixed(in_percent(n.tdn), 1),
               amount(n.tdn_amount().value(), 1), fixed(n.nem.value(), 2),
               fixed(in_percent(n.calcium), 2), fixed(in_percent(n.phosphorus), 2)});
  }
  return table;
}

}  // namespace

Page page_of(const NeedAnswer& answer, const Reader& reader) {
  Page page;
  page.sentence(answer.title).space().add(rows_table(answer, reader));
  page.line("shares are of dry matter, amounts per head and day, NEm in Mcal a day");
  std::set<std::string> notes;
  bool floored = false;
  for (const NeedRow& row : answer.rows) {
    notes.insert(row.need.notes.begin(), row.need.notes.end());
    floored = floored || row.need.rumen_floor_governs;
  }
  if (floored) {
    page.sentence(
        "* the rumen's least, 7 % of dry matter (Sprinkle, University of Arizona), is "
        "above the table's own figure; CP in amounts is the table's.");
  }
  for (const std::string& note : notes) page.note(note);
  if (!answer.rows.empty() && answer.rows.front().need.citation != nullptr) {
    const Citation& c = *answer.rows.front().need.citation;
    page.sentence(fmt::format("source: {}; {} ({})", c.source, c.table, c.status));
  }
  return page;
}

}  // namespace pluckbook
