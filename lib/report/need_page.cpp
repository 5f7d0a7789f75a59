#include <fmt/format.h>

#include <set>

#include "base/text.h"
#include "report/pages.h"

namespace pluckbook {

namespace {

struct PointHeader {
  const Reader& reader;
  std::string operator()(Date) const { return "date"; }
  std::string operator()(MonthSinceCalving) const { return "month"; }
  std::string operator()(MonthOfPregnancy) const { return "month"; }
  std::string operator()(DayOfPregnancy) const { return "day"; }
  std::string operator()(DailyGain) const { return "gain " + mass_unit(reader); }
};

struct PointCell {
  const Reader& reader;
  std::string operator()(Date date) const { return to_iso(date); }
  std::string operator()(MonthSinceCalving at) const { return std::to_string(at.month); }
  std::string operator()(MonthOfPregnancy at) const { return std::to_string(at.month); }
  std::string operator()(DayOfPregnancy at) const { return shortest(at.day); }
  std::string operator()(DailyGain at) const {
    return fixed(in_mass_unit(at.gain.value(), reader), 2);
  }
};

std::string percent_cell(Share share, int decimals) {
  return fixed(in_percent(share), decimals);
}

/// The rumen's floor is marked where it governs.
std::string protein_cell(const Need& need) {
  return percent_cell(need.crude_protein, 2) + (need.rumen_floor_governs ? "*" : " ");
}

/// The quarter of the herd whose diet must hold the most protein, on the dates when it asks for
/// more than the average by a twentieth of a point.
Table quarter_table(const NeedAnswer& answer, const Reader& reader) {
  constexpr double worth_saying = 0.0005;
  const std::string unit = mass_unit(reader);
  Table table({{"date"},
               {"CP %"},
               {"CP " + unit},
               {"TDN %"},
               {"TDN " + unit},
               {"CP over the average, points"}});
  for (const NeedRow& row : answer.rows) {
    if (!row.hardest_quarter) continue;
    const Need& quarter = *row.hardest_quarter;
    const Share over = quarter.crude_protein - row.need.crude_protein;
    if (over.value() < worth_saying) continue;
    table.add({std::visit(PointCell{reader}, row.at), protein_cell(quarter),
               fixed(in_mass_unit(quarter.crude_protein_amount().value(), reader), 2),
               percent_cell(quarter.tdn, 1),
               fixed(in_mass_unit(quarter.tdn_amount().value(), reader), 1),
               percent_cell(over, 2)});
  }
  return table;
}

Table rows_table(const NeedAnswer& answer, const Reader& reader) {
  const std::string unit = mass_unit(reader);
  Table table(
      {{answer.rows.empty() ? "date" : std::visit(PointHeader{reader}, answer.rows.front().at)},
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
    table.add({std::visit(PointCell{reader}, row.at), row.stage, amount(n.intake.value(), 1),
               protein_cell(n), amount(n.crude_protein_amount().value(), 2), percent_cell(n.tdn, 1),
               amount(n.tdn_amount().value(), 1), fixed(n.nem.value(), 2),
               percent_cell(n.calcium, 2), percent_cell(n.phosphorus, 2)});
  }
  return table;
}

}  // namespace

Page page_of(const NeedAnswer& answer, const Reader& reader) {
  Page page;
  page.sentence(answer.title).space().add(rows_table(answer, reader));
  page.sentence("shares are of dry matter, amounts per head and day, NEm in Mcal a day");
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
  page.sentence(
      "TDN is the table's own: about a point under what the plain TDN to NEm chain asks for the "
      "same NEm, so a call within a point is close.");
  const Table quarter = quarter_table(answer, reader);
  if (!quarter.empty()) {
    page.heading("the hardest-pressed quarter, by protein, where it asks more than the average");
    page.add(quarter);
  }
  for (const std::string& note : notes) page.note(note);
  if (!answer.rows.empty() && answer.rows.front().need.citation != nullptr) {
    const Citation& c = *answer.rows.front().need.citation;
    page.sentence(fmt::format("source: {}; {} ({})", c.source, c.table, c.status));
  }
  return page;
}

}  // namespace pluckbook
