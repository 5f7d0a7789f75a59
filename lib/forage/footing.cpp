#include "forage/footing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "base/text.h"
#include "book/lab_values.h"
#include "published/rules.h"

namespace pluckbook {
namespace {

constexpr std::string_view nitrate = "nitrate_n_ppm";

constexpr double ppm_per_percent = 10'000;
// Judgement: forage with more than this much protein may owe part of it to nitrate. Read:
// Shewmaker, Univ. of Idaho.
constexpr double protein_to_test_nitrate = 25;
constexpr double parts_add_up_to = 103;  // judgement: 100 and the error of four figures
constexpr double tdn_near_equation = 8;  // judgement
constexpr double least_hemicellulose = 5, most_hemicellulose = 40;  // judgement

std::optional<Place> place_of(const Origin& origin) {
  if (origin.file.empty()) return std::nullopt;
  return Place{origin.file, origin.line, 1, 1, ""};
}

Problem warning(const LabResult& result, std::string what, std::string remedy) {
  return {Fault::input, Severity::warning, std::move(what), std::move(remedy),
          place_of(result.origin)};
}

bool within(double value, double low, double high) {
  return value >= low && value <= high;
}

// At most four decimals, and no idle zeros.
std::string shown_figure(double value) {
  return shortest(std::round(value * 10'000) / 10'000);
}

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

/// Figures of one result, percent of dry matter, and what was thought of them.
struct Page {
  const LabResult& result;
  std::map<std::string, double> figures;
  std::optional<double> dm;  // percent of the sample as received
  Problems refused, warned;

  std::optional<double> of(const std::string& id) const {
    const auto found = figures.find(id);
    return found == figures.end() ? std::nullopt : std::optional(found->second);
  }
  void refuse(std::string what, std::string remedy) {
    refused.push_back(input_problem(std::move(what), std::move(remedy), place_of(result.origin)));
  }
  void warn(std::string what, std::string remedy) {
    warned.push_back(warning(result, std::move(what), std::move(remedy)));
  }
};

std::optional<double> printed(const LabResult& result, const std::string& id) {
  const auto found = result.values.find(id);
  return found == result.values.end() ? std::nullopt : std::optional(found->second);
}

void judge(Page& page, const Analyte& analyte, double value) {
  const std::string figure =
      fmt::format("{} {} {}", analyte.in_words, shown_figure(value), analyte.unit);
  if (!within(value, analyte.refuse_low, analyte.refuse_high)) {
    page.refuse(fmt::format("{} is outside {} to {} {}", figure, shortest(analyte.refuse_low),
                            shortest(analyte.refuse_high), analyte.unit),
                remedy_for(analyte, value));
  } else if (!within(value, analyte.warn_low, analyte.warn_high)) {
    page.warn(fmt::format("{} is unusual: {} to {} {} is what forage mostly holds", figure,
                          shortest(analyte.warn_low), shortest(analyte.warn_high), analyte.unit),
              remedy_for(analyte, value));
  }
}

void read_dry_matter(Page& page) {
  page.dm = printed(page.result, "dm");
  if (page.dm) {
    judge(page, *find_analyte("dm"), *page.dm);
  } else if (page.result.basis == Basis::as_received) {
    page.refuse("figures as received, and no dry matter to put them on",
                "Write dm as the laboratory printed it: 100 less the moisture.");
  }
}

void check_fibre(Page& page) {
  const auto adf = page.of("adf"), ndf = page.of("ndf"), lignin = page.of("lignin");
  if (adf && ndf && *adf >= *ndf) {
    page.refuse(fmt::format("ADF {} % is not below NDF {} %, of which it is a part", fixed(*adf, 1),
                            fixed(*ndf, 1)),
                "The two rows may have changed places.");
  } else if (adf && ndf && !within(*ndf - *adf, least_hemicellulose, most_hemicellulose)) {
    page.warn(fmt::format("NDF stands {} points over ADF; {} to {} is usual", fixed(*ndf - *adf, 1),
                          least_hemicellulose, most_hemicellulose),
              "Look at both rows of the laboratory's page again.");
  }
  if (adf && lignin && *lignin > *adf)
    page.refuse(fmt::format("lignin {} % is over ADF {} %, of which it is a part",
                            fixed(*lignin, 1), fixed(*adf, 1)),
                "Lignin may have been printed as percent of NDF: leave it out or convert it.");
}

void check_sums(Page& page) {
  const auto cp = page.of("cp"), ndf = page.of("ndf"), fat = page.of("fat"), ash = page.of("ash");
  if (cp && ndf && cp.value() + *ndf + fat.value_or(0) + ash.value_or(0) > parts_add_up_to)
    page.warn(fmt::format("protein, NDF, fat and ash add up to {} % of dry matter",
                          fixed(*cp + *ndf + fat.value_or(0) + ash.value_or(0), 1)),
              "More than 100 cannot be: look for a figure on another basis.");
  if (cp && *cp > protein_to_test_nitrate)
    page.warn(fmt::format("crude protein {} % may be partly nitrate", fixed(*cp, 1)),
              "Ask the laboratory for nitrate before cattle graze it hungry.");
  if (const auto bound = page.of("adicp"); cp && bound && *bound > *cp)
    page.refuse("bound protein (ADICP) is over crude protein, of which it is a part",
                "ADICP may have been printed as percent of crude protein.");
  const auto ca = page.of("ca"), p = page.of("p");
  if (ca && p && *ca < *p)
    page.warn(fmt::format("calcium {} % is below phosphorus {} %", fixed(*ca, 2), fixed(*p, 2)),
              "Rare in forage: the two rows may have changed places.");
}

Page read(const LabResult& result) {
  Page page{result, {}, {}, {}, {}};
  read_dry_matter(page);
  if (!page.refused.empty()) return page;
  const double share = result.basis == Basis::as_received ? *page.dm / 100 : 1;
  for (const auto& [id, value] : result.values)
    if (id != "dm") page.figures[id] = value / share;
  for (const Analyte& analyte : analytes())
    if (const auto value = page.of(std::string(analyte.name))) judge(page, analyte, *value);
  check_fibre(page);
  check_sums(page);
  return page;
}

std::string how_got(const Page& page, const std::string& id) {
  if (page.result.basis == Basis::dry_matter) return "as printed";
  return fmt::format("{} % as received / {}", shortest(page.result.values.at(id)),
                     shortest(*page.dm / 100));
}

// The stated error of an equation, in points, on the logit scale at this TDN.
double logit_sd(double points, double tdn_percent) {
  const double share = tdn_percent / 100;
  return points / 100 / (share * (1 - share));
}

// Predicts, or compares what the laboratory printed. One equation only, so that a series of
// predicted values has one bias and not several.
std::optional<FootedValue> tdn_of(Page& page) {
  const auto tdn = page.of("tdn"), adf = page.of("adf");
  const FibreEquation& e1 = fibre_equation("E1");
  const double predicted = adf ? e1.intercept + e1.adf * *adf : 0;
  if (tdn && adf && std::abs(*tdn - predicted) > tdn_near_equation)
    page.warn(fmt::format("TDN {} % is far from the {} % that ADF {} % suggests", fixed(*tdn, 1),
                          fixed(predicted, 1), fixed(*adf, 1)),
              "Ask the laboratory by which equation it calculates TDN.");
  if (tdn) return FootedValue{from_percent(*tdn), how_got(page, "tdn"), "", 0};
  if (!adf) return std::nullopt;
  if (!within(*adf, e1.adf_low, e1.adf_high))
    page.warn(fmt::format("TDN is predicted from ADF {} %, outside the {} to {} % the equation was "
                          "written for",
                          fixed(*adf, 1), shortest(e1.adf_low), shortest(e1.adf_high)),
              "Ask the laboratory for TDN.");
  return FootedValue{from_percent(predicted),
                     fmt::format("TDN = {} - {} ADF (E1), ADF {} %", shortest(e1.intercept),
                                 shortest(-e1.adf), fixed(*adf, 1)),
                     e1.source, logit_sd(e1.error_points, predicted)};
}

}  // namespace

std::optional<PlausibleRange> plausible_range(const std::string& analyte) {
  const Analyte* known = find_analyte(analyte);
  if (known == nullptr) return std::nullopt;
  return PlausibleRange{known->refuse_low, known->refuse_high, known->warn_low, known->warn_high};
}

Result<FootedResult> on_dry_matter(const LabResult& result) {
  Page page = read(result);
  if (!page.refused.empty()) return page.refused;
  const auto share_of = [&](const char* id) -> std::optional<Share> {
    const auto value = page.of(id);
    return value ? std::optional(from_percent(*value)) : std::nullopt;
  };
  FootedResult footed;
  if (const auto cp = page.of("cp"))
    footed.crude_protein = FootedValue{from_percent(*cp), how_got(page, "cp"), "", 0};
  footed.tdn = tdn_of(page);
  footed.adf = share_of("adf");
  footed.ndf = share_of("ndf");
  footed.ash = share_of("ash");
  footed.fat = share_of("fat");
  footed.calcium = share_of("ca");
  footed.phosphorus = share_of("p");
  footed.nitrate_n_ppm = page.of(std::string(nitrate));
  footed.warnings = std::move(page.warned);
  return footed;
}

}  // namespace pluckbook
