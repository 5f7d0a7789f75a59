#include "forage/footing.h"

#include <fmt/format.h>

#include <utility>

#include "base/text.h"
#include "book/lab_values.h"
#include "forage/energy.h"
#include "forage/plausible.h"

namespace pluckbook {
namespace {

/// One result with its figures on dry matter and what was thought of them.
struct Page {
  const LabResult& result;
  const EnergyChoice& choice;
  Figures figures;
  Findings findings;
  std::map<std::string, std::string, std::less<>> how;  // of figures made from others

  bool as_received() const { return result.basis == Basis::as_received; }
  std::optional<Share> share_of(std::string_view name) const {
    const auto value = figures.of(name);
    return value ? std::optional(from_percent(*value)) : std::nullopt;
  }
};

void take_figures(Page& page) {
  const auto dm = page.result.values.find("dm");
  const bool known = dm != page.result.values.end() && dm->second > 0;
  if (page.as_received() && !known) {
    page.findings.refuse("figures as received, and no dry matter to put them on",
                         "Write dm as the laboratory printed it: 100 less the moisture.");
    return;
  }
  for (const auto& [name, value] : page.result.values) {
    const Analyte* analyte = find_analyte(name);
    if (analyte == nullptr || analyte->part_of == PartOf::sample) continue;
    const bool divide = page.as_received() && analyte->part_of == PartOf::page;
    page.figures.by_name[name] = divide ? value / (dm->second / 100) : value;
  }
}

void make(Page& page, std::string_view name, double value, std::string how) {
  page.figures.by_name.emplace(name, value);
  page.how.emplace(name, std::move(how));
}

// What a page prints as part of another figure, or leaves to be added up.
void make_missing_figures(Page& page) {
  const auto of = [&](std::string_view name) { return page.figures.of(name); };
  if (of("lignin_of_ndf") && of("ndf") && !of("lignin"))
    make(page, "lignin", *of("lignin_of_ndf") * *of("ndf") / 100, "of NDF");
  if (of("available_cp") && of("adicp") && !of("cp"))
    make(page, "cp", *of("available_cp") + *of("adicp"),
         fmt::format("available {} % + bound {} %", fixed(*of("available_cp"), 1),
                     fixed(*of("adicp"), 1)));
  if (of("adicp_of_cp") && of("cp") && !of("adicp"))
    make(page, "adicp", *of("adicp_of_cp") * *of("cp") / 100, "of crude protein");
}

std::string how_got(const Page& page, const std::string& name) {
  if (const auto made = page.how.find(name); made != page.how.end()) return made->second;
  if (!page.as_received()) return "as printed";
  return fmt::format("{} % as received / {}", shortest(page.result.values.at(name)),
                     shortest(page.result.values.at("dm") / 100));
}

// The stated error of an equation, in points, on the logit scale at this TDN.
double logit_sd(double points, double tdn_percent) {
  const double share = tdn_percent / 100;
  return points / 100 / (share * (1 - share));
}

FootedValue footed_energy(const Page& page, const EnergyEstimate& one) {
  FootedValue value{from_percent(one.tdn_percent), one.how, one.source,
                    logit_sd(one.error_points, one.tdn_percent), one.method};
  if (one.method != "laboratory") return value;
  value.how = how_got(page, "tdn");
  if (!page.result.tdn_by.empty()) value.method += ", " + page.result.tdn_by;
  return value;
}

// An estimate no forage has is worse than none.
std::vector<EnergyEstimate> believable(const Figures& figures, const EnergyChoice& choice) {
  const Analyte& limits = *find_analyte("tdn");
  std::vector<EnergyEstimate> estimates = energy_estimates(figures, choice);
  std::erase_if(estimates, [&](const EnergyEstimate& one) {
    return one.tdn_percent < limits.refuse_low || one.tdn_percent > limits.refuse_high;
  });
  return estimates;
}

FootedResult footed(Page& page) {
  FootedResult result;
  if (const auto cp = page.share_of("cp"))
    result.crude_protein = FootedValue{*cp, how_got(page, "cp"), "", 0, ""};
  const auto estimates = believable(page.figures, page.choice);
  judge_energy(page.figures, estimates, page.choice, page.findings);
  for (const EnergyEstimate& one : estimates) result.energy.push_back(footed_energy(page, one));
  if (!result.energy.empty()) result.tdn = result.energy.front();
  result.adf = page.share_of("adf");
  result.ndf = page.share_of("ndf");
  result.ash = page.share_of("ash");
  result.fat = page.share_of("fat");
  result.calcium = page.share_of("ca");
  result.phosphorus = page.share_of("p");
  result.degradable = page.share_of("rdp_of_cp");
  result.nitrate_n_ppm = page.figures.of("nitrate_n_ppm");
  result.warnings = std::move(page.findings.warned);
  result.notes = std::move(page.findings.notes);
  result.cautions = std::move(page.findings.cautions);
  return result;
}

}  // namespace

std::optional<PlausibleRange> plausible_range(const std::string& analyte) {
  const Analyte* known = find_analyte(analyte);
  if (known == nullptr) return std::nullopt;
  return PlausibleRange{known->refuse_low, known->refuse_high, known->warn_low, known->warn_high};
}

Result<FootedResult> on_dry_matter(const LabResult& result, const EnergyChoice& choice) {
  Page page{result, choice, {}, {place_of(result.origin), {}, {}, {}, {}}, {}};
  judge_dry_matter(result, page.findings);
  take_figures(page);
  make_missing_figures(page);
  judge_figures(page.figures, choice, page.findings);
  if (!page.findings.refused.empty()) return page.findings.refused;
  return footed(page);
}

}  // namespace pluckbook
