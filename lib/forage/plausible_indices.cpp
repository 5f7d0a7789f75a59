#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "forage/plausible.h"
#include "published/forage_energy.h"

namespace pluckbook {
namespace {

// Dry matter intake, % of body weight = 120 / NDF: "RFV vs RFQ", 14 Feb 2008 (read).
double intake_of_ndf(double ndf) {
  return 120 / ndf;
}

// RFV = DDM x DMI / 1.29, DDM = 88.9 - 0.779 ADF: "RFV vs RFQ", 14 Feb 2008 (read).
void judge_feed_value(const Figures& figures, Findings& findings) {
  constexpr double rounding = 2;  // judgement
  const auto rfv = figures.of("rfv"), adf = figures.of("adf"), ndf = figures.of("ndf");
  if (!rfv || !adf || !ndf) return;
  const double computed = (88.9 - 0.779 * *adf) * intake_of_ndf(*ndf) / 1.29;
  if (std::abs(*rfv - computed) > rounding)
    findings.warn(fmt::format("relative feed value {} does not follow from ADF and NDF, which give "
                              "{}",
                              fixed(*rfv, 0), fixed(computed, 0)),
                  "One of the three was misread, or two bases are mixed.");
}

// RFQ = DMI x TDN / 1.23: Univ. of Wisconsin, "Relative forage quality" (read). Laboratories move
// the intake by the digestibility of NDF, which the page need not print: hence the width.
void judge_forage_quality(const Figures& figures, Findings& findings) {
  constexpr double width = 0.25;  // judgement, of what NDF and TDN give
  const auto rfq = figures.of("rfq"), tdn = figures.of("tdn"), ndf = figures.of("ndf");
  if (!rfq || !tdn || !ndf) return;
  const double computed = intake_of_ndf(*ndf) * *tdn / 1.23;
  if (std::abs(*rfq - computed) > width * computed)
    findings.warn(fmt::format("relative forage quality {} is far from what TDN and NDF give, {}",
                              fixed(*rfq, 0), fixed(computed, 0)),
                  "One of the three was misread, or two bases are mixed.");
}

void judge_digestible_protein(const Figures& figures, Findings& findings) {
  constexpr double near_line = 1.5;  // judgement, points: the two lines part by 1 at CP 17
  const auto digestible = figures.of("dp"), cp = figures.of("cp");
  if (!digestible) return;
  if (!cp) {
    findings.notes.push_back(
        "the page has no crude protein; digestible protein is kept, not used in its place");
    return;
  }
  if (*digestible >= *cp) {
    findings.refuse(fmt::format("digestible protein {} % is not below crude protein {} %, of which "
                                "it is a part",
                                fixed(*digestible, 1), fixed(*cp, 1)),
                    "The two rows may have changed places.");
    return;
  }
  const auto& lines = digestible_protein_lines();
  const bool near = std::any_of(lines.begin(), lines.end(), [&](const auto& line) {
    return std::abs(line.at(*cp) - *digestible) <= near_line;
  });
  if (!near)
    findings.warn(
        fmt::format("digestible protein {} % is far from the {} % usual at crude protein "
                    "{} %",
                    fixed(*digestible, 1), fixed(lines.front().at(*cp), 1), fixed(*cp, 1)),
        "Available or adjusted protein are other figures (available_cp, adjusted_cp): "
        "look how the page calls it.");
}

}  // namespace

void judge_indices(const Figures& figures, Findings& findings) {
  judge_feed_value(figures, findings);
  judge_forage_quality(figures, findings);
  judge_digestible_protein(figures, findings);
}

}  // namespace pluckbook
