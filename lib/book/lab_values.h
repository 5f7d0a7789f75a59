// lab_values.h - the figures a laboratory prints: what each is called, how it is written, and
// outside which values it is unusual or impossible in forage.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "book/read.h"

namespace pluckbook {

/// What a figure is a part of, and so whether the basis of the page touches it.
enum class PartOf {
  page,    // of what the page's basis says: dry matter, or the sample as received
  sample,  // of the sample as received, whatever the basis: dry matter itself
  other,   // of protein, NDF or what was eaten; or an index
};

struct Analyte {
  std::string_view name;               // the key in the book: "cp"
  std::string_view in_words;           // "crude protein"
  std::vector<std::string_view> also;  // other names taken when typed: "protein"
  std::string_view unit;               // "%", "ppm", "Mcal/kg", "MJ/kg"; empty for an index
  // On dry matter (dm: of the sample as received). Refused outside; warned outside.
  double refuse_low, refuse_high, warn_low, warn_high;
  PartOf part_of = PartOf::page;
};

/// All of them, in the order of a laboratory's page.
/// Source: seen spreads as cited in reference/; the limits themselves are judgment (assumed), set
/// outside what was seen.
const std::vector<Analyte>& analytes();

/// By key; nullptr when there is none.
const Analyte* find_analyte(std::string_view name);

/// A name a page may use that the book does not: another form of an analyte (moisture, nitrate as
/// NO3), or one that says too little to be taken.
struct OtherName {
  std::string_view name;
  std::string_view unit;  // empty for a name that is refused
};
std::vector<OtherName> other_names();

/// The analyte a name gives, whatever the case: "Protein" -> "cp", "moisture" -> "dm", "no3" ->
/// "nitrate_n_ppm". Empty when none.
std::string_view analyte_named(std::string_view name);

/// Why a name says no analyte, or not which: unknown (nearest suggested), or too little said.
/// Nothing where it is one.
std::optional<Problem> refuse_analyte(std::string_view name);

/// Takes keys and other names, whatever the case: "Protein", "CP". Other forms are converted:
/// moisture gives dm, nitrogen CP, NO3 and KNO3 nitrate N.
/// Fails: an unknown name (nearest suggested), one that says too little (a bare "nitrate"), an
///        energy without its unit, a text that is no number.
Result<TypedValue> parse_analyte(std::string_view name, std::string_view text);

/// Whether a plain number would be read as that figure again; where not, its unit is written too.
bool reads_back_plain(const Analyte& analyte, double figure);

/// Puts a figure among those of its page. The same figure in two forms (dm and moisture) may stand
/// where both agree to the last digit a page prints.
/// Fails: it is there already and differs.
std::optional<Problem> keep_figure(std::map<std::string, double>& figures, const TypedValue& value);

}  // namespace pluckbook
