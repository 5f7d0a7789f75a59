// Intake by the leading rule and at both ends of the published ones, with the limits on each.
#include <fmt/format.h>

#include "advice/workings_line.h"
#include "base/text.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

constexpr const char* nrc_source =
    "NRC 2000, Nutrient Requirements of Beef Cattle, 7th rev. ed., chapter 7 (recalled)";
constexpr const char* protein_poor_source =
    "J. Sprinkle, University of Arizona AZ9523, revised December 2011: dry cows eat less on "
    "protein-poor forage (read)";
constexpr const char* gut_source = "University of Missouri extension: NDF a gut can hold (read)";

WorkingsSection diet_energy_section(const HerdDay& day) {
  const EnergyChain& chain = energy_chain();
  const McalPerKgDm me = me_of(day.diet.tdn);
  WorkingsSection section{"energy of the diet by the plain chain TDN to NEm", {}, {}};
  section.lines.push_back(
      line("ME", "{0} x {1} x {2}",
           {share("TDN of the diet", day.diet.tdn),
            density("DE of TDN", McalPerKgDm(chain.de_per_tdn)), bare("ME of DE", chain.me_per_de)},
           density("ME", me), chain.source));
  section.lines.push_back(
      line("NEm", "{1} x {0} - {2} x {0} ^ 2 + {3} x {0} ^ 3 - {4}",
           {density("ME", me), bare("a", chain.nem[0]), bare("b", -chain.nem[1]),
            bare("c", chain.nem[2]), bare("d", -chain.nem[3])},
           density("NEm", nem_of(day.diet.tdn)), chain.source));
  return section;
}

/// One printed column of the guidance at the diet's TDN.
WorkingsLine guidance_column(const std::string& column, const GuidanceReading& at, double low,
                             double high, double result, const std::string& source) {
  return line(column + " column", "{0} + {1} x ({2} - {0})",
              {percent_of("lower knot", low), bare("TDN's part", at.share_of_high),
               percent_of("upper knot", high)},
              percent_of(column + " column", result), source);
}

void add_guidance_lines(const HerdDay& day, const IntakeGuidance& guidance,
                        std::vector<WorkingsLine>& lines) {
  const double milking = day.need.milking_share;
  const GuidanceReading at = guidance_at(guidance, milking, day.diet.tdn);
  const std::string source = cited(guidance.citation);
  const Figure part = bare("TDN's part", at.share_of_high);
  if (day.diet.tdn > at.tdn_low && day.diet.tdn < at.tdn_high) {
    lines.push_back(line(part.name, "({0} - {1}) / ({2} - {1})",
                         {share("TDN", day.diet.tdn), share("lower knot", at.tdn_low),
                          share("upper knot", at.tdn_high)},
                         part, source));
  } else {
    lines.push_back(given(part, source));
  }
  if (milking < 1)
    lines.push_back(guidance_column("dry", at, at.dry_low, at.dry_high, at.dry, source));
  if (milking > 0)
    lines.push_back(
        guidance_column("milking", at, at.milking_low, at.milking_high, at.milking, source));
  if (milking > 0 && milking < 1) {
    lines.push_back(
        line("percent of body weight", "{0} x {1} + (1 - {0}) x {2}",
             {part_in_percent("milking share", milking), percent_of("milking column", at.milking),
              percent_of("dry column", at.dry)},
             percent_of("percent of body weight", at.percent)));
  }
}

/// What the equation gives one slice, in the kilograms it is written in.
WorkingsLine nrc_line(const NrcReading& one, const Figure& kilograms, const Figure& eaten,
                      McalPerKgDm nem) {
  const IntakeRules& rules = intake_rules();
  return line(eaten.name, "{0} ^ 0.75 x ({1} x {2} ^ 2 + {3}) / {4} + {5} x {6}",
              {kilograms,
               bare(shortest(rules.nrc_square), rules.nrc_square),
               bare("N", nem.value()),
               bare("c", one.cow.constant),
               bare("N", one.divisor),
               bare(shortest(rules.nrc_milk), rules.nrc_milk),
               {"milk in kg", one.cow.milk.value(), Measure::kilograms_per_day}},
              eaten, nrc_source);
}

/// The equation holds for each slice: she is dry or milking, open or bred.
void add_nrc_lines(const HerdDay& day, const Intake& intake, std::vector<WorkingsLine>& lines) {
  const McalPerKgDm nem = nem_of(day.diet.tdn);
  std::vector<Figure> parts;
  KgBody weighed;
  for (std::size_t i = 0; i < day.need.slices.size(); ++i) {
    const Need& need = day.need.slice_needs[i];
    const NrcReading one = nrc_reading(day.need.slices[i], need, nem);
    const Figure kilograms{"weight in kg", need.weight.value(), Measure::kilograms};
    const Figure eaten{fmt::format("slice {}", i + 1), one.amount.value(),
                       Measure::kilograms_per_day};
    if (need.weight != weighed) {
      lines.push_back(line(kilograms.name, "{0} / {1}",
                           {weight("weight", need.weight), one_kilogram}, kilograms));
    }
    weighed = need.weight;
    lines.push_back(nrc_line(one, kilograms, eaten, nem));
    parts.push_back(part_in_percent("share", day.need.slices[i].share));
    parts.push_back(eaten);
  }
  const std::string sum = sum_of_products(day.need.slices.size());
  parts.push_back(one_kilogram);
  lines.push_back(line_in_words("by the rule", "(each slice's share x its own, added) x one kg",
                                fmt::format("({}) x {{{}}}", sum, parts.size() - 1), parts,
                                matter("by the rule", intake.before_limits)));
}

void add_percent_line(const Intake& intake, double percent, const std::string& source,
                      std::vector<WorkingsLine>& lines) {
  lines.push_back(line("by the rule", "{0} x {1}",
                       {weight("weight", intake.weight), percent_of("percent of it", percent)},
                       matter("by the rule", intake.before_limits), source));
}

void add_protein_limit(const HerdDay& day, const Intake& intake, std::vector<WorkingsLine>& lines) {
  const IntakeRules& rules = intake_rules();
  const IntakeLimits& limits = intake.limits;
  const Figure by = bare("short by", limits.protein_short_by);
  const Figure rule = matter("by the rule", intake.before_limits);
  const Figure poor = matter("eaten at 4 % CP", limits.protein_poor);
  if (limits.protein_short_by < 1) {
    lines.push_back(line("short by", "({0} - {1}) / ({0} - {2})",
                         {percent_of("CP under which intake drops", rules.cp_drop_percent),
                          share("CP of the diet", day.diet.crude_protein),
                          percent_of("CP of the low end", rules.cp_low_percent)},
                         by, protein_poor_source));
  } else {
    lines.push_back(given(by, protein_poor_source));
  }
  lines.push_back(line("eaten at 4 % CP", "the smaller of {0} and {1} x {2}",
                       {rule, weight("weight", intake.weight),
                        percent_of("percent of it", rules.low_intake_percent_bw)},
                       poor, protein_poor_source));
  lines.push_back(line("on protein-poor forage", "{0} x (1 - {1}) + {2} x {1}", {rule, by, poor},
                       matter("on protein-poor forage", limits.after_protein)));
}

void add_limits(const HerdDay& day, const Intake& intake, WorkingsSection& section) {
  const IntakeLimits& limits = intake.limits;
  if (intake.protein_limits) {
    add_protein_limit(day, intake, section.lines);
  } else {
    section.notes.push_back("protein of the diet does not lower it (it would under 6.25 %)");
  }
  if (!limits.gut) {
    section.notes.push_back("the gut's ceiling is left out: no NDF is used here");
    return;
  }
  const Figure most = matter("the gut's ceiling", *limits.gut);
  section.lines.push_back(line("the gut's ceiling", "{0} x {1} / {2}",
                               {weight("weight", intake.weight),
                                percent_of("NDF a gut holds", intake_rules().gut_ndf_percent_bw),
                                share("NDF of the diet", *day.diet.ndf)},
                               most, gut_source));
  section.lines.push_back(
      line("intake", "the smaller of {0} and {1}",
           {matter(intake.protein_limits ? "on protein-poor forage" : "by the rule",
                   limits.after_protein),
            most},
           matter("intake", intake.amount)));
}

WorkingsSection rule_section(const HerdDay& day, const Intake& intake, const std::string& role) {
  WorkingsSection section{fmt::format("intake, {}: {}", role, to_string(intake.rule)), {}, {}};
  switch (intake.rule) {
    case IntakeRule::guidance_lower:
    case IntakeRule::guidance_higher: {
      const IntakeGuidance& guidance = intake.rule == IntakeRule::guidance_lower
                                           ? intake_guidance_lower()
                                           : intake_guidance_higher();
      add_guidance_lines(day, guidance, section.lines);
      const double percent = guidance_at(guidance, day.need.milking_share, day.diet.tdn).percent;
      add_percent_line(intake, percent, cited(guidance.citation), section.lines);
      break;
    }
    case IntakeRule::nrc_equation:
      add_nrc_lines(day, intake, section.lines);
      break;
    case IntakeRule::own_figure:
      add_percent_line(intake, *day.herd->intake_percent, "the book, herds.yaml", section.lines);
      break;
  }
  add_limits(day, intake, section);
  return section;
}

}  // namespace

std::vector<WorkingsSection> intake_workings(const HerdDay& day) {
  return {diet_energy_section(day), rule_section(day, day.lead.intake, "which leads"),
          rule_section(day, day.low.intake, "beside it"),
          rule_section(day, day.high.intake, "high end, gut left out")};
}

}  // namespace pluckbook
