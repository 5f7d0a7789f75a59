#include "book/values.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "book/read.h"

namespace pluckbook {
namespace {

struct Unit {
  std::string_view name;
  double factor;  // to the unit the program keeps
};

struct Dimension {
  std::string_view us, metric;  // what a plain number is in
  std::vector<Unit> units;
};

const Dimension& mass() {
  static const Dimension units = {"lb", "kg", {{"lb", kg_per_lb}, {"lbs", kg_per_lb}, {"kg", 1}}};
  return units;
}

const Dimension& mass_per_day() {
  static const Dimension units = {
      "lb/day",
      "kg/day",
      {{"lb/day", kg_per_lb}, {"lbs/day", kg_per_lb}, {"lb", kg_per_lb}, {"kg/day", 1}, {"kg", 1}}};
  return units;
}

const Dimension& area() {
  // The international acre is exactly 4046.8564224 m2 (NIST Handbook 44, 2024, appendix C).
  constexpr double ha_per_acre = 0.40468564224;
  static const Dimension units = {
      "acre",
      "ha",
      {{"acre", ha_per_acre}, {"acres", ha_per_acre}, {"ac", ha_per_acre}, {"ha", 1}}};
  return units;
}

const Dimension& length() {
  // The international foot is exactly 0.3048 m (NIST Handbook 44, 2024, appendix C).
  constexpr double m_per_foot = 0.3048;
  static const Dimension units = {"mile",
                                  "km",
                                  {{"mile", 5280 * m_per_foot},
                                   {"miles", 5280 * m_per_foot},
                                   {"yd", 3 * m_per_foot},
                                   {"ft", m_per_foot},
                                   {"km", 1000},
                                   {"m", 1}}};
  return units;
}

const Dimension& load() {
  static const Dimension units = {"ton",
                                  "tonne",
                                  {{"ton", kg_per_us_ton},
                                   {"tons", kg_per_us_ton},
                                   {"lb", kg_per_lb},
                                   {"tonne", kg_per_tonne},
                                   {"tonnes", kg_per_tonne},
                                   {"kg", 1}}};
  return units;
}

std::string number_remedy(std::string_view text) {
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos) return "write a plain number, such as 640.5";
  std::string pointed(text), joined(text);
  pointed[comma] = '.';
  joined.erase(std::remove(joined.begin(), joined.end(), ','), joined.end());
  // "1,250" may be meant either way: both readings are shown, none is picked.
  if (text.size() - comma == 4) {
    return fmt::format("no commas: write {} or {}", shown(joined), shown(pointed));
  }
  return fmt::format("write a point for the decimals: {}", shown(pointed));
}

struct Range {
  double low, high;
};

std::optional<Problem> outside(std::string_view name, double value, Range range,
                               std::string_view unit) {
  if (value >= range.low && value <= range.high) return std::nullopt;
  const std::string after = unit.empty() ? "" : fmt::format(" {}", unit);
  return input_problem(fmt::format("{} {}{} is outside {} to {}{}", name, said(value), after,
                                   said(range.low), said(range.high), after),
                       "check the number and its unit");
}

// The value in the program's unit; the range is in that unit too.
Result<double> quantity(const Dialect& dialect, std::string_view name, std::string_view text,
                        const Dimension& dimension, Range range) {
  const Result<WrittenQuantity> written = written_quantity(name, text);
  if (!written) return written.problems();
  const std::string_view own = dialect.units == UnitSystem::us ? dimension.us : dimension.metric;
  const std::string_view unit = written->unit.empty() ? own : std::string_view(written->unit);
  const auto known = std::find_if(dimension.units.begin(), dimension.units.end(),
                                  [&](const Unit& u) { return u.name == unit; });
  if (known == dimension.units.end()) {
    const std::string number = said(written->number);
    return input_problem(
        fmt::format("{} cannot be in '{}'", name, shown(unit)),
        fmt::format("write {} {} or {} {}", number, dimension.us, number, dimension.metric));
  }
  const Range in_unit = {range.low / known->factor, range.high / known->factor};
  if (auto problem = outside(name, written->number, in_unit, unit)) return *std::move(problem);
  return written->number * known->factor;
}

template <class T>
Value<T> quantity_value(std::string_view kind, std::string_view example, const Dimension& dimension,
                        Range range) {
  return {kind, example,
          [&dimension, range](const Dialect& dialect, std::string_view name,
                              std::string_view text) -> Result<T> {
            const Result<double> value = quantity(dialect, name, text, dimension, range);
            if (!value) return value.problems();
            return T(*value);
          }};
}

// A number that may stand before one unit, or alone.
Result<double> number_in(std::string_view name, std::string_view text, std::string_view unit,
                         Range range) {
  const Result<WrittenQuantity> written = written_quantity(name, text);
  if (!written) return written.problems();
  if (!written->unit.empty() && written->unit != unit) {
    return input_problem(fmt::format("{} cannot be in '{}'", name, shown(written->unit)),
                         fmt::format("write the number alone: {}", said(written->number)));
  }
  if (auto problem = outside(name, written->number, range, unit)) return *std::move(problem);
  return written->number;
}

char as_in_id(char c) {
  if (c == ' ' || c == '-') return '_';
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool is_id_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

Result<std::string> parse_id(const Dialect&, std::string_view name, std::string_view text) {
  constexpr std::size_t most = 40;
  const bool letters = std::all_of(text.begin(), text.end(),
                                   [](char c) { return is_id_letter(c) || c == '-' || c == '_'; });
  if (!letters || text.empty() || !is_id_letter(text.front())) {
    return input_problem(fmt::format("'{}' cannot be an id", shown(text)),
                         "use letters a to z, digits, '-' and '_'; begin with a letter or digit");
  }
  if (text.size() > most) {
    return input_problem(fmt::format("{} is {} letters long; at most {}", name, text.size(), most),
                         "shorten it");
  }
  return std::string(text);
}

Result<std::string> parse_text(const Dialect&, std::string_view name, std::string_view text) {
  constexpr std::size_t most = 200;
  const std::size_t length = code_points(text).size();
  if (length <= most) return std::string(text);
  return input_problem(fmt::format("{} is {} characters long; at most {}", name, length, most),
                       "shorten it");
}

Result<Date> parse_day(const Dialect&, std::string_view name, std::string_view text) {
  if (const auto date = parse_date(text)) return *date;
  const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
  return input_problem(
      fmt::format("{} '{}' is not a date", name, shown(text)),
      shaped ? "there is no such day between 1900 and 2200" : "write year, month, day: 2026-07-06");
}

Result<std::pair<int, int>> parse_month_day(const Dialect&, std::string_view name,
                                            std::string_view text) {
  // 2001 is no leap year: a day that comes every year.
  if (const auto day = parse_date(fmt::format("2001-{}", text))) {
    return std::pair<int, int>(day->month().as_number(), day->day().as_number());
  }
  return input_problem(fmt::format("{} '{}' is not a day of every year", name, shown(text)),
                       "write month and day: 04-20");
}

// The same Problem where the text came from the command line.
template <class T>
Result<T> as_usage(Result<T> parsed) {
  if (parsed) return parsed;
  Problems problems = parsed.problems();
  for (Problem& problem : problems) problem.fault = Fault::usage;
  return problems;
}

}  // namespace

std::string said(double number) {
  const double size = std::abs(number);
  const double scale = size >= 1000 ? 1 : size >= 100 ? 10 : size >= 10 ? 100 : 1000;
  return shortest(std::round(number * scale) / scale);
}

std::string as_id(std::string_view name) {
  std::string id(trimmed(name));
  for (char& c : id) c = as_in_id(c);
  return id;
}

bool same_id(std::string_view a, std::string_view b) {
  return std::equal(a.rbegin(), a.rend(), b.rbegin(), b.rend(),  // ids differ at their ends
                    [](char x, char y) { return as_in_id(x) == as_in_id(y); });
}

std::optional<double> kg_in(std::string_view unit) {
  static constexpr std::array<Unit, 8> units = {{{"lb", kg_per_lb},
                                                 {"lbs", kg_per_lb},
                                                 {"cwt", kg_per_cwt},
                                                 {"ton", kg_per_us_ton},
                                                 {"tons", kg_per_us_ton},
                                                 {"tonne", kg_per_tonne},
                                                 {"tonnes", kg_per_tonne},
                                                 {"kg", 1}}};
  double count = 1;
  const std::size_t space = unit.find(' ');
  if (space != std::string_view::npos) {
    const auto number = parse_number(unit.substr(0, space));
    if (!number || *number <= 0) return std::nullopt;
    count = *number;
    unit = trimmed(unit.substr(space));
  }
  for (const Unit& known : units) {
    if (known.name == unit) return count * known.factor;
  }
  return std::nullopt;
}

Result<WrittenQuantity> written_quantity(std::string_view name, std::string_view text) {
  const std::string_view all = trimmed(text);
  std::size_t end = std::min(all.find_first_not_of("+-0123456789.,"), all.size());
  const auto number = parse_number(all.substr(0, end));
  if (number) return WrittenQuantity{*number, std::string(trimmed(all.substr(end)))};
  end = std::min(all.find(' '), all.size());
  return input_problem(fmt::format("{} '{}' is not a number", name, shown(text)),
                       number_remedy(all.substr(0, end)));
}

Result<std::size_t> parse_choice(std::string_view name, std::string_view text,
                                 const std::vector<std::string>& known) {
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (as_id(known[i]) == as_id(text)) return i;
  }
  return input_problem(fmt::format("{} cannot be '{}'", name, shown(text)),
                       suggestion(text, known));
}

Value<std::string> text_value(std::string_view example) {
  return {"text", example, parse_text};
}
Value<std::string> id_value(std::string_view example) {
  return {"id", example, parse_id};
}
Value<Date> date_value(std::string_view example) {
  return {"date", example, parse_day};
}
Value<std::pair<int, int>> month_day_value(std::string_view example) {
  return {"month and day", example, parse_month_day};
}
Value<bool> yes_no_value() {
  return choice_value<bool>("yes",
                            {{"yes", true}, {"no", false}, {"true", true}, {"false", false}});
}

Value<int> whole_value(std::string_view example, int low, int high) {
  return {"whole number",
          example,
          [=](const Dialect&, std::string_view name, std::string_view text) -> Result<int> {
            const Result<double> number =
                number_in(name, text, "", {static_cast<double>(low), static_cast<double>(high)});
            if (!number) return number.problems();
            if (*number == std::floor(*number)) return static_cast<int>(*number);
            return input_problem(fmt::format("{} {} is not a whole number", name, said(*number)),
                                 "write a whole number");
          },
          {},
          Bounds{static_cast<double>(low), static_cast<double>(high)}};
}

Value<double> number_value(std::string_view example, double low, double high) {
  return {"number",
          example,
          [=](const Dialect&, std::string_view name, std::string_view text) {
            return number_in(name, text, "", {low, high});
          },
          {},
          Bounds{low, high}};
}

Value<double> percent_value(std::string_view example, double low, double high) {
  return {"percent",
          example,
          [=](const Dialect&, std::string_view name, std::string_view text) {
            return number_in(name, text, "%", {low, high});
          },
          {},
          Bounds{low, high}};
}

Value<double> share_value(std::string_view example, double low, double high) {
  return {"percent",
          example,
          [=](const Dialect&, std::string_view name, std::string_view text) -> Result<double> {
            const Result<double> percent = number_in(name, text, "%", {low, high});
            if (!percent) return percent.problems();
            return *percent / 100;
          },
          {},
          Bounds{low, high}};
}

Value<double> ppm_value(std::string_view example, double low, double high) {
  return {"ppm", example, [=](const Dialect&, std::string_view name, std::string_view text) {
            return number_in(name, text, "ppm", {low, high});
          }};
}

Value<double> ppm_share_value(std::string_view example, double low, double high) {
  return {"ppm", example,
          [=](const Dialect&, std::string_view name, std::string_view text) -> Result<double> {
            const Result<double> ppm = number_in(name, text, "ppm", {low, high});
            if (!ppm) return ppm.problems();
            return *ppm / 1e6;
          }};
}

Value<double> money_value(std::string_view example) {
  return {"money",
          example,
          [](const Dialect& dialect, std::string_view name, std::string_view text) {
            return number_in(name, text, dialect.currency, {0, 1e6});
          },
          {},
          Bounds{0, 1e6}};
}

Value<KgBody> weight_value(std::string_view example) {
  return quantity_value<KgBody>("weight", example, mass(), {20, 2000});
}
Value<KgPerDay> milk_value(std::string_view example) {
  return quantity_value<KgPerDay>("weight per day", example, mass_per_day(), {0, 40});
}
Value<KgPerDay> gain_value(std::string_view example) {
  return quantity_value<KgPerDay>("weight per day", example, mass_per_day(), {0, 3});
}
Value<KgAsFedPerDay> as_fed_value(std::string_view example) {
  return quantity_value<KgAsFedPerDay>("weight per day", example, mass_per_day(), {0, 50});
}
Value<double> hectares_value(std::string_view example) {
  return quantity_value<double>("area", example, area(), {0.01, 1e6});
}
Value<double> metres_value(std::string_view example) {
  return quantity_value<double>("length", example, length(), {10, 100'000});
}
Value<double> load_value(std::string_view example) {
  return quantity_value<double>("load", example, load(), {50, 100'000});
}

Result<KgBody> parse_weight(const std::string& text, UnitSystem units) {
  return as_usage(weight_value("1250 lb").parse({units, ""}, "weight", text));
}
Result<double> parse_metres(const std::string& text, UnitSystem units) {
  return as_usage(metres_value("1 mile").parse({units, ""}, "walk", text));
}
Result<KgPerDay> parse_milk(const std::string& text, UnitSystem units) {
  return as_usage(milk_value("22 lb/day").parse({units, ""}, "milk", text));
}
Result<KgPerDay> parse_gain(const std::string& text, UnitSystem units) {
  return as_usage(gain_value("1.5 lb/day").parse({units, ""}, "gain", text));
}

}  // namespace pluckbook
