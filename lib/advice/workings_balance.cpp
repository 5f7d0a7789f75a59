// Supply against need, in amounts and in share of dry matter; which is short first; the two traps.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "advice/workings_line.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

constexpr const char* ratio_source =
    "Moore, Brant, Kunkle and Hopkins 1999, J. Anim. Sci. 77 suppl. 2:122-135, abstract (read)";

/// Need and supply, the smaller taken from the larger: what is short, or to spare.
WorkingsLine difference_line(const Figure& need, const Figure& supply, double difference) {
  const bool is_short = need.value > supply.value;
  const std::string name = is_short ? "short" : "to spare";
  return line(name, "{0} - {1}", {is_short ? need : supply, is_short ? supply : need},
              {name, difference, need.measure});
}

WorkingsLine amount_difference(const std::string& nutrient, const Balance& balance) {
  const KgPerDay difference = std::max(balance.gap(), balance.to_spare());
  return difference_line(amount(nutrient + " needed", balance.need),
                         amount(nutrient + " the diet gives", balance.supply), difference.value());
}

WorkingsLine share_difference(const std::string& nutrient, Share need, Share diet) {
  return difference_line(share(nutrient + " the diet must hold", need),
                         share(nutrient + " of the diet", diet), std::abs((need - diet).value()));
}

WorkingsLine supply_line(const std::string& name, const Intake& intake, Share in_diet,
                         KgPerDay supply) {
  return line(name, "{0} x {1}",
              {matter("intake", intake.amount), share("its share of the diet", in_diet)},
              amount(name, supply));
}

WorkingsSection protein_section(const HerdDay& day) {
  const DayBalance& lead = day.lead;
  const Share diet = day.diet.crude_protein;
  const Figure own = amount("her own CP", lead.own_crude_protein);
  const Figure rumen = amount("the rumen's CP", lead.rumen_crude_protein);
  const Figure need = amount("CP needed", lead.crude_protein.need);
  WorkingsSection section{"protein a day, and in share of dry matter", {}, {}};
  section.lines = {
      line("the rumen's CP", "{0} x {1}",
           {matter("intake", lead.intake.amount),
            percent_of("the rumen's least", intake_rules().cp_floor_percent)},
           rumen, rumen_source),
      line("CP needed", "the larger of {0} and {1}", {own, rumen}, need),
      supply_line("CP the diet gives", lead.intake, diet, lead.crude_protein.supply),
      amount_difference("CP", lead.crude_protein),
      supply_line("CP by the NRC equation", day.low.intake, diet, day.low.crude_protein.supply),
      supply_line("CP by the higher guidance", day.high.intake, diet,
                  day.high.crude_protein.supply),
      share_difference("CP", day.need.average.crude_protein, diet)};
  section.notes.push_back(lead.rumen_crude_protein > lead.own_crude_protein
                              ? "the rumen's need governs the amount: it is above her own"
                              : "her own need governs the amount: it is above the rumen's");
  return section;
}

WorkingsSection tdn_section(const HerdDay& day) {
  const DayBalance& lead = day.lead;
  const Share diet = day.diet.tdn;
  WorkingsSection section{"TDN a day, and in share of dry matter", {}, {}};
  section.lines = {
      supply_line("TDN the diet gives", lead.intake, diet, lead.tdn.supply),
      amount_difference("TDN", lead.tdn),
      supply_line("TDN by the NRC equation", day.low.intake, diet, day.low.tdn.supply),
      supply_line("TDN by the higher guidance", day.high.intake, diet, day.high.tdn.supply),
      share_difference("TDN", day.need.average.tdn, diet)};
  return section;
}

/// The table's TDN against its own NEm: the same verdict, or a close call.
WorkingsSection energy_section(const HerdDay& day, const EnergyBothWays& both) {
  const Need& need = day.need.average;
  const Figure needed = density("NEm the diet must hold", both.needed);
  const Figure held = density("NEm of the diet", both.held);
  WorkingsSection section{"energy both ways: by TDN and by NEm", {}, {}};
  section.lines = {
      line(needed.name, "{0} / ({1} / {2})",
           {energy("NEm", need.nem), matter("dry matter", need.intake), one_kilogram}, needed),
      difference_line(needed, held, std::abs((both.needed - both.held).value()))};
  section.notes.push_back(both.agree()
                              ? fmt::format("by TDN and by NEm alike the diet is {} need",
                                            both.short_by_tdn ? "below" : "above")
                              : fmt::format("a close call: by TDN the diet is {} need, by NEm {}",
                                            both.short_by_tdn ? "below" : "above",
                                            both.short_by_nem ? "below" : "above"));
  section.notes.push_back(
      "the table's TDN stands about a point under the plain chain's for the same NEm (printed = "
      "chain / 1.0187, computed)");
  return section;
}

WorkingsSection first_section(const HerdDay& day) {
  WorkingsSection section{"which is short first", {}, {}};
  section.lines.push_back(line(
      "TDN:CP", "{0} / {1}",
      {share("TDN of the diet", day.diet.tdn), share("CP of the diet", day.diet.crude_protein)},
      bare("TDN:CP", day.lead.tdn_cp_ratio), ratio_source));
  section.notes.push_back(day.first_short.empty() ? "nothing is short" : day.first_short);
  return section;
}

}  // namespace

std::vector<WorkingsSection> balance_workings(const HerdDay& day) {
  std::vector<WorkingsSection> sections{protein_section(day), tdn_section(day)};
  if (const auto both = energy_both_ways(day.need.average, day.diet.tdn))
    sections.push_back(energy_section(day, *both));
  sections.push_back(first_section(day));
  return sections;
}

}  // namespace pluckbook
