#include "published/forage_energy.h"

#include <map>
#include <vector>

#include "published/bundled.h"

namespace pluckbook {
namespace {

Bundled file() {
  return Bundled::topic("forage_energy");
}

SummativeEquation read_summative() {
  const Bundled entry = file().at("summative");
  SummativeEquation equation{};
  equation.id = entry.text("id");
  equation.source = entry.text("source");
  equation.status = entry.text("status");
  equation.nfc = entry.number("nfc");
  equation.bound_protein = entry.number("bound_protein");
  equation.fat_not_fatty = entry.number("fat_not_fatty");
  equation.fat = entry.number("fat");
  equation.fibre = entry.number("fibre");
  equation.lignin_power = entry.number("lignin_power");
  equation.less = entry.number("less");
  equation.error_points = entry.number("error_points");
  return equation;
}

std::vector<DigestedFibreEquation> read_digested_fibre() {
  const double error = file().at("digested_fibre_error").number("error_points");
  std::vector<DigestedFibreEquation> all;
  for (const Bundled& entry : file().at("digested_fibre").items()) {
    const auto ndfd = entry.at("ndfd").numbers();
    if (ndfd.size() != 2) entry.fail("two coefficients of NDFD are wanted");
    all.push_back({entry.text("id"), entry.text("source"), entry.text("status"),
                   entry.number("nfc"), entry.number("protein"), entry.number("fat"),
                   entry.number("less"), ndfd[0], ndfd[1], entry.number("free_of_protein") != 0,
                   error});
  }
  return all;
}

std::vector<DigestibilityLine> read_digestibility() {
  const double error = file().at("digestibility_error").number("error_points");
  std::vector<DigestibilityLine> all;
  for (const Bundled& entry : file().at("digestibility").items())
    all.push_back({entry.text("id"), entry.text("source"), entry.text("status"),
                   entry.number("intercept"), entry.number("slope"), error});
  return all;
}

NetEnergyLine read_nel() {
  const Bundled entry = file().at("nel_to_tdn");
  return {entry.number("intercept"), entry.number("slope"),
          file().at("net_energy_error").number("error_points"), entry.text("source"),
          entry.text("status")};
}

SummativeDe read_summative_de() {
  const Bundled entry = file().at("summative_de");
  return {entry.number("nfc"),  entry.number("fibre"), entry.number("protein"), entry.number("fat"),
          entry.number("less"), entry.text("source"),  entry.text("status")};
}

StraightNetEnergy read_straight_net_energy() {
  const Bundled entry = file().at("straight_net_energy");
  return {entry.number("slope"), entry.number("nem_less"), entry.number("neg_less"),
          entry.text("source"), entry.text("status")};
}

std::vector<DigestibleProteinLine> read_digestible_protein() {
  std::vector<DigestibleProteinLine> all;
  for (const Bundled& entry : file().at("digestible_protein").items())
    all.push_back({entry.text("id"), entry.text("source"), entry.text("status"),
                   entry.number("slope"), entry.number("less")});
  return all;
}

EnergyChoice read_choice(std::string_view kind) {
  const Bundled entry = file().at("kinds").with_id(kind);
  return {std::string(kind), entry.text("digested_fibre"), entry.text("fibre"),
          entry.number("ash")};
}

std::map<std::string, EnergyChoice, std::less<>> read_choices() {
  std::map<std::string, EnergyChoice, std::less<>> choices;
  const Bundled kinds = file().at("kind_of");
  for (const std::string& forage : kinds.keys()) choices[forage] = read_choice(kinds.text(forage));
  return choices;
}

template <class Equation>
const Equation& with_id(const std::vector<Equation>& all, std::string_view id) {
  for (const Equation& one : all)
    if (one.id == id) return one;
  file().fail("no equation " + std::string(id));
}

}  // namespace

const SummativeEquation& summative_equation() {
  static const auto equation = read_summative();
  return equation;
}

const DigestedFibreEquation& digested_fibre_equation(std::string_view id) {
  static const auto all = read_digested_fibre();
  return with_id(all, id);
}

double ndf_free_of_protein() {
  static const double share = file().at("ndf_free_of_protein").number("share");
  return share;
}

const DigestibilityLine& digestibility_line(std::string_view id) {
  static const auto all = read_digestibility();
  return with_id(all, id);
}

const NetEnergyLine& nel_line() {
  static const auto line = read_nel();
  return line;
}

const SummativeDe& summative_de() {
  static const auto line = read_summative_de();
  return line;
}

const StraightNetEnergy& straight_net_energy() {
  static const auto line = read_straight_net_energy();
  return line;
}

const std::vector<DigestibleProteinLine>& digestible_protein_lines() {
  static const auto lines = read_digestible_protein();
  return lines;
}

const EnergyChoice& any_forage() {
  static const auto choice = read_choice("unknown");
  return choice;
}

const EnergyChoice& energy_choice(std::string_view forage_class) {
  static const auto choices = read_choices();
  const auto found = choices.find(folded_name(forage_class));
  return found == choices.end() ? any_forage() : found->second;
}

}  // namespace pluckbook
