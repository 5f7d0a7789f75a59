#include "book/lab_values.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "base/text.h"
#include "book/values.h"

namespace pluckbook {
namespace {

// ---- units -------------------------------------------------------------------------------------

struct UnitOf {
  std::string_view name;
  double factor;  // to the first of its list
};
constexpr std::array<UnitOf, 5> units_of_share = {
    {{"%", 1}, {"g/kg", 0.1}, {"ppm", 1e-4}, {"mg/kg", 1e-4}, {"g/100 g", 1}}};
// 1 Mcal = 4.184 MJ; a hundredweight is 100 lb (exact by definition).
constexpr double mj_per_mcal = 4.184;
constexpr std::array<UnitOf, 5> units_of_energy = {{{"Mcal/kg", 1},
                                                    {"Mcal/lb", 1 / kg_per_lb},
                                                    {"Mcal/cwt", 1 / kg_per_cwt},
                                                    {"MJ/kg", 1 / mj_per_mcal},
                                                    {"kJ/g", 1 / mj_per_mcal}}};

std::span<const UnitOf> units_beside(std::string_view unit) {
  if (unit == "%" || unit == "ppm") return units_of_share;
  if (unit.empty()) return {};
  return units_of_energy;
}

bool is_energy(std::string_view unit) {
  return units_beside(unit).data() == units_of_energy.data();
}

std::optional<double> factor_of(std::string_view unit, std::span<const UnitOf> units) {
  for (const UnitOf& known : units)
    if (known.name == unit) return known.factor;
  return std::nullopt;
}

Problem unit_missing(std::string_view in_words, std::string_view unit, double number) {
  const std::string n = shortest(number);
  if (unit == "ppm")
    return input_problem(fmt::format("{} {} may be ppm or percent", in_words, n),
                         fmt::format("write '{} %' or '{} ppm', as the page says", n, n));
  return input_problem(fmt::format("{} {} may be per pound or per kilogram", in_words, n),
                       fmt::format("write '{} Mcal/lb', '{} Mcal/cwt', '{} Mcal/kg' or '{} MJ/kg', "
                                   "as the page says",
                                   n, n, n, n));
}

// A plain number is in the analyte's own unit, where that cannot be mistaken. Nitrate of a few ppm
// means nothing to anybody, so such a number is a percent more likely than not (assumed: under 10).
constexpr double least_plain_ppm = 10;

bool may_stand_plain(std::string_view unit, double number) {
  if (is_energy(unit)) return false;
  return unit != "ppm" || number <= 0 || number >= least_plain_ppm;
}

Result<double> parse_figure(std::string_view in_words, std::string_view unit,
                            std::string_view text) {
  const Result<WrittenQuantity> written = written_quantity(in_words, text);
  if (!written) return written.problems();
  const auto [number, said_unit] = *written;
  if (said_unit.empty()) {
    if (!may_stand_plain(unit, number)) return unit_missing(in_words, unit, number);
    return number;
  }
  const auto known = units_beside(unit);
  const auto from = factor_of(said_unit, known), to = factor_of(unit, known);
  if (from && to) return number * *from / *to;
  return input_problem(fmt::format("{} cannot be in '{}'", in_words, shown(said_unit)),
                       is_energy(unit) ? "write Mcal/lb, Mcal/cwt, Mcal/kg or MJ/kg"
                       : unit.empty()  ? "write the number alone"
                                       : "write %, g/kg or ppm, or the number alone");
}

// ---- other forms of an analyte -----------------------------------------------------------------

// CP = N x 6.25: NDSU AS-1080, May 1994 (read).
constexpr double protein_in_nitrogen = 6.25;
// NO3 x 0.226 = NO3-N: University of Nebraska, beef.unl.edu, November 2016 (read).
constexpr double nitrogen_in_nitrate = 0.226;
// NO3-N x 7.2162 = KNO3: Virginia Tech, SPES-201 (read).
constexpr double potassium_nitrate_per_nitrogen = 7.2162;

double rest_of_hundred(double x) {
  return 100 - x;
}
double protein_of(double nitrogen) {
  return nitrogen * protein_in_nitrogen;
}
double nitrogen_of_nitrate(double no3) {
  return no3 * nitrogen_in_nitrate;
}
double nitrogen_of_potassium_nitrate(double kno3) {
  return kno3 / potassium_nitrate_per_nitrogen;
}
double the_same(double x) {
  return x;
}

struct Form {
  std::string_view name, in_words, unit, analyte;
  double (*to_analyte)(double);
};
// ADIN as percent of total nitrogen is ADICP as percent of protein: 6.25 stands above and below.
constexpr std::array<Form, 11> forms = {
    {{"moisture", "moisture", "%", "dm", rest_of_hundred},
     {"nitrogen", "nitrogen", "%", "cp", protein_of},
     {"adin", "ADF nitrogen", "%", "adicp", protein_of},
     {"adin_of_n", "ADF nitrogen of total nitrogen", "%", "adicp_of_cp", the_same},
     {"rup_of_cp", "undegraded protein of protein", "%", "rdp_of_cp", rest_of_hundred},
     {"no3", "nitrate", "ppm", "nitrate_n_ppm", nitrogen_of_nitrate},
     {"no3_ppm", "nitrate", "ppm", "nitrate_n_ppm", nitrogen_of_nitrate},
     {"no3n", "nitrate N", "ppm", "nitrate_n_ppm", the_same},
     {"no3_n", "nitrate N", "ppm", "nitrate_n_ppm", the_same},
     {"kno3", "potassium nitrate", "ppm", "nitrate_n_ppm", nitrogen_of_potassium_nitrate},
     {"kno3_ppm", "potassium nitrate", "ppm", "nitrate_n_ppm", nitrogen_of_potassium_nitrate}}};

const Form* find_form(std::string_view id) {
  const auto found =
      std::find_if(forms.begin(), forms.end(), [&](const Form& form) { return form.name == id; });
  return found == forms.end() ? nullptr : &*found;
}

// ---- names that say too little -----------------------------------------------------------------

struct RefusedName {
  std::string_view name, what, remedy;
};
constexpr std::array<RefusedName, 7> refused_names = {
    {{"nitrate", "'nitrate' may mean nitrate or the nitrogen in it, which differ 4.4-fold",
      "write no3n for NO3-N, no3 for NO3 or kno3 for KNO3, as the page says"},
     {"rdp", "'rdp' may be percent of protein or of dry matter",
      "write rdp_of_cp as percent of crude protein"},
     {"rup", "'rup' may be percent of protein or of dry matter",
      "write rup_of_cp as percent of crude protein"},
     // In vitro read 5.4 units over in vivo: University of Nebraska 2007 (read).
     {"ivdmd", "digestibility in a tube stands some 5 points over what cattle digest",
      "write dmd where the laboratory set it against animals, else ask for TDN"},
     // TDN = (0.59 IVOMD + 32.2) x OM, or 0.49 in place of 0.59 (Florida, both recalled): at IVOMD
     // 50 and 8 % ash 56.8 or 52.2 % TDN (computed).
     {"ivomd", "IVOMD goes to TDN by two lines that stand 4.6 points apart",
      "ask the laboratory for the TDN it makes of it"},
     {"ivtd", "true digestibility in a tube is no digestibility of the diet",
      "write ndfd48 where it is printed, else ask for TDN"},
     {"ndfd", "'ndfd' does not say after how many hours",
      "write ndfd48 for 48 hours, the only ones an equation was published for"}}};

const RefusedName* find_refused(std::string_view id) {
  const auto found = std::find_if(refused_names.begin(), refused_names.end(),
                                  [&](const RefusedName& refused) { return refused.name == id; });
  return found == refused_names.end() ? nullptr : &*found;
}

Problem unknown_analyte(std::string_view name) {
  std::vector<std::string> known;
  for (const Analyte& analyte : analytes()) {
    known.emplace_back(analyte.name);
    known.insert(known.end(), analyte.also.begin(), analyte.also.end());
  }
  for (const Form& form : forms) known.emplace_back(form.name);
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
  // The limits are judgment, set outside published spreads (assumed); those of DE and the net
  // energies are what the TDN limits are worth by the chain of reference/energy.yaml (computed).
  static const std::vector<Analyte> all = {
      {"dm", "dry matter", {"dry_matter"}, "%", 5, 100, 12, 95, PartOf::sample},
      {"cp", "crude protein", {"protein", "crude_protein"}, "%", 0.5, 45, 2, 30},
      {"adicp", "bound protein", {"adf_cp", "bound_protein"}, "%", 0, 20, 0, 5},
      {"adicp_of_cp", "bound protein of protein", {}, "%", 0, 100, 0, 40, PartOf::other},
      {"available_cp", "available protein", {}, "%", 0, 45, 1, 30},
      {"adjusted_cp", "adjusted protein", {"acp", "adj_cp"}, "%", 0, 45, 1, 30},
      {"rdp_of_cp", "degradable protein of protein", {}, "%", 10, 100, 35, 90, PartOf::other},
      {"ndicp", "protein in NDF", {}, "%", 0, 30, 0, 12},
      {"adf", "ADF", {}, "%", 8, 70, 18, 55},
      {"ndf", "NDF", {"andf", "andfom"}, "%", 15, 90, 28, 80},
      {"ndfd48", "digested NDF after 48 hours", {}, "%", 10, 95, 25, 85, PartOf::other},
      {"lignin", "lignin", {"adl"}, "%", 0, 40, 2, 14},
      {"lignin_of_ndf", "lignin of NDF", {}, "%", 0, 50, 3, 25, PartOf::other},
      {"ash", "ash", {}, "%", 0, 40, 4, 12},
      {"fat", "fat", {"ee", "crude_fat", "ether_extract"}, "%", 0, 15, 1, 6},
      {"nfc", "non-fibre carbohydrate", {}, "%", 0, 80, 5, 45},
      {"sugar", "sugar", {"wsc", "esc"}, "%", 0, 50, 0, 30},
      {"starch", "starch", {}, "%", 0, 80, 0, 40},
      {"tdn", "TDN", {}, "%", 25, 90, 40, 80},
      {"domd", "DOMD", {"d_value"}, "%", 20, 95, 35, 85, PartOf::other},
      {"omd", "OMD", {}, "%", 20, 95, 35, 85, PartOf::other},
      {"dmd", "DMD", {}, "%", 20, 95, 35, 85, PartOf::other},
      {"de", "DE", {}, "Mcal/kg", 1.1, 4.0, 1.75, 3.55},
      {"me", "ME", {}, "MJ/kg", 3, 15, 5, 13},
      {"nem", "NEm", {}, "Mcal/kg", 0, 2.25, 0.6, 1.95},
      {"neg", "NEg", {}, "Mcal/kg", -0.5, 1.55, 0.05, 1.3},
      {"nel", "NEl", {}, "Mcal/kg", 0.49, 2.1, 0.86, 1.85},
      {"dp", "digestible protein", {"digestible_protein"}, "%", 0, 40, 0.5, 25},
      {"rfq", "relative forage quality", {}, "", 20, 400, 40, 300, PartOf::other},
      {"rfv", "relative feed value", {}, "", 20, 400, 40, 250, PartOf::other},
      {"ca", "calcium", {"calcium"}, "%", 0.02, 5, 0.15, 2.5},
      {"p", "phosphorus", {"phosphorus"}, "%", 0.01, 1.5, 0.04, 0.60},
      {"mg", "magnesium", {"magnesium"}, "%", 0.01, 2, 0.05, 0.60},
      {"k", "potassium", {"potassium"}, "%", 0.05, 8, 0.2, 5},
      {"s", "sulfur", {"sulfur"}, "%", 0.01, 1.5, 0.05, 0.50},
      // Warned above 700 ppm NO3-N, where the most careful guide begins (reference/nitrate.yaml);
      // refused where no reading has been (assumed).
      {"nitrate_n_ppm", "nitrate N", {"nitrate_n", "no3_n_ppm"}, "ppm", 0, 30000, 0, 700},
  };
  return all;
}

const Analyte* find_analyte(std::string_view name) {
  const auto found = std::find_if(analytes().begin(), analytes().end(),
                                  [&](const Analyte& a) { return a.name == name; });
  return found == analytes().end() ? nullptr : &*found;
}

std::vector<OtherName> other_names() {
  std::vector<OtherName> names;
  for (const Form& form : forms) names.push_back({form.name, form.unit});
  for (const RefusedName& refused : refused_names) names.push_back({refused.name, ""});
  return names;
}

std::string_view analyte_named(std::string_view name) {
  const std::string id = as_id(name);
  if (const Form* form = find_form(id)) return form->analyte;
  const Analyte* analyte = find_by_any_name(id);
  return analyte == nullptr ? std::string_view() : analyte->name;
}

std::optional<Problem> refuse_analyte(std::string_view name) {
  if (const RefusedName* refused = find_refused(as_id(name)))
    return input_problem(std::string(refused->what), std::string(refused->remedy));
  if (analyte_named(name).empty()) return unknown_analyte(name);
  return std::nullopt;
}

Result<TypedValue> parse_analyte(std::string_view name, std::string_view text) {
  if (auto refused = refuse_analyte(name)) return *std::move(refused);
  const std::string id = as_id(name);
  if (const Form* form = find_form(id)) {
    const Result<double> figure = parse_figure(form->in_words, form->unit, text);
    if (!figure) return figure.problems();
    return TypedValue{std::string(form->analyte), form->to_analyte(*figure)};
  }
  const Analyte* analyte = find_by_any_name(id);
  const Result<double> figure = parse_figure(analyte->in_words, analyte->unit, text);
  if (!figure) return figure.problems();
  return TypedValue{std::string(analyte->name), *figure};
}

bool reads_back_plain(const Analyte& analyte, double figure) {
  return may_stand_plain(analyte.unit, figure);
}

std::optional<Problem> keep_figure(std::map<std::string, double>& figures,
                                   const TypedValue& value) {
  const auto [there, fresh] = figures.emplace(value.analyte, value.percent);
  const double apart = std::abs(there->second - value.percent);
  const double rounding = std::max(0.1, std::abs(there->second) / 100);
  if (fresh || apart <= rounding) return std::nullopt;
  const Analyte& analyte = *find_analyte(value.analyte);
  return input_problem(
      fmt::format("{} is given as {} {} and as {} {}", analyte.in_words, said(there->second),
                  analyte.unit, said(value.percent), analyte.unit),
      "look at the laboratory's page again and write the figure once");
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
