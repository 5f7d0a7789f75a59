// rules.h - single published figures and rules: intake guidance, energy from fibre, safe-use
// ceilings, displacement of forage. Each carries its source.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "published/requirements.h"

namespace pluckbook {

/// Forage dry matter a cow eats by quality of forage, percent of body weight.
struct IntakeGuidance {
  std::vector<double> tdn_percent;  // knots: low, average, high
  std::vector<double> dry, milking;
  Citation citation;
};
const IntakeGuidance& intake_guidance_lower();   // Nebraska and Michigan printing: the default
const IntakeGuidance& intake_guidance_higher();  // Hibberd and Thrift 1992

struct IntakeRules {
  double nrc_square, nrc_open, nrc_bred, nrc_milk;  // DMI = W^.75 (square N^2 + c) / N + milk Y
  double gut_ndf_percent_bw;                        // 1.2
  double cp_floor_percent;                          // 7: the rumen's least
  double cp_drop_percent, cp_low_percent, low_intake_percent_bw;  // 6.25, 4, 1.2
  double tdn_cp_ratio;                                            // 7
  std::string source;
};
const IntakeRules& intake_rules();

/// TDN -> DE -> ME -> NEm and NEg, Mcal/kg of dry matter.
struct EnergyChain {
  double de_per_tdn, me_per_de;  // 4.409, 0.82
  double nem[4], neg[4];         // of ME, ME^2, ME^3, and the constant
  double printed_tdn_divisor;    // 1.0187: row TDN = chain TDN / this, for the same NEm
  std::string source;
};
const EnergyChain& energy_chain();

/// TDN % of DM = a + b ADF (percent), stated for a class of forage.
struct FibreEquation {
  std::string id, forage, status, source;
  double intercept = 0, adf = 0, cp = 0, ndf = 0;
  double adf_low = 25, adf_high = 45;  // outside: say so
  double error_points = 5;             // stated error
};
const std::vector<FibreEquation>& fibre_equations();
const FibreEquation& fibre_equation(std::string_view id);  // "E1": the general one

/// A ceiling of safe use, or a caution that goes with a feed.
struct SafeUse {
  std::string id;       // "npn_share_of_cp", "fat", "sulfur", "grain_percent_bw", ...
  double value = 0;     // in `unit`
  std::string unit;     // "share of diet CP", "percent of diet DM", "percent of body weight", ...
  std::string caution;  // what happens and what to do, in plain words
  std::string source, status;
};
const std::vector<SafeUse>& safe_use();
const SafeUse& safe_use(std::string_view id);

/// The most of one feed (or class of feed) as percent of body weight or of diet DM.
struct FeedCeiling {
  std::string feed;  // published feed id or feed class
  std::optional<double> percent_bw, percent_dm;
  std::string caution, source, status;
};
const std::vector<FeedCeiling>& feed_ceilings();

/// kg forage DM left ungrazed for each kg supplement DM.
struct Displacement {
  std::string feed_class;               // class of published feeds
  double deficit = 0;                   // forage TDN:CP over 7 (protein short)
  double usual = 0, low = 0, high = 0;  // otherwise
  std::string source, status;
};
const Displacement& displacement(std::string_view feed_class);

/// Every publication in use, for `pluckbook sources`.
struct SourceInUse {
  std::string topic, what, source, status;
};
std::vector<SourceInUse> sources_in_use();

}  // namespace pluckbook
