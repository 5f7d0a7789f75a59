#include "cow/need.h"

#include <fmt/format.h>

#include "base/text.h"
#include "book/read.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

constexpr double days_in_month = 30.5;  // the day a row stands for: reference/requirements_*.yaml

Result<AnimalAt> animal_from(const Arguments& arguments, UnitSystem units) {
  if (!arguments.has("weight")) {
    return usage_problem("need a herd of the book, or --weight",
                         "for example: pluckbook need --weight 1200 --milk 20 --month 2");
  }
  AnimalAt animal;
  Result<KgBody> weight = parse_weight(arguments.get("weight"), units);
  if (!weight) return weight.problems();
  animal.weight = *weight;
  if (arguments.has("milk")) {
    Result<KgPerDay> milk = parse_milk(arguments.get("milk"), units);
    if (!milk) return milk.problems();
    animal.peak_milk = *milk;
  } else {
    animal.peak_milk = from_lb<KgPerDay>(20);
  }
  const std::string word = arguments.get("class", "mature-cow");
  if (word == "first-calf-heifer") {
    animal.cow_class = CowClass::first_calf_heifer;
    animal.mature_weight = animal.weight;
  } else if (word != "mature-cow") {
    return usage_problem(fmt::format("unknown class '{}'", shown(word)),
                         "write mature-cow or first-calf-heifer");
  }
  return animal;
}

Result<NeedAnswer> from_flags(const Arguments& arguments, const Reader& reader) {
  Result<AnimalAt> animal = animal_from(arguments, reader.units);
  if (!animal) return animal.problems();
  Result<double> month = arguments.number("month", 0);
  if (!month) return month.problems();
  const int only = static_cast<int>(*month);
  if (arguments.has("month") && (only < 1 || only > 12 || only != *month)) {
    return usage_problem("--month is outside 1 to 12", "count whole months since calving");
  }
  NeedAnswer answer;
  answer.title = fmt::format(
      "Need of a {} of {}, {} of milk at peak, by month since calving (end of month).",
      animal->cow_class == CowClass::mature_cow ? "mature cow" : "first-calf heifer, mature weight",
      mass(animal->weight.value(), reader), mass(animal->peak_milk.value(), reader));
  for (int m = only == 0 ? 1 : only; m <= (only == 0 ? 12 : only); ++m) {
    animal->days_since_calving = m * days_in_month;
    animal->milking = m <= 6;  // weaned after month 6, as the table has it
    Result<Need> need = need_of(*animal);
    if (!need) return need.problems();
    answer.rows.push_back({m, std::nullopt, animal->milking ? "milking" : "dry", *need, {}});
  }
  return answer;
}

std::string stage_words(const HerdNeed& need) {
  if (need.milking_share > 0.999) return "milking";
  if (need.slices.front().stage != Stage::milking && need.milking_share < 0.001) {
    return std::string(to_string(need.slices.front().stage));
  }
  return fmt::format("{:.0f} % milking", need.milking_share * 100);
}

Result<NeedAnswer> from_book(const Arguments& arguments, const Opened& opened) {
  Result<const Herd*> herd = herd_named(opened.known, arguments.words[0]);
  if (!herd) return herd.problems();
  const Date last = arguments.has("until") ? opened.until : opened.as_of + Days(365);
  NeedAnswer answer;
  answer.title = fmt::format("Need of {} ({} head), average over the herd, per head and day.",
                             (*herd)->id, (*herd)->head);
  for (Date day = opened.as_of; day <= last; day += Days(14)) {
    Result<HerdNeed> need = need_on(**herd, day);
    if (!need) return need.problems();
    answer.rows.push_back(
        {std::nullopt, day, stage_words(*need), need->average, need->hardest_quarter});
  }
  return answer;
}

}  // namespace

Result<Answer> run_need(const Arguments& arguments) {
  Result<NeedAnswer> need = NeedAnswer{};
  Reader reader;
  if (arguments.words.empty()) {
    Result<UnitSystem> units = units_of(arguments, UnitSystem::us);
    if (!units) return units.problems();
    reader.units = *units;
    need = from_flags(arguments, reader);
  } else {
    Result<Opened> opened = open_book(arguments);
    if (!opened) return opened.problems();
    reader = opened->reader;
    need = from_book(arguments, *opened);
  }
  if (!need) return need.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *need, reader);
  return answer;
}

}  // namespace pluckbook::cli
