#include "advice/herd_day.h"

#include <fmt/format.h>

#include <algorithm>

namespace pluckbook {
namespace {

std::string which_first(const DayBalance& day, bool bare) {
  if (bare) return "energy first: the pasture is grazed short, so quality is not the trouble";
  const std::string ratio = fmt::format("TDN:CP is {:.1f}", day.tdn_cp_ratio);
  const bool protein = day.crude_protein.gap() > KgPerDay(0);
  const bool energy = day.tdn.gap() > KgPerDay(0);
  if (!protein && !energy) return "";
  if (day.protein_first) {
    return ratio +
           ": protein first (over 7, or under the rumen's 7 % CP: Moore et al. 1999; "
           "Sprinkle, Arizona)";
  }
  if (protein && !energy) return ratio + ": protein alone is short, energy is met";
  if (energy && !protein) return ratio + ": energy alone is short, protein is met";
  return ratio +
         ": both are short; with a ratio under 7 expect some grass left (Moore et al. 1999)";
}

}  // namespace

Result<Whereabouts> grazing_of(const Book& book, const Herd& herd, Date day) {
  const Move* move = move_of(book, herd.id, day);
  const Pasture* pasture = move == nullptr ? nullptr : find_pasture(book, move->pasture);
  if (pasture == nullptr) {
    return input_problem(
        fmt::format("herd '{}' is on no pasture on {}", herd.id, to_iso(day)),
        fmt::format("say where it is:  pluckbook move {} PASTURE --date {}", herd.id, to_iso(day)));
  }
  return Whereabouts{move, pasture};
}

std::vector<const Pasture*> pastures_of(const Book& book, const Herd& herd) {
  std::vector<const Pasture*> pastures;
  for (const Move& move : book.moves) {
    if (move.herd != herd.id) continue;
    const Pasture* pasture = find_pasture(book, move.pasture);
    const bool told = std::find(pastures.begin(), pastures.end(), pasture) != pastures.end();
    if (pasture != nullptr && !told) pastures.push_back(pasture);
  }
  return pastures;
}

Result<HerdDay> herd_day(const Herd& herd, const Whereabouts& grazing, const DietSeries& series,
                         Date day) {
  Result<HerdNeed> need = need_on(herd, day);
  if (!need) return need.problems();
  HerdDay out;
  out.herd = &herd;
  out.grazing = grazing;
  out.need = std::move(*need);
  for (const Slice& slice : out.need.slices) {
    Result<EquationNeed> one = need_by_equations(animal_of(herd, slice));
    if (!one) return one.problems();
    out.by_equations.push_back(std::move(*one));
  }
  out.diet.crude_protein = series.on(DietNutrient::crude_protein, day).median;
  out.diet.tdn = series.on(DietNutrient::tdn, day).median;
  const Diet roomy = out.diet;
  if (const FootedResult* newest = series.newest_result(day)) out.diet.ndf = newest->ndf;
  out.lead = balance_of(herd, out.need, out.diet, leading_rule(herd));
  out.low = balance_of(herd, out.need, out.diet, IntakeRule::nrc_equation);
  out.high = balance_of(herd, out.need, roomy, IntakeRule::guidance_higher);
  out.first_short = which_first(out.lead, grazing.move->bare);
  return out;
}

Result<HerdDay> herd_day(const Book& book, const Herd& herd, Date day) {
  const Result<Whereabouts> grazing = grazing_of(book, herd, day);
  if (!grazing) return grazing.problems();
  const Result<DietSeries> series = DietSeries::of(book, *grazing->pasture);
  if (!series) return series.problems();
  return herd_day(herd, *grazing, *series, day);
}

std::optional<EnergyBothWays> energy_both_ways(const Need& need, Share diet_tdn) {
  if (need.neg.value() > 0) return std::nullopt;
  EnergyBothWays energy{need.nem / need.intake, nem_of(diet_tdn)};
  energy.short_by_tdn = diet_tdn < need.tdn;
  energy.short_by_nem = energy.held < energy.needed;
  return energy;
}

}  // namespace pluckbook
