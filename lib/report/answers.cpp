#include "report/answers.h"

namespace pluckbook {
namespace {

DietReading reading(const DietSeries& series, DietNutrient nutrient, Date day) {
  return {series.on(nutrient, day), series.linear(nutrient, day), series.cubic(nutrient, day),
          series.class_curve(nutrient, day)};
}

/// The season's first bag: of this calendar year, else the day itself.
Date first_shown(const DietSeries& series, Date as_of) {
  for (const BagReading& bag : series.bags()) {
    if (bag.used && bag.bag->plucked.year() == as_of.year()) return bag.bag->plucked;
  }
  return as_of;
}

const Herd* herd_there(const Book& book, const Pasture& pasture, Date day) {
  for (const Herd& herd : book.herds) {
    const Move* move = move_of(book, herd.id, day);
    if (move != nullptr && move->pasture == pasture.id) return &herd;
  }
  return nullptr;
}

}  // namespace

DietAnswer diet_answer(const Book& book, const DietSeries& series, const OutlookSettings& settings,
                       const HerdOutlook* at_hand) {
  DietAnswer diet;
  diet.series = &series;
  diet.as_of = settings.as_of;
  diet.first = first_shown(series, settings.as_of);
  diet.until = settings.until;
  diet.crude_protein = reading(series, DietNutrient::crude_protein, settings.as_of);
  diet.tdn = reading(series, DietNutrient::tdn, settings.as_of);
  diet.cp_days = series.days(DietNutrient::crude_protein, diet.first, diet.until);
  diet.tdn_days = series.days(DietNutrient::tdn, diet.first, diet.until);
  const Herd* herd = herd_there(book, series.pasture(), settings.as_of);
  if (herd == nullptr) return diet;
  diet.herd = herd->id;
  for (const DietPoint& point : diet.cp_days) {
    const Result<HerdNeed> need = need_on(*herd, point.date);
    if (need) diet.need.push_back({point.date, need->average.crude_protein, need->average.tdn});
  }
  if (at_hand != nullptr && at_hand->herd == herd && at_hand->moves_ahead.empty()) {
    diet.outlook = at_hand->nutrients;
    return diet;
  }
  // What is asked is this pasture: the herd is read as if it stayed.
  Book staying = book;
  std::erase_if(staying.moves, [&](const Move& move) { return move.date > settings.as_of; });
  if (Result<HerdOutlook> outlook = outlook_of(staying, *find_herd(staying, herd->id), settings)) {
    diet.outlook = std::move(outlook->nutrients);
  }
  return diet;
}

}  // namespace pluckbook
