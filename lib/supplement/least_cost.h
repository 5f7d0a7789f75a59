// least_cost.h - the cheapest safe way to fill a gap. Per head and day over amounts x_j (kg DM) of
// each feed, with forage intake F = F0 - sum s_j x_j (s_j: forage displaced). Rows are needs and
// safe-use limits; columns carry delivered cost. Knows no calendar and no herd.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/units.h"
#include "numeric/linear_program.h"
#include "supplement/feed_offer.h"

namespace pluckbook {

/// Two costs of a day nearer than this are one.
inline constexpr double same_money = 1e-9;

enum class EnergyMeasure { tdn, nem };
enum class ProteinMeasure {
  crude,          // crude protein, and the rumen's share of all she eats
  metabolizable,  // MP, and the degradable protein (RDP) the microbes want
};
/// Which end of the published range of forage displaced by a feed.
enum class DisplacementEnd { low, usual, high };

/// The forage and the animal of one day, as the model needs them.
struct GrazingDay {
  KgBody weight;
  bool milking = false;
  bool young = false;  // heifers and growing cattle: tighter cottonseed ceiling
  bool bull = false;
  KgDmPerDay forage_intake;  // F0, without supplement
  Share crude_protein, tdn;  // of the forage
  std::optional<Share> ndf, fat, calcium, phosphorus, sulfur;
  std::optional<Share> undegraded;  // RUP, of dry matter; the class value where there is none
  std::optional<double> nitrate_n_ppm;
  KgPerDay need_crude_protein;  // the animal's own amount per day
  KgPerDay need_tdn;
  McalPerDay need_nem;  // read where energy is counted so
  std::optional<KgPerDay> need_calcium, need_phosphorus;
  Share rumen_floor{0.07};        // CP of everything eaten; 0 switches the row off
  double trip_cost_per_head = 0;  // money for one feeding trip, spread over the herd
  std::optional<double> water_sulfate_ppm, water_solids_ppm;
  EnergyMeasure energy = EnergyMeasure::tdn;
  ProteinMeasure protein = ProteinMeasure::crude;
  DisplacementEnd displaced = DisplacementEnd::usual;
};

/// Sulfur she drinks: litres x ppm sulfate x 0.334 / 1,000,000 (published/rumen.h).
KgPerDay water_sulfur(const GrazingDay& day);

enum class LimitKind {
  need,
  safety,
  capacity,
  definition,  // says what a column is; nobody is told of it
};

/// One row of the model in words.
struct Limit {
  std::string id;     // "crude_protein", "tdn", "rumen_protein", "npn", "fat", "sulfur", ...
  std::string words;  // "crude protein the cow needs", "fat at most 6 % of all she eats"
  std::string unit;   // of the row's level: "kg/day"
  LimitKind kind = LimitKind::need;
  std::string source;
  std::string standing = {};  // of a published ceiling: read, recalled, derived, assumed
};

/// The model as built: what each row and column means, and the program itself. Columns: one a feed
/// (kg DM/day); protein from urea that counts (kg/day); and last, forage pushed out because the cow
/// is full (kg DM/day), never credited where less forage would help a limit, only where it frees
/// room.
struct SupplementModel {
  LinearProgram program;
  std::vector<Limit> limits;             // one a row
  std::vector<double> forage_alone;      // level of each row from F0, left out of the program's
  std::vector<double> displacement;      // s_j, kg forage DM per kg supplement DM
  std::vector<std::string> upper_words;  // why each feed's upper bound stands: "label: at most ..."
  std::vector<double> least_dm;          // "none, or at least this much", kg DM/day; 0 where none
  std::vector<std::string> unchecked;    // limits named as unchecked or checked with a class value
};

/// A safety limit that the forage alone breaks already is held where it stands: what is fed may
/// not make it worse.
/// Rows: CP and the rumen's share of it, or MP and RDP; TDN or NEm; Ca, P and their ratio where
/// figures are known; total intake and gut NDF; NPN by share of CP, of supplement RDP, as urea, and
/// counted only as far as this forage's energy can use it; fat, sulfur with the water's, minerals,
/// grain, supplement TDN; feed ceilings and labels as bounds. `feedings_per_week` scales what one
/// feeding may hold: a ceiling for one day's rumen holds for each feeding.
SupplementModel build_model(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                            int feedings_per_week);

struct MixPart {
  std::size_t offer = 0;  // index into the offers
  KgDmPerDay dry_matter;
  KgAsFedPerDay as_fed;
  MoneyPerDay cost;  // feed alone, without trips
};

enum class MixStatus { optimal, none_needed, out_of_reach, not_trusted };

/// A figure of a feed in the mix on which the answer rests: her dry matter, and what the limits
/// that set the price count.
struct DecidingFigure {
  std::size_t offer = 0;
  std::string nutrient;  // "cp", "tdn", "dm", ...
  FeedFigure figure;
};

struct MarginalCost {
  std::string limit;  // id
  double money = 0;   // per one more unit of the row
  std::string unit;
};

/// A need that no mix can meet, and the nearest one can come.
struct Unmet {
  std::string limit, words;
  double asked = 0, reached = 0;  // in the row's unit
  std::string in_the_way;         // the limit that stands in the way
  std::string what_helps;         // what would take it away
};

struct Mix {
  MixStatus status = MixStatus::not_trusted;
  std::vector<MixPart> parts;
  int feedings_per_week = 7;         // 0: self-fed only
  MoneyPerDay feed_cost, trip_cost;  // per head
  KgDmPerDay forage_left;            // F
  std::vector<std::string> binding;  // in words; a published ceiling with its standing
  std::vector<MarginalCost> marginal_costs;
  std::vector<DecidingFigure> deciding;
  std::vector<Unmet> unmet;
  std::vector<std::string> unchecked;
  LpCertificate certificate;
  MoneyPerDay cost() const { return feed_cost + trip_cost; }
};

/// The cheapest mix over all feeding frequencies that the feeds allow, with label least amounts
/// ('none, or at least this much') by branch and bound: exact. When nothing can: the nearest mix,
/// which need is out of reach and which limit stands in the way.
Mix cheapest_mix(const GrazingDay& day, const std::vector<FeedOffer>& offers);

/// Between which two something lies, in the market unit of a feed's quote; no high: at any price.
struct QuoteRange {
  double low = 0;
  std::optional<double> high;
};

/// One feed on its own and beside the mix.
struct Option {
  std::size_t offer = 0;
  Mix alone;
  std::string why_not;  // when it cannot: which need or limit, with figures
  std::optional<double> cost_per_kg_protein, cost_per_kg_tdn;  // where the cows eat it
  /// The delivered, fed cost per kg as fed at which this feed would come into the mix (or, for a
  /// feed in the mix, up to which it stays); nothing when no price would bring it in.
  std::optional<MoneyPerKgAsFed> break_even_fed;
  /// The same turned back into the seller's own quote: before losses, without freight, in the
  /// market unit of its quote (money per Quote::unit).
  std::optional<double> break_even_quote;
  /// For a feed in the mix: the quotes between which no amount of the mix changes.
  std::optional<QuoteRange> stays;
};

std::vector<Option> all_options(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                                const Mix& best);

/// The cheapest mix that does without one feed or another of the best: what one falls back to.
/// Nothing where the best is none, or where nothing else does it.
std::optional<Mix> runner_up(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                             const Mix& best);

/// The usual cautions for the feeds named, in plain words, most serious first, each once; ends
/// with the deferral to label, veterinarian or qualified nutritionist.
std::vector<std::string> cautions_for(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                                      const std::vector<std::size_t>& which);

}  // namespace pluckbook
