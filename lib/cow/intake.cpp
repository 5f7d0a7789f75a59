#include "cow/intake.h"

#include <algorithm>
#include <cmath>

#include "published/rules.h"

namespace pluckbook {

namespace {

constexpr McalPerKgDm least_divisor(0.95);           // NRC 2000, recalled: stands for poorer diets
constexpr double open_until = 61, bred_from = 91.5;  // rows of month 2 and 3

double bred_in(const Slice& slice) {
  switch (slice.stage) {
    case Stage::bred_heifer:
      return 1;
    case Stage::growing:
    case Stage::bull:
      return 0;
    case Stage::milking:
    case Stage::dry:
      break;
  }
  return share_bred(slice.days_since_calving);
}

NrcCow nrc_cow_of(const Slice& slice, const Need& need) {
  return nrc_cow(need.weight, bred_in(slice), need.milk);
}

KgDmPerDay percent_of(KgBody weight, double percent) {
  return KgDmPerDay(weight.value() * percent / 100);
}

/// Protein-poor forage: from the rule's amount at 6.25 % CP down to 1.2 % of body weight at 4 %.
/// Gut: no more than 1.2 % of body weight as NDF.
IntakeLimits limits_of(KgDmPerDay amount, KgBody weight, const Diet& diet) {
  const IntakeRules& rules = intake_rules();
  IntakeLimits limits;
  limits.protein_short_by = std::clamp((rules.cp_drop_percent - in_percent(diet.crude_protein)) /
                                           (rules.cp_drop_percent - rules.cp_low_percent),
                                       0.0, 1.0);
  limits.protein_poor = std::min(amount, percent_of(weight, rules.low_intake_percent_bw));
  limits.after_protein =
      amount * (1 - limits.protein_short_by) + limits.protein_poor * limits.protein_short_by;
  if (diet.ndf && diet.ndf->value() > 0)
    limits.gut = percent_of(weight, rules.gut_ndf_percent_bw / diet.ndf->value());
  return limits;
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

IntakeRule leading_rule(const Herd& herd) {
  return herd.intake_percent ? IntakeRule::own_figure : IntakeRule::guidance_lower;
}

GuidanceReading guidance_at(const IntakeGuidance& guidance, double milking_share, Share tdn) {
  const std::vector<double>& knots = guidance.tdn_percent;
  const double at = std::clamp(in_percent(tdn), knots.front(), knots.back());
  std::size_t high = 1;
  while (high + 1 < knots.size() && knots[high] < at) ++high;
  const std::size_t low = high - 1;
  GuidanceReading reading{from_percent(knots[low]),
                          from_percent(knots[high]),
                          (at - knots[low]) / (knots[high] - knots[low]),
                          guidance.dry[low],
                          guidance.dry[high],
                          guidance.milking[low],
                          guidance.milking[high]};
  reading.dry = std::lerp(reading.dry_low, reading.dry_high, reading.share_of_high);
  reading.milking = std::lerp(reading.milking_low, reading.milking_high, reading.share_of_high);
  reading.percent = milking_share * reading.milking + (1 - milking_share) * reading.dry;
  return reading;
}

double share_bred(double days_since_calving) {
  return std::clamp((days_since_calving - open_until) / (bred_from - open_until), 0.0, 1.0);
}

NrcCow nrc_cow(KgBody weight, double bred, KgPerDay milk) {
  const IntakeRules& rules = intake_rules();
  return {std::pow(weight.value(), 0.75), rules.nrc_open + bred * (rules.nrc_bred - rules.nrc_open),
          milk};
}

NrcReading nrc_equation(const NrcCow& cow, McalPerKgDm nem, McalPerKgDm least) {
  const IntakeRules& rules = intake_rules();
  const double n = nem.value(), divisor = std::max(nem, least).value();
  return {cow, divisor,
          KgDmPerDay(cow.metabolic_weight * (rules.nrc_square * n * n + cow.constant) / divisor +
                     rules.nrc_milk * cow.milk.value())};
}

NrcReading nrc_reading(const Slice& slice, const Need& need, McalPerKgDm nem) {
  return nrc_equation(nrc_cow_of(slice, need), nem, least_divisor);
}

IntakeOn::IntakeOn(const Herd& herd, const HerdNeed& need, IntakeRule rule)
    : rule_(rule), weight_(need.average.weight), milking_share_(need.milking_share) {
  if (rule == IntakeRule::own_figure) own_figure_ = percent_of(weight_, *herd.intake_percent);
  if (rule != IntakeRule::nrc_equation) return;
  for (std::size_t i = 0; i < need.slices.size(); ++i)
    nrc_slices_.push_back({nrc_cow_of(need.slices[i], need.slice_needs[i]), need.slices[i].share});
}

KgDmPerDay IntakeOn::by_rule(Share tdn) const {
  const auto guided = [&](const IntakeGuidance& guidance) {
    return percent_of(weight_, guidance_at(guidance, milking_share_, tdn).percent);
  };
  switch (rule_) {
    case IntakeRule::guidance_lower:
      return guided(intake_guidance_lower());
    case IntakeRule::guidance_higher:
      return guided(intake_guidance_higher());
    case IntakeRule::nrc_equation: {
      const McalPerKgDm nem = nem_of(tdn);
      KgDmPerDay sum;
      for (const NrcSlice& slice : nrc_slices_)
        sum += nrc_equation(slice.cow, nem, least_divisor).amount * slice.share;
      return sum;
    }
    case IntakeRule::own_figure:
      break;
  }
  return own_figure_;
}

Intake IntakeOn::operator()(const Diet& diet) const {
  Intake intake;
  intake.rule = rule_;
  intake.weight = weight_;
  intake.before_limits = by_rule(diet.tdn);
  intake.limits = limits_of(intake.before_limits, intake.weight, diet);
  intake.amount = intake.limits.after_protein;
  intake.protein_limits = intake.amount < intake.before_limits;
  if (intake.limits.gut) {
    intake.gut_limits = *intake.limits.gut < intake.amount;
    intake.amount = std::min(intake.amount, *intake.limits.gut);
  }
  return intake;
}

Intake intake_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule) {
  return IntakeOn(herd, need, rule)(diet);
}

DayBalance balance_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule) {
  return balance_at(need, diet, intake_of(herd, need, diet, rule));
}

DayBalance balance_at(const HerdNeed& need, const Diet& diet, const Intake& intake) {
  const IntakeRules& rules = intake_rules();
  DayBalance day;
  day.intake = intake;
  day.own_crude_protein = need.average.crude_protein_amount();
  day.rumen_crude_protein = day.intake.amount * from_percent(rules.cp_floor_percent);
  day.crude_protein.need = std::max(day.own_crude_protein, day.rumen_crude_protein);
  day.crude_protein.supply = day.intake.amount * diet.crude_protein;
  day.tdn.need = need.average.tdn_amount();
  day.tdn.supply = day.intake.amount * diet.tdn;
  day.tdn_cp_ratio = diet.tdn / diet.crude_protein;
  day.protein_first = in_percent(diet.crude_protein) < rules.cp_floor_percent ||
                      day.tdn_cp_ratio > rules.tdn_cp_ratio;
  return day;
}

}  // namespace pluckbook
