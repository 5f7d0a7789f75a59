#include "book/lab_values.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "book/values.h"

namespace pluckbook {
namespace {

// NO3 x 0.226 = NO3-N. University of Nebraska, beef.unl.edu, November 2016 (read).
constexpr double nitrogen_in_nitrate = 0.226;

struct UnitOfShare {
  std::string_view name;
  double percent;
};
constexpr std::array<UnitOfShare, 5> units_of_share = {
    {{"%", 1}, {"g/kg", 0.1}, {"ppm", 1e-4}, {"mg/kg", 1e-4}, {"g/100 g", 1}}};

// The number in the unit of the analyte; a plain number is in it already.
Result<double> parse_share(std::string_view in_words, std::string_view unit,
                           std::string_view text) {
  const Result<WrittenQuantity> written = written_quantity(in_words, text);
  if (!written) return written.problems();
  if (written->unit.empty() || written->unit == unit) return written->number;
  for (const UnitOfShare& known : units_of_share) {
    if (known.name != written->unit) continue;
    return written->number * known.percent * (unit == "ppm" ? 1e4 : 1);
  }
  return input_problem(fmt::format("{} cannot be in '{}'", in_words, shown(written->unit)),
                       "write %, g/kg or ppm, or the number alone");
}

Problem bare_nitrate() {
  return input_problem("'nitrate' may mean nitrate or the nitrogen in it, which differ 4.4-fold",
                       "write nitrate_n_ppm for NO3-N, or no3_ppm for NO3, as the page says");
}

Problem unknown_analyte(std::string_view name) {
  std::vector<std::string> known;
  for (const Analyte& analyte : analytes()) known.emplace_back(analyte.name);
  known.emplace_back("moisture");
  known.emplace_back("no3_ppm");
  return input_problem(fmt::format("unknown analyte '{}'", shown(name)), suggestion(name, known));
}

const Analyte* find_by_any_name(const std::string& id) {
  const auto found = std::find_if(analytes().begin(), analytes().end(), [&](const Analyte& a) {
    return a.name == id || std::find(a.also.begin(), a.also.end(), id) != a.also.end();
  });
  return found == analytes().end() ? nullptr : &*found;
}

}  // namespace

const std::vector<Analyte>& analytes() {
  // The limits are judgment, set outside published spreads (assumed).
  static const std::vector<Analyte> all = {
      {"dm", "dry matter", {"dry_matter"}, "%", 5, 100, 5, 100},
      {"cp", "crude protein", {"protein", "crude_protein"}, "%", 0.5, 45, 2, 30},
      {"adicp", "bound protein", {"adf_cp", "bound_protein"}, "%", 0, 20, 0, 5},
      {"ndicp", "protein in NDF", {}, "%", 0, 30, 0, 12},
      {"adf", "ADF", {}, "%", 8, 70, 18, 55},
      {"ndf", "NDF", {"andf", "andfom"}, "%", 15, 90, 28, 80},
      {"lignin", "lignin", {"adl"}, "%", 0, 40, 2, 14},
      {"ash", "ash", {}, "%", 0, 40, 4, 12},
      {"fat", "fat", {"ee", "crude_fat", "ether_extract"}, "%", 0, 15, 1, 6},
      {"starch", "starch", {}, "%", 0, 80, 0, 40},
      {"tdn", "TDN", {}, "%", 25, 90, 40, 80},
      {"ca", "calcium", {"calcium"}, "%", 0.02, 5, 0.15, 2.5},
      {"p", "phosphorus", {"phosphorus"}, "%", 0.01, 1.5, 0.04, 0.60},
      {"mg", "magnesium", {"magnesium"}, "%", 0.01, 2, 0.05, 0.60},
      {"k", "potassium", {"potassium"}, "%", 0.05, 8, 0.2, 5},
      {"s", "sulfur", {"sulfur"}, "%", 0.01, 1.5, 0.05, 0.50},
      // Warned above 1,000 ppm NO3-N: the top of "safe, all classes" at Clemson Univ. Regulatory
      // Services, "Nitrate level" (read); refused where no reading has been (assumed).
      {"nitrate_n_ppm",
       "nitrate N",
       {"no3_n", "no3n", "nitrate_n", "no3_n_ppm"},
       "ppm",
       0,
       30000,
       0,
       1000},
  };
  return all;
}

const Analyte* find_analyte(std::string_view name) {
  const auto found = std::find_if(analytes().begin(), analytes().end(),
                                  [&](const Analyte& a) { return a.name == name; });
  return found == analytes().end() ? nullptr : &*found;
}

Result<TypedValue> parse_analyte(std::string_view name, std::string_view text) {
  const std::string id = as_id(name);
  if (id == "nitrate") return bare_nitrate();
  if (id == "moisture") {
    const Result<double> moisture = parse_share("moisture", "%", text);
    if (!moisture) return moisture.problems();
    return TypedValue{"dm", 100 - *moisture};
  }
  if (id == "no3" || id == "no3_ppm") {
    const Result<double> nitrate = parse_share("nitrate", "ppm", text);
    if (!nitrate) return nitrate.problems();
    return TypedValue{"nitrate_n_ppm", *nitrate * nitrogen_in_nitrate};
  }
  const Analyte* analyte = find_by_any_name(id);
  if (analyte == nullptr) return unknown_analyte(name);
  const Result<double> value = parse_share(analyte->in_words, analyte->unit, text);
  if (!value) return value.problems();
  return TypedValue{std::string(analyte->name), *value};
}

Result<TypedValue> parse_lab_value(const std::string& name_value) {
  const std::size_t equals = name_value.find('=');
  if (equals == std::string::npos) {
    return usage_problem(fmt::format("'{}' is not name=value", shown(name_value)),
                         "write, for one,  cp=6.4");
  }
  const std::string_view text = name_value;
  Result<TypedValue> value =
      parse_analyte(trimmed(text.substr(0, equals)), trimmed(text.substr(equals + 1)));
  if (value) return value;
  Problems problems = value.problems();
  for (Problem& problem : problems) problem.fault = Fault::usage;
  return problems;
}

}  // namespace pluckbook
