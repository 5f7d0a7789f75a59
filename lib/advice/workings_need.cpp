// The need of a day: each slice from its table rows, then the herd's average.
#include <fmt/format.h>

#include <cmath>
#include <functional>

#include "advice/workings_line.h"
#include "base/text.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

/// In the reader's unit where it is a weight or an amount; what is printed in days stays so.
Figure column_figure(const ColumnStep& step, std::string name, double value) {
  if (step.unit == "lb") return weight(std::move(name), from_lb<KgBody>(value));
  if (step.unit == "lb/day") return amount(std::move(name), from_lb<KgPerDay>(value));
  return {std::move(name), value, Measure::as_printed, step.unit};
}

std::string part_name(const ColumnStep& step) {
  return step.column + "'s part";
}

/// How far along a column she stands, once for every pair of printed values.
std::vector<WorkingsLine> column_lines(const std::vector<RowPart>& rows) {
  std::vector<WorkingsLine> lines;
  for (const RowPart& row : rows) {
    for (const ColumnStep& step : row.steps) {
      if (step.low == step.high) continue;
      WorkingsLine one = line(
          part_name(step), "({0} - {1}) / ({2} - {1})",
          {column_figure(step, step.column, step.held()),
           column_figure(step, "lower row", step.low), column_figure(step, "upper row", step.high)},
          bare(part_name(step), step.share_of_high));
      const auto same = [&](const WorkingsLine& other) {
        return other.quantity == one.quantity && other.inputs[1].value == one.inputs[1].value &&
               other.inputs[2].value == one.inputs[2].value;
      };
      if (std::none_of(lines.begin(), lines.end(), same)) lines.push_back(std::move(one));
    }
  }
  return lines;
}

/// "row 1200 lb, day 152.5, 20 lb/day": as it is printed, so that a reader finds it there.
std::string row_label(const RowPart& row) {
  std::string label = "row";
  for (const ColumnStep& step : row.steps) {
    label += fmt::format("{} {}{} {}", label == "row" ? "" : ",",
                         step.unit.empty() ? step.column + " " : "", shortest(step.printed()),
                         step.unit);
    while (label.back() == ' ') label.pop_back();
  }
  return label;
}

/// A row's part: the parts of its columns multiplied.
WorkingsLine row_line(const RowPart& row) {
  std::string formula;
  std::vector<Figure> inputs;
  for (const ColumnStep& step : row.steps) {
    if (step.low == step.high) continue;
    formula += fmt::format(fmt::runtime(step.takes_high ? "{}{{{}}}" : "{}(1 - {{{}}})"),
                           inputs.empty() ? "" : " x ", inputs.size());
    inputs.push_back(bare(part_name(step), step.share_of_high));
  }
  Figure part = bare(row_label(row), row.weight);
  const bool plain = inputs.size() <= 1 && formula.find('-') == std::string::npos;
  if (plain) return given(std::move(part), "");
  return line_in_words(part.name, "", formula, std::move(inputs), part);
}

/// A column of the table: its figure in a row, and what the equations add beyond the table.
struct TableColumn {
  std::string name;
  std::function<Figure(const RowPart&)> of_row;
  std::function<Figure(const BeyondTable&)> beyond;
};

/// One column of the table at her place between the rows, carried on where she stands beyond them.
WorkingsLine blended_line(const Need& need, const TableColumn& column, Figure result) {
  std::vector<Figure> inputs;
  for (const RowPart& row : need.rows) {
    inputs.push_back(bare("part", row.weight));
    inputs.push_back(column.of_row(row));
  }
  std::string formula = sum_of_products(need.rows.size());
  std::string words = fmt::format("each row's part x its {}, added", column.name);
  if (need.beyond) {
    formula += fmt::format(" + {{{}}}", inputs.size());
    words += ", and what the equations say lies beyond the table";
    inputs.push_back(column.beyond(*need.beyond));
  }
  return line_in_words(column.name, words, formula, std::move(inputs), std::move(result),
                       cited(*need.citation));
}

/// Weight and milk of the day where the rows hold them.
void add_body_lines(const Slice& slice, const Need& need, std::vector<WorkingsLine>& lines) {
  if (slice.cow_class == CowClass::first_calf_heifer || slice.cow_class == CowClass::bred_heifer) {
    lines.push_back(blended_line(
        need,
        {"weight", [](const RowPart& row) { return weight("weight", row.body_weight); },
         [](const BeyondTable& more) { return weight("beyond", more.weight); }},
        weight("weight", need.weight)));
  } else {
    lines.push_back(given(weight("weight", need.weight), "the book, herds.yaml"));
  }
  if (need.milk.value() > 0) {
    lines.push_back(blended_line(
        need,
        {"milk of the day", [](const RowPart& row) { return amount("milk", row.milk); },
         [](const BeyondTable& more) { return amount("beyond", more.milk); }},
        amount("milk of the day", need.milk)));
  }
}

void add_protein_lines(const Need& need, std::vector<WorkingsLine>& lines) {
  lines.push_back(
      blended_line(need,
                   {"table CP", [](const RowPart& row) { return share("CP", row.crude_protein); },
                    [](const BeyondTable& more) { return share("beyond", more.crude_protein); }},
                   share("table CP", need.crude_protein_table)));
  lines.push_back(line("CP the diet must hold", "the larger of {0} and {1}",
                       {share("table CP", need.crude_protein_table),
                        percent_of("the rumen's least", intake_rules().cp_floor_percent)},
                       share("CP the diet must hold", need.crude_protein), rumen_source));
  lines.push_back(
      line("her own CP", "{0} x {1}",
           {matter("dry matter", need.intake), share("table CP", need.crude_protein_table)},
           amount("her own CP", need.crude_protein_amount())));
}

void add_energy_lines(const Need& need, std::vector<WorkingsLine>& lines) {
  lines.push_back(blended_line(need,
                               {"TDN", [](const RowPart& row) { return share("TDN", row.tdn); },
                                [](const BeyondTable& more) { return share("beyond", more.tdn); }},
                               share("TDN", need.tdn)));
  lines.push_back(line("TDN a day", "{0} x {1}",
                       {matter("dry matter", need.intake), share("TDN", need.tdn)},
                       amount("TDN a day", need.tdn_amount())));
  lines.push_back(blended_line(need,
                               {"NEm", [](const RowPart& row) { return energy("NEm", row.nem); },
                                [](const BeyondTable& more) { return energy("beyond", more.nem); }},
                               energy("NEm", need.nem)));
}

void add_nutrient_lines(const Need& need, std::vector<WorkingsLine>& lines) {
  lines.push_back(blended_line(
      need,
      {"dry matter", [](const RowPart& row) { return matter("dry matter", row.intake); },
       [](const BeyondTable& more) { return matter("beyond", more.intake); }},
      matter("dry matter", need.intake)));
  add_protein_lines(need, lines);
  add_energy_lines(need, lines);
}

std::string where_she_stands(const Slice& slice) {
  switch (slice.stage) {
    case Stage::milking:
    case Stage::dry:
      return fmt::format(", {} days after calving", shortest(slice.days_since_calving));
    case Stage::bred_heifer:
      return fmt::format(", {} days before calving", shortest(slice.days_to_calving));
    case Stage::growing:
    case Stage::bull:
      break;
  }
  return "";
}

std::string slice_name(const HerdNeed& herd, std::size_t i) {
  if (herd.slices.size() == 1) return "all of the herd";
  return fmt::format("slice {}, {} % of the herd", i + 1,
                     shortest(std::round(herd.slices[i].share * 1e5) / 1e3));
}

WorkingsSection slice_section(const HerdNeed& herd, std::size_t i) {
  const Slice& slice = herd.slices[i];
  const Need& need = herd.slice_needs[i];
  WorkingsSection section{fmt::format("need of {}: {}{}", slice_name(herd, i),
                                      to_string(slice.stage), where_she_stands(slice)),
                          {},
                          need.notes};
  section.lines = column_lines(need.rows);
  for (const RowPart& row : need.rows) section.lines.push_back(row_line(row));
  add_body_lines(slice, need, section.lines);
  add_nutrient_lines(need, section.lines);
  return section;
}

/// A figure of every slice, each counted by its share of the herd.
WorkingsLine averaged_line(const HerdNeed& herd, const std::string& quantity, Figure result,
                           const std::function<Figure(const Need&)>& of_slice) {
  std::vector<Figure> inputs;
  for (std::size_t i = 0; i < herd.slices.size(); ++i) {
    inputs.push_back(part_in_percent("share", herd.slices[i].share));
    inputs.push_back(of_slice(herd.slice_needs[i]));
  }
  return line_in_words(quantity, "each slice's share x its own, added",
                       sum_of_products(herd.slices.size()), std::move(inputs), std::move(result));
}

/// A share of dry matter over some slices: what they need in all they eat.
WorkingsLine eaten_line(const HerdNeed& herd, const std::vector<SlicePart>& parts,
                        const std::string& quantity, Figure result) {
  std::string needed, eaten;
  std::vector<Figure> inputs;
  for (const SlicePart& part : parts) {
    const Need& need = herd.slice_needs[part.slice];
    const std::string plus = inputs.empty() ? "" : " + ";
    const std::size_t at = inputs.size();
    needed += fmt::format("{}{{{}}} x {{{}}} x {{{}}}", plus, at, at + 1, at + 2);
    eaten += fmt::format("{}{{{}}} x {{{}}}", plus, at, at + 1);
    inputs.push_back(part_in_percent("share", part.share));
    inputs.push_back(matter("dry matter", need.intake));
    inputs.push_back(share("CP", need.crude_protein));
  }
  return line_in_words(quantity, "CP in all they eat / all they eat",
                       fmt::format("({}) / ({})", needed, eaten), std::move(inputs),
                       std::move(result));
}

WorkingsSection herd_section(const HerdNeed& herd) {
  const Need& mean = herd.average;
  WorkingsSection section{"need of the herd: the average of its slices", {}, {}};
  auto& lines = section.lines;
  lines.push_back(averaged_line(herd, "dry matter", matter("dry matter", mean.intake),
                                [](const Need& n) { return matter("", n.intake); }));
  lines.push_back(
      averaged_line(herd, "her own CP", amount("her own CP", mean.crude_protein_amount()),
                    [](const Need& n) { return amount("", n.crude_protein_amount()); }));
  lines.push_back(averaged_line(herd, "TDN a day", amount("TDN a day", mean.tdn_amount()),
                                [](const Need& n) { return amount("", n.tdn_amount()); }));
  lines.push_back(line("TDN the diet must hold", "{0} / {1}",
                       {amount("TDN a day", mean.tdn_amount()), matter("dry matter", mean.intake)},
                       share("TDN the diet must hold", mean.tdn)));
  std::vector<SlicePart> all;
  for (std::size_t i = 0; i < herd.slices.size(); ++i) all.push_back({i, herd.slices[i].share});
  lines.push_back(eaten_line(herd, all, "CP the diet must hold",
                             share("CP the diet must hold", mean.crude_protein)));
  lines.push_back(eaten_line(herd, herd.hardest_slices, "CP for the hardest-pressed quarter",
                             share("CP of the quarter", herd.hardest_quarter.crude_protein)));
  lines.push_back(averaged_line(herd, "NEm", energy("NEm", mean.nem),
                                [](const Need& n) { return energy("", n.nem); }));
  lines.push_back(averaged_line(herd, "weight", weight("weight", mean.weight),
                                [](const Need& n) { return weight("", n.weight); }));
  return section;
}

}  // namespace

std::vector<WorkingsSection> need_workings(const HerdDay& day) {
  const HerdNeed& need = day.need;
  std::vector<WorkingsSection> sections;
  for (std::size_t i = 0; i < need.slices.size(); ++i) {
    sections.push_back(slice_section(need, i));
    sections.push_back(
        equation_workings(day.by_equations[i], need.slice_needs[i], slice_name(need, i)));
  }
  if (need.slices.size() > 1) sections.push_back(herd_section(need));
  return sections;
}

}  // namespace pluckbook
