// intake.h - how much forage they eat, by three published rules that disagree, and what that
// supplies. Supply = intake x diet; gap = need - supply where positive.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/units.h"
#include "cow/need.h"

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

struct Intake {
  KgDmPerDay amount;
  KgDmPerDay before_limits;  // what the rule alone says
  IntakeRule rule = IntakeRule::guidance_lower;
  bool gut_limits = false;      // 1.2 % of body weight as NDF
  bool protein_limits = false;  // protein-poor forage
};

/// Guidance is written for cows: milking and dry are mixed by the herd's milking share, and
/// heifers, growing cattle and bulls take the dry column (assumed: ours). Both limits hold for
/// every rule and class; the drop on protein-poor forage was published for dry cows. Source:
/// intake_guidance_lower and _higher, intake_rules; each states its own. Requires: the herd's own
/// figure is set when the rule is own_figure.
Intake intake_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule);

/// The rule that leads for a herd: its own figure when given, else guidance_lower.
IntakeRule leading_rule(const Herd& herd);

/// NEm of a diet by the plain published chain TDN -> DE -> ME -> NEm.
McalPerKgDm nem_of(Share tdn);

struct Balance {
  KgPerDay need, supply;
  KgPerDay gap() const { return need > supply ? need - supply : KgPerDay(0); }
};

/// A day's balance per head in amounts. CP need is the larger of the animal's own amount and the
/// rumen's floor of the dry matter eaten.
struct DayBalance {
  Intake intake;
  Balance crude_protein, tdn;
  double tdn_cp_ratio = 0;
  bool protein_first = false;  // by the published ratio and the rumen's floor
};
DayBalance balance_of(const Herd& herd, const HerdNeed& need, const Diet& diet, IntakeRule rule);
/// The same for an intake that is known already.
DayBalance balance_at(const HerdNeed& need, const Diet& diet, const Intake& intake);

}  // namespace pluckbook
