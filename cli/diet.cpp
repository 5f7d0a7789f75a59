#include <algorithm>

#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"
#include "cow/need.h"

namespace pluckbook::cli {
namespace {

DietReading reading(const DietSeries& series, DietNutrient nutrient, Date day) {
  return {series.on(nutrient, day), series.linear(nutrient, day), series.cubic(nutrient, day),
          series.class_curve(nutrient, day)};
}

/// The season's first bag: of this calendar year, else the day itself.
Date season_start(const DietSeries& series, Date as_of) {
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

Result<Answer> run_diet(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<const Pasture*> pasture = pasture_named(opened->known, arguments.words[0]);
  if (!pasture) return pasture.problems();
  Result<DietSeries> series = DietSeries::of(opened->known, **pasture);
  if (!series) return series.problems();
  DietAnswer diet;
  diet.series = &*series;
  diet.as_of = opened->as_of;
  diet.first = season_start(*series, opened->as_of);
  diet.until = opened->until;
  diet.crude_protein = reading(*series, DietNutrient::crude_protein, opened->as_of);
  diet.tdn = reading(*series, DietNutrient::tdn, opened->as_of);
  diet.cp_days = series->days(DietNutrient::crude_protein, diet.first, diet.until);
  diet.tdn_days = series->days(DietNutrient::tdn, diet.first, diet.until);
  if (const Herd* herd = herd_there(opened->known, **pasture, opened->as_of)) {
    diet.herd = herd->id;
    for (const DietPoint& point : diet.cp_days) {
      const Result<HerdNeed> need = need_on(*herd, point.date);
      if (need) {
        diet.need.push_back({point.date, need->average.crude_protein, need->average.tdn});
      }
    }
  }
  Answer answer;
  answer.text = in_form_asked(arguments, diet, opened->reader);
  return answer;
}

}  // namespace pluckbook::cli
