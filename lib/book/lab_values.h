// lab_values.h - the figures a laboratory prints: what each is called, how it is written, and
// outside which values it is unusual or impossible in forage.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "book/read.h"

namespace pluckbook {

struct Analyte {
  std::string_view name;               // the key in the book: "cp"
  std::string_view in_words;           // "crude protein"
  std::vector<std::string_view> also;  // other names taken when typed: "protein"
  std::string_view unit;               // "%" or "ppm"
  // On dry matter (dm: of the sample as received). Refused outside; warned outside.
  double refuse_low, refuse_high, warn_low, warn_high;
};

/// All of them, in the order of a laboratory's page.
/// Source: seen spreads as cited in reference/; the limits themselves are judgment (assumed), set
/// outside what was seen.
const std::vector<Analyte>& analytes();

/// By key; nullptr when there is none.
const Analyte* find_analyte(std::string_view name);

/// Takes keys and other names, whatever the case: "Protein", "CP". Moisture gives dm, nitrate as
/// NO3 gives nitrate N.
/// Fails: an unknown name (nearest suggested), a bare "nitrate", a text that is no number.
Result<TypedValue> parse_analyte(std::string_view name, std::string_view text);

}  // namespace pluckbook
