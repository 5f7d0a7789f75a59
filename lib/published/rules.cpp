#include "published/rules.h"

#include <algorithm>

#include "published/bundled.h"

namespace pluckbook {

namespace {

IntakeGuidance read_guidance(std::string_view id) {
  const Bundled entry = Bundled::topic("intake").at("guidance").with_id(id);
  return {entry.at("tdn_percent").numbers(), entry.at("dry").numbers(),
          entry.at("milking").numbers(), citation_of(entry)};
}

IntakeRules read_intake_rules() {
  const Bundled file = Bundled::topic("intake");
  const Bundled nrc = file.at("nrc_equation");
  const Bundled limits = file.at("limits");
  auto limit = [&](std::string_view id) { return limits.with_id(id).number("value"); };
  IntakeRules rules{};
  rules.nrc_square = nrc.number("square");
  rules.nrc_open = nrc.number("open");
  rules.nrc_bred = nrc.number("bred");
  rules.nrc_milk = nrc.number("milk");
  rules.gut_ndf_percent_bw = limit("gut_ndf_percent_bw");
  rules.cp_floor_percent = limit("cp_floor_percent");
  rules.cp_drop_percent = limit("cp_drop_percent");
  rules.cp_low_percent = limit("cp_low_percent");
  rules.low_intake_percent_bw = limit("low_intake_percent_bw");
  rules.tdn_cp_ratio = limit("tdn_cp_ratio");
  rules.source = nrc.text("source");
  for (const Bundled& entry : limits.items()) {
    const std::string source = entry.text("source");
    if (rules.source.find(source) == std::string::npos) rules.source += "; " + source;
  }
  return rules;
}

void read_cubic(const Bundled& entry, double (&into)[4]) {
  const auto numbers = entry.at("cubic").numbers();
  if (numbers.size() != 4) entry.fail("four coefficients are wanted");
  std::copy(numbers.begin(), numbers.end(), into);
}

EnergyChain read_chain() {
  const Bundled file = Bundled::topic("energy");
  const Bundled steps = file.at("chain");
  EnergyChain chain{};
  chain.de_per_tdn = steps.at("de_mcal_per_kg_tdn").number("value");
  chain.me_per_de = steps.at("me_of_de").number("value");
  read_cubic(steps.at("nem"), chain.nem);
  read_cubic(steps.at("neg"), chain.neg);
  chain.printed_tdn_divisor = file.at("printed_tdn_divisor").number("value");
  chain.source =
      steps.at("de_mcal_per_kg_tdn").text("source") + "; " + steps.at("nem").text("source");
  return chain;
}

std::vector<FibreEquation> read_fibre_equations() {
  const Bundled file = Bundled::topic("energy");
  const auto range = file.at("adf_range").numbers();
  std::vector<FibreEquation> equations;
  for (const Bundled& entry : file.at("fibre_equations").items()) {
    FibreEquation equation;
    equation.id = entry.text("id");
    equation.forage = entry.text("forage");
    equation.status = entry.text("status");
    equation.source = entry.text("source");
    equation.intercept = entry.number("intercept");
    equation.adf = entry.number("adf");
    equation.cp = entry.number_or("cp", 0);
    equation.ndf = entry.number_or("ndf", 0);
    if (entry.has("through_nel")) {  // TDN = first + second x NEl: one line after the other
      const auto line = entry.at("through_nel").numbers();
      equation.intercept = line.at(0) + line.at(1) * equation.intercept;
      equation.adf *= line.at(1);
    }
    equation.adf_low = range.at(0);
    equation.adf_high = range.at(1);
    equation.error_points = file.at("error_points").number("value");
    equations.push_back(std::move(equation));
  }
  return equations;
}

}  // namespace

const IntakeGuidance& intake_guidance_lower() {
  static const auto guidance = read_guidance("lower");
  return guidance;
}

const IntakeGuidance& intake_guidance_higher() {
  static const auto guidance = read_guidance("higher");
  return guidance;
}

const IntakeRules& intake_rules() {
  static const auto rules = read_intake_rules();
  return rules;
}

const EnergyChain& energy_chain() {
  static const auto chain = read_chain();
  return chain;
}

const std::vector<FibreEquation>& fibre_equations() {
  static const auto equations = read_fibre_equations();
  return equations;
}

const FibreEquation& fibre_equation(std::string_view id) {
  for (const FibreEquation& equation : fibre_equations())
    if (equation.id == id) return equation;
  Bundled::topic("energy").fail("no fibre equation " + std::string(id));
}

}  // namespace pluckbook
