#include "forage/plausible.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "base/text.h"
#include "base/units.h"
#include "book/lab_values.h"
#include "published/forage_energy.h"
#include "published/nitrate.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

constexpr std::string_view nitrate = "nitrate_n_ppm";
constexpr double ppm_per_percent = 10'000;

bool within(double value, double low, double high) {
  return value >= low && value <= high;
}

// At most four decimals, and no idle zeros.
std::string shown_figure(double value) {
  return shortest(std::round(value * 10'000) / 10'000);
}

std::string with_unit(const std::string& figure, const Analyte& analyte) {
  return analyte.unit.empty() ? figure : figure + " " + std::string(analyte.unit);
}

// ---- one figure against its limits -------------------------------------------------------------

// The usual slips of the pen, undone. High nitrate is never talked away as one.
std::string remedy_for(const Analyte& analyte, double value) {
  if (analyte.name == nitrate)
    return "Nitrate can kill, pregnant cows lose calves first: ask a veterinarian before grazing.";
  const auto usual = [&](double v) { return within(v, analyte.warn_low, analyte.warn_high); };
  if (usual(value * 100))
    return fmt::format("If the laboratory printed a fraction, write {}.",
                       shown_figure(value * 100));
  if (usual(value / 10))
    return fmt::format("If the laboratory printed g/kg, or the point slipped, write {}.",
                       shown_figure(value / 10));
  if (usual(value / ppm_per_percent))
    return fmt::format("If the laboratory printed ppm, write {}.",
                       shown_figure(value / ppm_per_percent));
  return "Look at the laboratory's page again: the row, the point, and the basis.";
}

void judge(const Analyte& analyte, double value, Findings& findings) {
  const std::string figure =
      with_unit(fmt::format("{} {}", analyte.in_words, shown_figure(value)), analyte);
  const auto range = [&](double low, double high) {
    return with_unit(fmt::format("{} to {}", shortest(low), shortest(high)), analyte);
  };
  if (!within(value, analyte.refuse_low, analyte.refuse_high)) {
    findings.refuse(
        fmt::format("{} is outside {}", figure, range(analyte.refuse_low, analyte.refuse_high)),
        remedy_for(analyte, value));
  } else if (!within(value, analyte.warn_low, analyte.warn_high)) {
    findings.warn(fmt::format("{} is unusual: {} is what forage mostly holds", figure,
                              range(analyte.warn_low, analyte.warn_high)),
                  remedy_for(analyte, value));
  }
}

// ---- figures against each other ----------------------------------------------------------------

void judge_fibre(const Figures& figures, Findings& findings) {
  constexpr double least_hemicellulose = 5, most_hemicellulose = 40;  // judgement
  const auto adf = figures.of("adf"), ndf = figures.of("ndf"), lignin = figures.of("lignin");
  if (adf && ndf && *adf >= *ndf) {
    findings.refuse(fmt::format("ADF {} % is not below NDF {} %, of which it is a part",
                                fixed(*adf, 1), fixed(*ndf, 1)),
                    "The two rows may have changed places.");
  } else if (adf && ndf && !within(*ndf - *adf, least_hemicellulose, most_hemicellulose)) {
    findings.warn(fmt::format("NDF stands {} points over ADF; {} to {} is usual",
                              fixed(*ndf - *adf, 1), least_hemicellulose, most_hemicellulose),
                  "Look at both rows of the laboratory's page again.");
  }
  if (adf && lignin && *lignin > *adf)
    findings.refuse(fmt::format("lignin {} % is over ADF {} %, of which it is a part",
                                fixed(*lignin, 1), fixed(*adf, 1)),
                    "If it was printed as percent of NDF, write lignin_of_ndf.");
}

void judge_sum(const Figures& figures, Findings& findings) {
  constexpr double parts_add_up_to = 103;  // judgement: 100 and the error of four figures
  constexpr double sugars_over_nfc = 5;    // judgement
  const auto cp = figures.of("cp"), ndf = figures.of("ndf");
  if (!cp || !ndf) return;
  const double sum = *cp + *ndf + figures.of("fat").value_or(0) + figures.of("ash").value_or(0);
  if (sum > parts_add_up_to)
    findings.warn(
        fmt::format("protein, NDF, fat and ash add up to {} % of dry matter", fixed(sum, 1)),
        "More than 100 cannot be: look for a figure on another basis.");
  const double nfc = figures.of("nfc").value_or(100 - sum);
  const double sugars = figures.of("sugar").value_or(0) + figures.of("starch").value_or(0);
  if (sugars > nfc + sugars_over_nfc)
    findings.warn(fmt::format("sugar and starch of {} % leave no room beside NDF: {} % of dry "
                              "matter is not fibre, protein, fat or ash",
                              fixed(sugars, 1), fixed(nfc, 1)),
                  "Look for a figure on another basis.");
}

void judge_minerals(const Figures& figures, Findings& findings) {
  const auto ca = figures.of("ca"), p = figures.of("p");
  if (ca && p && *ca < *p)
    findings.warn(fmt::format("calcium {} % is below phosphorus {} %", fixed(*ca, 2), fixed(*p, 2)),
                  "Rare in forage: the two rows may have changed places.");
}

// ---- protein -----------------------------------------------------------------------------------

void judge_bound_protein(const Figures& figures, Findings& findings) {
  const auto cp = figures.of("cp"), bound = figures.of("adicp"), in_ndf = figures.of("ndicp");
  if (cp && bound && *bound > *cp)
    findings.refuse(
        fmt::format("bound protein (ADICP) {} % is over crude protein {} %, of which it "
                    "is a part",
                    fixed(*bound, 1), fixed(*cp, 1)),
        "If it was printed as percent of protein, write adicp_of_cp; ADF nitrogen as "
        "percent of all nitrogen: adin_of_n.");
  if (bound && in_ndf && *in_ndf < *bound)
    findings.warn(fmt::format("protein in NDF {} % is below bound protein {} %", fixed(*in_ndf, 1),
                              fixed(*bound, 1)),
                  "ADF is a part of NDF, and so is its protein: look at both rows again.");
  const auto available = figures.of("available_cp");
  constexpr double rounding = 0.3;  // judgement: three figures of one decimal
  if (cp && bound && available && std::abs(*available + *bound - *cp) > rounding)
    findings.warn(fmt::format("available protein {} % and bound protein {} % do not make crude "
                              "protein {} %",
                              fixed(*available, 1), fixed(*bound, 1), fixed(*cp, 1)),
                  "Adjusted protein is another figure (adjusted_cp): look how the page calls it.");
}

// 10 % of protein is where laboratories begin to lower it: Anderson, Nebraska (read). 12 % counts
// as natural at others: NDSU AS-1080, 1994 (read). 15 % as extensive damage (recalled). It rises by
// itself through the season in grazed diets: Johnson et al. 1998, J. Anim. Sci. 76:1682 (read).
void signal_heat(const Figures& figures, Findings& findings) {
  const auto cp = figures.of("cp"), bound = figures.of("adicp");
  if (!cp || !bound || *cp <= 0 || *bound > *cp) return;
  constexpr double noted = 10, natural = 12, extensive = 15;
  const double share = *bound / *cp * 100;
  if (share <= noted) return;
  const std::string what = fmt::format("{} % of the protein is bound", fixed(share, 1));
  const std::string remedy =
      "How hot was the bag dried? Over 60 C (140 F), or a microwave, binds protein. In dormant "
      "range some of it is natural.";
  if (share > extensive) {
    findings.warn(what + ": extensive heat damage, by what laboratories say", remedy);
  } else {
    findings.notes.push_back(what +
                             (share > natural
                                  ? ": over the 12 % laboratories take as natural. "
                                  : ": over the 10 % where laboratories begin to lower protein. ") +
                             remedy);
  }
}

void signal_protein(const Figures& figures, Findings& findings) {
  // Forage with more than this may owe part of it to nitrate: Shewmaker, Univ. of Idaho (read).
  constexpr double protein_to_test_nitrate = 25;
  const auto cp = figures.of("cp"), adjusted = figures.of("adjusted_cp");
  if (cp && *cp > protein_to_test_nitrate && !figures.of(nitrate))
    findings.notes.push_back(fmt::format(
        "crude protein {} % may be partly nitrate: ask the laboratory for nitrate before "
        "cattle graze it hungry",
        fixed(*cp, 1)));
  if (!cp && (adjusted || figures.of("available_cp")))
    findings.notes.push_back(
        "the page has no crude protein; available or adjusted protein is kept, not used in its "
        "place");
  if (cp && adjusted && *adjusted < *cp)
    findings.notes.push_back(fmt::format(
        "the laboratory lowers protein by {} points for heat; crude protein is used, since "
        "laboratories differ in how much they take off",
        fixed(*cp - *adjusted, 1)));
}

// ---- soil and nitrate --------------------------------------------------------------------------

// Grass holds 5 to 6 % ash of its own, alfalfa 6 to 8: Anderson, Nebraska (read).
void signal_soil(const Figures& figures, const EnergyChoice& choice, Findings& findings) {
  constexpr double much = 15;  // judgement
  const auto ash = figures.of("ash");
  if (!ash || *ash <= choice.soil_ash) return;
  const std::string what = fmt::format("ash {} % means soil in the bag", fixed(*ash, 1));
  const std::string remedy =
      "Roots, dust, rain splash or muddy hands; each point of it takes a point of TDN.";
  if (*ash > much)
    findings.warn(what + ", a good deal of it", remedy);
  else
    findings.notes.push_back(fmt::format("{}: over {} % it is likely (Ohio State, 2017). {}", what,
                                         shortest(choice.soil_ash), remedy));
}

void caution_nitrate(const Figures& figures, Findings& findings) {
  const auto ppm = figures.of(nitrate);
  if (!ppm) return;
  std::string line = fmt::format("nitrate N {} ppm of dry matter", fixed(*ppm, 0));
  bool careful = false;
  for (const NitrateGuide& guide : nitrate_guides()) {
    line += fmt::format("; {}: {}", guide.id, advice_of(guide, *ppm));
    careful = careful || *ppm > *guide.steps.front().up_to_ppm;
  }
  findings.cautions.push_back(line + ". The guides disagree: take the most careful.");
  if (careful) findings.cautions.push_back(safe_use("nitrate_n_ppm").caution);
}

// ---- energy ------------------------------------------------------------------------------------

void judge_line(double adf, const FibreEquation& line, Findings& findings) {
  if (within(adf, line.adf_low, line.adf_high)) return;
  findings.warn(fmt::format("TDN is predicted from ADF {} %, outside the {} to {} % the equation "
                            "was written for",
                            fixed(adf, 1), shortest(line.adf_low), shortest(line.adf_high)),
                "Ask the laboratory for TDN.");
}

void judge_printed_tdn(const Figures& figures, double by_line, Findings& findings) {
  constexpr double near_line = 8;  // judgement, points
  const auto tdn = figures.of("tdn");
  if (!tdn || std::abs(*tdn - by_line) <= near_line) return;
  findings.warn(fmt::format("TDN {} % is far from the {} % that ADF {} % suggests", fixed(*tdn, 1),
                            fixed(by_line, 1), fixed(*figures.of("adf"), 1)),
                "Ask the laboratory by which equation it calculates TDN.");
}

// NEm by the cubic, by the straight line some laboratories take, or by neither.
void judge_net_energy(const Figures& figures, Findings& findings) {
  constexpr double near_cubic = 0.06 / kg_per_lb;  // judgement, 0.06 Mcal/lb
  constexpr double near_line = 0.01 / kg_per_lb;   // judgement, the rounding of both
  const auto tdn = figures.of("tdn"), nem = figures.of("nem");
  if (!tdn || !nem || std::abs(nem_of_tdn(*tdn) - *nem) <= near_cubic) return;
  const StraightNetEnergy& line = straight_net_energy();
  const double straight = (line.slope * *tdn - line.nem_less) / kg_per_lb;
  if (std::abs(straight - *nem) <= near_line) {
    findings.notes.push_back(fmt::format(
        "NEm {} Mcal/kg comes by the straight line of the North Dakota sheets; the cubic of the "
        "tables gives {}",
        fixed(*nem, 2), fixed(nem_of_tdn(*tdn), 2)));
    return;
  }
  findings.warn(fmt::format("NEm {} Mcal/kg does not follow from TDN {} %, which gives {}",
                            fixed(*nem, 2), fixed(*tdn, 1), fixed(nem_of_tdn(*tdn), 2)),
                "Check the unit (Mcal per lb, cwt or kg) and the basis of both.");
}

// A printed DE against the one of the same page's full sum.
void judge_digestible_energy(const Figures& figures, Findings& findings) {
  constexpr double near_sum = 0.35;  // judgement, Mcal/kg: 8 points of TDN
  const auto de = figures.of("de");
  const auto sum = summative_of(figures);
  if (!de || !sum || std::abs(*de - sum->de) <= near_sum) return;
  findings.warn(fmt::format("DE {} Mcal/kg is far from the {} that the page's own figures sum to",
                            fixed(*de, 2), fixed(sum->de, 2)),
                "Check the unit (Mcal per lb or kg) and the basis.");
}

}  // namespace

void Findings::refuse(std::string what, std::string remedy) {
  refused.push_back(input_problem(std::move(what), std::move(remedy), place));
}

void Findings::warn(std::string what, std::string remedy) {
  warned.push_back({Fault::input, Severity::warning, std::move(what), std::move(remedy), place});
}

void judge_figures(const Figures& figures, const EnergyChoice& choice, Findings& findings) {
  for (const Analyte& analyte : analytes())
    if (const auto value = figures.of(analyte.name)) judge(analyte, *value, findings);
  judge_fibre(figures, findings);
  judge_sum(figures, findings);
  judge_minerals(figures, findings);
  judge_indices(figures, findings);
  judge_bound_protein(figures, findings);
  signal_heat(figures, findings);
  signal_protein(figures, findings);
  signal_soil(figures, choice, findings);
  caution_nitrate(figures, findings);
}

// Fresh grass 12 to 60 %, air-dry 85 to 95 %: judgement, outside what was read (20 to 25 at
// cutting, tein.net; hay 85 to 92, Univ. of Florida AA192).
void judge_dry_matter(const LabResult& result, Findings& findings) {
  constexpr double freshest_dry = 60, least_air_dry = 85;
  const auto found = result.values.find("dm");
  if (found == result.values.end()) return;
  const double dm = found->second;
  judge(*find_analyte("dm"), dm, findings);
  if (dm > freshest_dry && dm < least_air_dry)
    findings.warn(fmt::format("dry matter {} % is neither of fresh grass (12 to 60 %) nor of a "
                              "dried bag (85 to 95 %)",
                              shown_figure(dm)),
                  "A half-dry bag moulds and loses sugar: how was it dried and packed?");
}

void judge_energy(const Figures& figures, const std::vector<EnergyEstimate>& estimates,
                  const EnergyChoice& choice, Findings& findings) {
  const FibreEquation& line = fibre_equation(choice.fibre);
  const auto by_line = std::find_if(estimates.begin(), estimates.end(), [&](const auto& one) {
    return one.method == line.id || one.method == "E1";
  });
  if (by_line != estimates.end()) {
    if (by_line == estimates.begin()) judge_line(*figures.of("adf"), line, findings);
    judge_printed_tdn(figures, by_line->tdn_percent, findings);
  }
  judge_net_energy(figures, findings);
  judge_digestible_energy(figures, findings);
  if (figures.of("omd") && !figures.of("ash"))
    findings.warn("OMD is of organic matter, and the page has no ash to take it to dry matter",
                  "Enter ash too, or ask the laboratory for DOMD or TDN.");
}

}  // namespace pluckbook
