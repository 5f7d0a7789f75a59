#include "cow/intake.h"

#include <algorithm>
#include <cmath>

#include "numeric/interpolation.h"
#include "published/rules.h"

namespace pluckbook {

namespace {

constexpr double least_divisor = 0.95;  // Mcal/kg; NRC 2000, recalled: for poorer diets 0.95 stands
// The rows count a cow open until month 2 after calving and bred from month 3 (days 61 and 91.5);
// between them the constant goes over in a line, as the rows do when read between.
constexpr double open_until = 61, bred_from = 91.5;

double guidance_percent(const IntakeGuidance& guidance, double milking_share, Share tdn) {
  std::vector<Knot> knots;
  for (std::size_t i = 0; i < guidance.tdn_percent.size(); ++i)
    knots.push_back({guidance.tdn_percent[i],
                     milking_share * guidance.milking[i] + (1 - milking_share) * guidance.dry[i]});
  return linear_at(knots, in_percent(tdn));
}

double pregnancy_constant(const Slice& slice) {
  const IntakeRules& rules = intake_rules();
  switch (slice.stage) {
    case Stage::bred_heifer:
      return rules.nrc_bred;
    case Stage::growing:
    case Stage::bull:
      return rules.nrc_open;
    case Stage::milking:
    case Stage::dry:
      break;
  }
  const double bred =
      std::clamp((slice.days_since_calving - open_until) / (bred_from - open_until), 0.0, 1.0);
  return rules.nrc_open + bred * (rules.nrc_bred - rules.nrc_open);
}

KgDmPerDay nrc_intake(const HerdNeed& need, Share tdn) {
  const IntakeRules& rules = intake_rules();
  const double n = nem_of(tdn).value();
  double sum = 0;
  for (std::size_t i = 0; i < need.slices.size(); ++i) {
    const Need& one = need.slice_needs[i];
    const double size = std::pow(one.weight.value(), 0.75);
    const double amount = size * (rules.nrc_square * n * n + pregnancy_constant(need.slices[i])) /
                              std::max(n, least_divisor) +
                          rules.nrc_milk * one.milk.value();
    sum += need.slices[i].share * amount;
  }
  return KgDmPerDay(sum);
}

KgDmPerDay percent_of(KgBody weight, double percent) {
  return KgDmPerDay(weight.value() * percent / 100);
}

KgDmPerDay by_rule(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule) {
  const KgBody weight = need.average.weight;
  switch (rule) {
    case IntakeRule::guidance_lower:
      return percent_of(weight,
                        guidance_percent(intake_guidance_lower(), need.milking_share, diet.tdn));
    case IntakeRule::guidance_higher:
      return percent_of(weight,
                        guidance_percent(intake_guidance_higher(), need.milking_share, diet.tdn));
    case IntakeRule::nrc_equation:
      return nrc_intake(need, diet.tdn);
    case IntakeRule::own_figure:
      break;
  }
  return percent_of(weight, *herd.intake_percent);
}

/// Protein-poor forage: from the rule's amount at 6.25 % CP down to 1.2 % of body weight at 4 %.
KgDmPerDay lowered_for_protein(KgDmPerDay amount, KgBody weight, Share protein) {
  const IntakeRules& rules = intake_rules();
  const double short_by = std::clamp((rules.cp_drop_percent - in_percent(protein)) /
                                         (rules.cp_drop_percent - rules.cp_low_percent),
                                     0.0, 1.0);
  const KgDmPerDay low = std::min(amount, percent_of(weight, rules.low_intake_percent_bw));
  return amount * (1 - short_by) + low * short_by;
}

}  // namespace

std::string_view to_string(IntakeRule rule) {
  switch (rule) {
    case IntakeRule::guidance_lower:
      return "guidance, lower printed form";
    case IntakeRule::guidance_higher:
      return "guidance, higher printed form";
    case IntakeRule::nrc_equation:
      return "NRC equation";
    case IntakeRule::own_figure:
      return "the herd's own figure";
  }
  return "";
}

McalPerKgDm nem_of(Share tdn) {
  const EnergyChain& chain = energy_chain();
  const double me = tdn.value() * chain.de_per_tdn * chain.me_per_de;
  return McalPerKgDm(((chain.nem[2] * me + chain.nem[1]) * me + chain.nem[0]) * me + chain.nem[3]);
}

IntakeRule leading_rule(const Herd& herd) {
  return herd.intake_percent ? IntakeRule::own_figure : IntakeRule::guidance_lower;
}

Intake intake_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule) {
  Intake intake;
  intake.rule = rule;
  intake.before_limits = by_rule(herd, need, diet, rule);
  const KgBody weight = need.average.weight;
  intake.amount = lowered_for_protein(intake.before_limits, weight, diet.crude_protein);
  intake.protein_limits = intake.amount < intake.before_limits;
  if (diet.ndf && diet.ndf->value() > 0) {
    const KgDmPerDay most =
        percent_of(weight, intake_rules().gut_ndf_percent_bw / diet.ndf->value());
    intake.gut_limits = most < intake.amount;
    intake.amount = std::min(intake.amount, most);
  }
  return intake;
}

DayBalance balance_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule) {
  return balance_at(need, diet, intake_of(herd, need, diet, rule));
}

DayBalance balance_at(const HerdNeed& need, const Diet& diet, const Intake& intake) {
  const IntakeRules& rules = intake_rules();
  DayBalance day;
  day.intake = intake;
  const KgPerDay rumen = day.intake.amount * from_percent(rules.cp_floor_percent);
  day.crude_protein.need = std::max(need.average.crude_protein_amount(), rumen);
  day.crude_protein.supply = day.intake.amount * diet.crude_protein;
  day.tdn.need = need.average.tdn_amount();
  day.tdn.supply = day.intake.amount * diet.tdn;
  day.tdn_cp_ratio = diet.tdn / diet.crude_protein;
  day.protein_first = in_percent(diet.crude_protein) < rules.cp_floor_percent ||
                      day.tdn_cp_ratio > rules.tdn_cp_ratio;
  return day;
}

}  // namespace pluckbook
