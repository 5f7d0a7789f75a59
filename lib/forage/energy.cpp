#include "forage/energy.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "base/units.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

constexpr double mj_per_mcal = 4.184;

using Estimates = std::vector<EnergyEstimate>;

double fatty_acids(double fat) {
  return std::max(0.0, fat - summative_equation().fat_not_fatty);
}

// NDF less the protein in it.
double free_ndf(const Figures& figures, double ndf) {
  const auto bound = figures.of("ndicp");
  return bound ? ndf - *bound : ndf * ndf_free_of_protein();
}

void add_printed_energy(const Figures& figures, Estimates& into) {
  if (const auto tdn = figures.of("tdn")) into.push_back({"laboratory", *tdn, "", "", 0});
  const EnergyChain& chain = energy_chain();
  if (const auto de = figures.of("de"))
    into.push_back({"DE", tdn_of_de(*de),
                    fmt::format("DE {} Mcal/kg / {}", fixed(*de, 2), shortest(chain.de_per_tdn)),
                    chain.source, 0});
  if (const auto me = figures.of("me"))
    into.push_back({"ME", tdn_of_me(*me),
                    fmt::format("ME {} MJ/kg / {} / {} / {}", fixed(*me, 1), mj_per_mcal,
                                shortest(chain.me_per_de), shortest(chain.de_per_tdn)),
                    chain.source, 0});
  if (const auto nem = figures.of("nem"))
    into.push_back({"NEm", tdn_of_nem(*nem),
                    fmt::format("the TDN whose NEm is {} Mcal/kg", fixed(*nem, 2)), chain.source,
                    nel_line().error_points});
  const NetEnergyLine& line = nel_line();
  if (const auto nel = figures.of("nel"))
    into.push_back({"NEl", line.intercept + line.slope * *nel * kg_per_lb,
                    fmt::format("{} + {} NEl, NEl {} Mcal/lb", shortest(line.intercept),
                                shortest(line.slope), fixed(*nel * kg_per_lb, 3)),
                    line.source, line.error_points});
}

void add_digestible(const Figures& figures, std::string_view name, double percent,
                    Estimates& into) {
  const DigestibilityLine& line = digestibility_line(name == "DMD" ? "DMD" : "DOMD");
  const double me = line.intercept + line.slope * percent;
  std::string of = fmt::format("{} {} %", name, fixed(percent, 1));
  if (name == "OMD") {
    of = fmt::format("OMD {} % x (100 - ash {} %) / 100", fixed(*figures.of("omd"), 1),
                     fixed(*figures.of("ash"), 1));
  }
  into.push_back({std::string(name), tdn_of_me(me),
                  fmt::format("ME {} MJ/kg = {} x {} - {}; TDN from it", fixed(me, 1),
                              shortest(line.slope), of, shortest(-line.intercept)),
                  line.source, line.error_points});
}

// DOMD = OMD x (100 - ash) / 100 follows from what the two are shares of.
void add_digestibility(const Figures& figures, Estimates& into) {
  const auto domd = figures.of("domd"), omd = figures.of("omd"), dmd = figures.of("dmd");
  const auto ash = figures.of("ash");
  if (domd) add_digestible(figures, "DOMD", *domd, into);
  if (omd && ash) add_digestible(figures, "OMD", *omd * (100 - *ash) / 100, into);
  if (dmd) add_digestible(figures, "DMD", *dmd, into);
}

void add_sums(const Figures& figures, const EnergyChoice& choice, Estimates& into) {
  if (const auto sum = summative_of(figures)) {
    const SummativeEquation& equation = summative_equation();
    into.push_back({equation.id, sum->tdn,
                    fmt::format("TDN = NFC {} + protein {} + fat {} + NDF {} - {} ({})",
                                fixed(sum->digested_nfc, 1), fixed(sum->digested_protein, 1),
                                fixed(sum->digested_fat, 1), fixed(sum->digested_fibre, 1),
                                shortest(equation.less), equation.id),
                    equation.source, equation.error_points});
  }
  const DigestedFibreEquation& equation = digested_fibre_equation(choice.digested_fibre);
  if (const auto tdn = tdn_by_digested_fibre(figures, equation))
    into.push_back({equation.id, *tdn,
                    fmt::format("TDN summed with NDFD {} % after 48 hours ({})",
                                fixed(*figures.of("ndfd48"), 0), equation.id),
                    equation.source, equation.error_points});
}

std::string line_in_words(const FibreEquation& line, const Figures& figures) {
  std::string equation = shortest(line.intercept), read;
  const auto term = [&](double slope, std::string_view name, const char* shown_name) {
    if (slope == 0) return;
    equation +=
        fmt::format(" {} {} {}", slope < 0 ? '-' : '+', shortest(std::abs(slope)), shown_name);
    read += fmt::format(", {} {} %", shown_name, fixed(*figures.of(name), 1));
  };
  term(line.cp, "cp", "CP");
  term(line.adf, "adf", "ADF");
  term(line.ndf, "ndf", "NDF");
  return fmt::format("TDN = {} ({}){}", equation, line.id, read);
}

// Nothing where a figure is missing.
void add_line(const Figures& figures, const FibreEquation& line, Estimates& into) {
  double tdn = line.intercept;
  for (const auto& [slope, name] :
       {std::pair{line.cp, "cp"}, std::pair{line.adf, "adf"}, std::pair{line.ndf, "ndf"}}) {
    if (slope == 0) continue;
    const auto figure = figures.of(name);
    if (!figure) return;
    tdn += slope * *figure;
  }
  into.push_back({line.id, tdn, line_in_words(line, figures), line.source, line.error_points});
}

}  // namespace

std::optional<double> Figures::of(std::string_view name) const {
  const auto found = by_name.find(name);
  return found == by_name.end() ? std::nullopt : std::optional(found->second);
}

std::optional<Summative> summative_of(const Figures& figures) {
  const auto cp = figures.of("cp"), bound = figures.of("adicp"), ndf = figures.of("ndf");
  const auto lignin = figures.of("lignin"), fat = figures.of("fat"), ash = figures.of("ash");
  if (!cp || !bound || !ndf || !lignin || !fat || !ash || *cp <= 0) return std::nullopt;
  const SummativeEquation& e = summative_equation();
  Summative sum{};
  sum.ndf_free = free_ndf(figures, *ndf);
  if (*lignin >= sum.ndf_free) return std::nullopt;
  sum.nfc = 100 - sum.ndf_free - *cp - *fat - *ash;
  sum.digested_nfc = e.nfc * sum.nfc;
  sum.digested_protein = *cp * std::exp(e.bound_protein * *bound / *cp);
  sum.digested_fat = e.fat * fatty_acids(*fat);
  sum.digested_fibre =
      e.fibre * (sum.ndf_free - *lignin) * (1 - std::pow(*lignin / sum.ndf_free, e.lignin_power));
  sum.tdn =
      sum.digested_nfc + sum.digested_protein + sum.digested_fat + sum.digested_fibre - e.less;
  const SummativeDe& de = summative_de();
  sum.de = de.nfc * sum.digested_nfc + de.fibre * sum.digested_fibre +
           de.protein * sum.digested_protein + de.fat * fatty_acids(*fat) - de.less;
  return sum;
}

std::optional<double> tdn_by_digested_fibre(const Figures& figures,
                                            const DigestedFibreEquation& e) {
  const auto ndfd = figures.of("ndfd48"), cp = figures.of("cp"), ndf = figures.of("ndf");
  const auto fat = figures.of("fat"), ash = figures.of("ash");
  if (!ndfd || !cp || !ndf || !fat || !ash) return std::nullopt;
  const double fibre = e.free_of_protein ? free_ndf(figures, *ndf) : *ndf;
  const double nfc = 100 - fibre - *cp - *fat - *ash;
  return e.nfc * nfc + e.protein * *cp + e.fat * fatty_acids(*fat) +
         fibre * (e.ndfd_constant + e.ndfd_slope * *ndfd) / 100 - e.less;
}

double tdn_of_de(double de) {
  return 100 * de / energy_chain().de_per_tdn;
}

double tdn_of_me(double me_mj) {
  return tdn_of_de(me_mj / mj_per_mcal / energy_chain().me_per_de);
}

double nem_of_tdn(double tdn) {
  const EnergyChain& chain = energy_chain();
  const double me = chain.me_per_de * chain.de_per_tdn * tdn / 100;
  return ((chain.nem[2] * me + chain.nem[1]) * me + chain.nem[0]) * me + chain.nem[3];
}

double tdn_of_nem(double nem) {
  double low = 0, high = 100;  // the cubic rises all the way
  for (int i = 0; i < 60; ++i) {
    const double tdn = (low + high) / 2;
    (nem_of_tdn(tdn) < nem ? low : high) = tdn;
  }
  return low;
}

Estimates energy_estimates(const Figures& figures, const EnergyChoice& choice) {
  Estimates all;
  add_printed_energy(figures, all);
  add_digestibility(figures, all);
  add_sums(figures, choice, all);
  add_line(figures, fibre_equation(choice.fibre), all);
  if (choice.fibre != "E1") add_line(figures, fibre_equation("E1"), all);
  return all;
}

}  // namespace pluckbook
