// values.h - how one value of the book is read from its text: ids, dates, numbers and quantities
// with their units. A plain number is in the book's own unit; a unit written out wins.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "base/text.h"
#include "base/units.h"
#include "book/records.h"
#include "book/schema.h"

namespace pluckbook {

/// What the book says of its own units.
struct Dialect {
  UnitSystem units = UnitSystem::us;
  std::string currency = "USD";
};

/// A kind of value: what it is called, how it looks when well written, and how its text is read
/// into the program's own units. `name` is the key's, for messages; Problems come without a place.
template <class T>
struct Value {
  std::string_view kind;     // "weight": what a schema may say of it
  std::string_view example;  // "1250 lb"
  std::function<Result<T>(const Dialect&, std::string_view name, std::string_view text)> parse;
  std::vector<std::string> choices = {};  // of a choice
  std::optional<Bounds> bounds = {};      // of a number without a unit
};

/// Text of at most 200 characters.
Value<std::string> text_value(std::string_view example);
/// Letters, digits, '-' and '_', at most 40: ids name files and stand on bag tags.
Value<std::string> id_value(std::string_view example);
Value<Date> date_value(std::string_view example);
/// "04-20".
Value<std::pair<int, int>> month_day_value(std::string_view example);
Value<bool> yes_no_value();
Value<int> whole_value(std::string_view example, int low, int high);
Value<double> number_value(std::string_view example, double low, double high);
/// Written in percent, with or without the sign; the percent itself.
Value<double> percent_value(std::string_view example, double low, double high);
/// Written in percent; the fraction.
Value<double> share_value(std::string_view example, double low, double high);
/// Written in parts per million, with or without "ppm"; the number itself.
Value<double> ppm_value(std::string_view example, double low, double high);
/// Written so; the fraction.
Value<double> ppm_share_value(std::string_view example, double low, double high);
/// Plain, or with the book's currency: "18.00", "18 USD".
Value<double> money_value(std::string_view example);
Value<KgBody> weight_value(std::string_view example);         // 20 to 2000 kg
Value<KgPerDay> milk_value(std::string_view example);         // 0 to 40 kg/day
Value<KgPerDay> gain_value(std::string_view example);         // 0 to 3 kg/day
Value<KgAsFedPerDay> as_fed_value(std::string_view example);  // 0 to 50 kg/day
Value<double> hectares_value(std::string_view example);
/// Metres of a walk: "1 mile", 10 m to 100 km.
Value<double> metres_value(std::string_view example);
/// Kilograms on a truck: "24 ton".
Value<double> load_value(std::string_view example);

/// One of some words; '-', '_' and spaces count alike.
template <class T>
Value<T> choice_value(std::string_view example, std::vector<std::pair<std::string, T>> choices);

/// A number with a unit, as written: "355 USD/ton" is {355, "USD/ton"}; "12" is {12, ""}.
struct WrittenQuantity {
  double number = 0;
  std::string unit;
};
Result<WrittenQuantity> written_quantity(std::string_view name, std::string_view text);

/// Kilograms in a unit of mass: "lb", "50 lb", "cwt", "ton" (2000 lb), "tonne", "kg".
std::optional<double> kg_in(std::string_view unit);

/// The words of a name with '-', '_' and spaces taken as one: "Range-cube 20" -> "range_cube_20".
std::string as_id(std::string_view name);

/// Whether two ids are the same by as_id.
bool same_id(std::string_view a, std::string_view b);

/// A number as it is said in a message, to three or more digits: 0.5, 45.2, 3527.
std::string said(double number);

/// Which of the known words a text names.
Result<std::size_t> parse_choice(std::string_view name, std::string_view text,
                                 const std::vector<std::string>& known);

template <class T>
Value<T> choice_value(std::string_view example, std::vector<std::pair<std::string, T>> choices) {
  std::vector<std::string> words;
  for (const auto& choice : choices) words.push_back(choice.first);
  return {"choice", example,
          [choices = std::move(choices), words](const Dialect&, std::string_view name,
                                                std::string_view text) -> Result<T> {
            const Result<std::size_t> index = parse_choice(name, text, words);
            if (!index) return index.problems();
            return choices[*index].second;
          },
          words};
}

}  // namespace pluckbook
