#include "cli/need_animal.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "book/read.h"

namespace pluckbook::cli {
namespace {

constexpr double days_in_month = 30.5;  // the day a row stands for: reference/requirements_*.yaml
constexpr int last_milking_month = 6;   // weaned after it, as the rows have it

/// A class as it is typed, and the flags that say something about it.
struct ClassWord {
  std::string word;
  CowClass cow_class;
  std::vector<std::string> flags;
};

const std::vector<ClassWord>& class_words() {
  static const std::vector<ClassWord> words = {
      {"mature-cow", CowClass::mature_cow, {"weight", "milk", "month"}},
      {"first-calf-heifer",
       CowClass::first_calf_heifer,
       {"weight", "mature-weight", "milk", "month"}},
      {"bred-heifer", CowClass::bred_heifer, {"weight", "mature-weight", "month", "days-pregnant"}},
      {"growing", CowClass::growing, {"weight", "mature-weight", "gain"}},
      {"bull", CowClass::bull, {"weight", "mature-weight", "gain"}}};
  return words;
}

Result<const ClassWord*> class_asked(const Arguments& arguments) {
  const std::string asked = arguments.get("class", "mature-cow");
  std::vector<std::string> known;
  for (const ClassWord& one : class_words()) {
    if (one.word == asked) return &one;
    known.push_back(one.word);
  }
  return usage_problem(fmt::format("unknown class '{}'", shown(asked)), suggestion(asked, known));
}

/// A flag that would be read and change nothing is a slip.
std::optional<Problem> flag_of_another_class(const Arguments& arguments, const ClassWord& its) {
  for (const ClassWord& other : class_words()) {
    for (const std::string& flag : other.flags) {
      const bool known = std::find(its.flags.begin(), its.flags.end(), flag) != its.flags.end();
      if (known || !arguments.has(flag)) continue;
      return usage_problem(fmt::format("--{} says nothing about a {}", flag, its.word),
                           fmt::format("leave it out, or name the class: --class {}", other.word));
    }
  }
  return std::nullopt;
}

template <class Amount>
using Parse = Result<Amount> (*)(const std::string&, UnitSystem);

template <class Amount>
Result<std::optional<Amount>> amount_of(const Arguments& arguments, const char* flag,
                                        Parse<Amount> parse, UnitSystem units) {
  if (!arguments.has(flag)) return std::optional<Amount>();
  Result<Amount> amount = parse(arguments.get(flag), units);
  if (!amount) return amount.problems();
  return std::optional<Amount>(*amount);
}

/// What the flags say, before it is known at which points it is asked.
struct Told {
  std::optional<KgBody> weight, mature_weight;
  std::optional<KgPerDay> milk, gain;
};

Result<Told> told_by(const Arguments& arguments, UnitSystem units) {
  const auto weight = amount_of<KgBody>(arguments, "weight", parse_weight, units);
  if (!weight) return weight.problems();
  const auto mature = amount_of<KgBody>(arguments, "mature-weight", parse_weight, units);
  if (!mature) return mature.problems();
  const auto milk = amount_of<KgPerDay>(arguments, "milk", parse_milk, units);
  if (!milk) return milk.problems();
  const auto gain = amount_of<KgPerDay>(arguments, "gain", parse_gain, units);
  if (!gain) return gain.problems();
  return Told{*weight, *mature, *milk, *gain};
}

/// Whole months, all of them where none is named.
Result<std::vector<int>> months_asked(const Arguments& arguments, int last,
                                      const std::string& counted_from) {
  Result<double> month = arguments.number("month", 0);
  if (!month) return month.problems();
  const int only = static_cast<int>(*month);
  if (arguments.has("month") && (only < 1 || only > last || only != *month)) {
    return arguments.beyond("month", fmt::format("1 to {}", last),
                            "count whole months since " + counted_from);
  }
  if (arguments.has("month")) return std::vector<int>{only};
  std::vector<int> all;
  for (int month_number = 1; month_number <= last; ++month_number) all.push_back(month_number);
  return all;
}

Result<AskedAnimal> cow_asked(const Arguments& arguments, const Reader& reader, AnimalAt cow,
                              const std::string& who) {
  const auto months = months_asked(arguments, 12, "calving");
  if (!months) return months.problems();
  AskedAnimal asked{
      fmt::format("Need of a {} of {}, {} of milk at peak, by month since calving "
                  "(end of month).",
                  who, mass(cow.weight.value(), reader), mass(cow.peak_milk.value(), reader)),
      {}};
  for (const int month : *months) {
    cow.days_since_calving = month * days_in_month;
    cow.milking = month <= last_milking_month;
    asked.points.push_back({MonthSinceCalving{month}, cow.milking ? "milking" : "dry", cow});
  }
  return asked;
}

Result<AskedAnimal> bred_asked(const Arguments& arguments, const Reader& reader, AnimalAt heifer) {
  AskedAnimal asked{fmt::format("Need of a bred heifer, mature weight of {}, by {} of pregnancy.",
                                mass(heifer.mature_weight->value(), reader),
                                arguments.has("days-pregnant") ? "day" : "month"),
                    {}};
  if (arguments.has("days-pregnant")) {
    if (arguments.has("month")) {
      return usage_problem("--month and --days-pregnant are both given", "write one of them");
    }
    const auto days = arguments.number("days-pregnant", 0);
    if (!days) return days.problems();
    if (*days < 1 || *days > 283) {
      return arguments.beyond("days-pregnant", "1 to 283", "count days since she was bred");
    }
    heifer.days_since_calving = *days;
    asked.points.push_back({DayOfPregnancy{*days}, "bred heifer", heifer});
    return asked;
  }
  const auto months = months_asked(arguments, 9, "she was bred");
  if (!months) return months.problems();
  for (const int month : *months) {
    heifer.days_since_calving = month * days_in_month;
    asked.points.push_back({MonthOfPregnancy{month}, "bred heifer", heifer});
  }
  return asked;
}

/// The gains to show: the one asked for, none of a bull, else those of the table.
std::vector<KgPerDay> gains_asked(const Told& told, const Reader& reader, CowClass cow_class) {
  if (told.gain) return {*told.gain};
  if (cow_class == CowClass::bull) return {KgPerDay(0)};
  const KgPerDay step = reader.units == UnitSystem::us ? from_lb<KgPerDay>(0.5) : KgPerDay(0.25);
  const KgPerDay most = from_lb<KgPerDay>(2.51);  // the last row of most weights, and a hair
  std::vector<KgPerDay> gains;
  for (int i = 1; step * i <= most; ++i) gains.push_back(step * i);
  return gains;
}

AskedAnimal gaining_asked(const Told& told, const Reader& reader, AnimalAt animal) {
  const bool bull = animal.cow_class == CowClass::bull;
  AskedAnimal asked{
      fmt::format("Need of a {} of {}, mature weight of {}, by daily gain.",
                  bull ? "bull" : "growing animal", mass(animal.weight.value(), reader),
                  mass(animal.mature_weight->value(), reader)),
      {}};
  for (const KgPerDay gain : gains_asked(told, reader, animal.cow_class)) {
    animal.gain = gain;
    asked.points.push_back({DailyGain{gain}, bull ? "bull" : "growing", animal});
  }
  return asked;
}

}  // namespace

Result<AskedAnimal> animal_asked(const Arguments& arguments, const Reader& reader) {
  const Result<const ClassWord*> its = class_asked(arguments);
  if (!its) return its.problems();
  if (auto slip = flag_of_another_class(arguments, **its)) return *std::move(slip);
  const Result<Told> told = told_by(arguments, reader.units);
  if (!told) return told.problems();
  if (!told->weight && !told->mature_weight) {
    return usage_problem("need a herd of the book, or --weight",
                         "for example: pluckbook need --weight 1200 --milk 20 --month 2");
  }
  AnimalAt animal;
  animal.cow_class = (*its)->cow_class;
  animal.peak_milk = told->milk.value_or(from_lb<KgPerDay>(20));
  switch (animal.cow_class) {
    case CowClass::mature_cow:
      animal.weight = *told->weight;
      return cow_asked(arguments, reader, animal, "mature cow");
    case CowClass::first_calf_heifer:
      animal.weight = told->mature_weight ? *told->mature_weight : *told->weight;
      animal.mature_weight = animal.weight;
      return cow_asked(arguments, reader, animal, "first-calf heifer, mature weight");
    case CowClass::bred_heifer:
      animal.weight = told->mature_weight ? *told->mature_weight : *told->weight;
      animal.mature_weight = animal.weight;
      return bred_asked(arguments, reader, animal);
    case CowClass::growing:
    case CowClass::bull:
      break;
  }
  const bool bull = animal.cow_class == CowClass::bull;
  if (!told->weight || (!bull && !told->mature_weight)) {
    return usage_problem(
        bull ? "a bull needs --weight" : "growing cattle need --weight and --mature-weight",
        bull ? "for example: pluckbook need --class bull --weight 1900"
             : "for example: pluckbook need --class growing --weight 600 --mature-weight 1200 "
               "--gain 1.5");
  }
  animal.weight = *told->weight;
  animal.mature_weight = told->mature_weight.value_or(from_lb<KgBody>(2000));
  return gaining_asked(*told, reader, animal);
}

}  // namespace pluckbook::cli
