// intake.h - how much forage they eat, by three published rules that disagree, and what that
// supplies. Supply = intake x diet; gap = need - supply where positive.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/units.h"
#include "cow/energy_chain.h"
#include "cow/need.h"
#include "published/rules.h"

namespace pluckbook {

enum class IntakeRule {
  guidance_lower,   // default; agrees with the intake of the requirement rows
  guidance_higher,  // the high end
  nrc_equation,     // the low end on good forage; on poor forage it lies above the lower guidance
  own_figure,       // the herd's own percent of body weight
};
std::string_view to_string(IntakeRule rule);

/// The diet as the animal meets it.
struct Diet {
  Share crude_protein, tdn;
  std::optional<Share> ndf;
};

/// What the guidance says at one TDN: the two printed knots around it and what they give there.
struct GuidanceReading {
  Share tdn_low, tdn_high;
  double share_of_high = 0;
  double dry_low = 0, dry_high = 0, milking_low = 0, milking_high = 0;  // % of body weight, printed
  double dry = 0, milking = 0;                                          // at this TDN
  double percent = 0;  // of body weight, mixed by the herd's milking share
};
GuidanceReading guidance_at(const IntakeGuidance& guidance, double milking_share, Share tdn);

/// The limits on an intake, as they came out.
struct IntakeLimits {
  double protein_short_by = 0;  // 0 at 6.25 % CP, 1 at 4 %
  KgDmPerDay protein_poor;      // what is eaten at 4 %
  KgDmPerDay after_protein;
  std::optional<KgDmPerDay> gut;  // 1.2 % of body weight as NDF
};

struct Intake {
  KgDmPerDay amount;
  KgDmPerDay before_limits;  // what the rule alone says
  IntakeRule rule = IntakeRule::guidance_lower;
  bool gut_limits = false;      // 1.2 % of body weight as NDF
  bool protein_limits = false;  // protein-poor forage
  KgBody weight;                // the percent of body weight is of this
  IntakeLimits limits;
};

/// What the NRC equation of intake asks of a cow, whatever she eats.
struct NrcCow {
  double metabolic_weight = 0;  // kg^0.75
  double constant = 0;          // 0.0384 open, 0.04631 bred
  KgPerDay milk;
};
/// `bred`: 0 open to 1 bred.
NrcCow nrc_cow(KgBody weight, double bred, KgPerDay milk);

/// What a herd eats on one day by one rule, asked of any diet; what the diet does not change is
/// worked out once.
/// Guidance is written for cows: milking and dry are mixed by the herd's milking share, and
/// heifers, growing cattle and bulls take the dry column (assumed: ours). Both limits hold for
/// every rule and class; the drop on protein-poor forage was published for dry cows. Source:
/// intake_guidance_lower and _higher, intake_rules; each states its own. Requires: the herd's own
/// figure is set when the rule is own_figure.
class IntakeOn {
 public:
  IntakeOn(const Herd& herd, const HerdNeed& need, IntakeRule rule);
  Intake operator()(const Diet& diet) const;

 private:
  KgDmPerDay by_rule(Share tdn) const;

  struct NrcSlice {
    NrcCow cow;
    double share;  // of the herd
  };
  IntakeRule rule_;
  KgBody weight_;
  double milking_share_;
  KgDmPerDay own_figure_;             // where that is the rule
  std::vector<NrcSlice> nrc_slices_;  // where the NRC equation is
};

/// The same for one diet.
Intake intake_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule);

/// The rule that leads for a herd: its own figure when given, else guidance_lower.
IntakeRule leading_rule(const Herd& herd);

/// How far a cow is bred, 0 open to 1 bred. The rows count her open until month 2 after calving and
/// bred from month 3 (days 61 and 91.5); between them it is a line, as the rows are read between.
double share_bred(double days_since_calving);

/// What the NRC equation gives her at a diet's NEm.
/// Source: NRC 2000 chapter 7 (recalled): DMI = W^0.75 (0.04997 N^2 + c) / N + 0.2 milk, in kg.
struct NrcReading {
  NrcCow cow;
  double divisor = 0;  // Mcal/kg, N or 0.95
  KgDmPerDay amount;
};
/// `least_divisor`: the N it is divided by is never less.
NrcReading nrc_equation(const NrcCow& cow, McalPerKgDm nem, McalPerKgDm least_divisor);
/// The same for one slice of a herd on forage, where 0.95 stands for poorer diets (NRC 2000,
/// recalled). The requirement rows come back only without that: predicted_intake() has none.
NrcReading nrc_reading(const Slice& slice, const Need& need, McalPerKgDm nem);

struct Balance {
  KgPerDay need, supply;
  KgPerDay gap() const { return need > supply ? need - supply : KgPerDay(0); }
  KgPerDay to_spare() const { return supply > need ? supply - need : KgPerDay(0); }
};

/// A day's balance per head in amounts. CP need is the larger of the animal's own amount and the
/// rumen's floor of the dry matter eaten.
struct DayBalance {
  Intake intake;
  Balance crude_protein, tdn;
  KgPerDay own_crude_protein, rumen_crude_protein;  // the larger is the need
  double tdn_cp_ratio = 0;
  bool protein_first = false;  // by the published ratio and the rumen's floor
};
DayBalance balance_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule);
/// The same for an intake that is known already: for many diets of a day, by its IntakeOn.
DayBalance balance_at(const HerdNeed& need, const Diet& diet, const Intake& intake);

}  // namespace pluckbook
