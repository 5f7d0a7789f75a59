// Dates, numbers, units and words as they stand in a book or on the command line.
#include <cmath>
#include <tuple>

#include "base/date.h"
#include "book/read.h"
#include "book/values.h"
#include "fuzz/properties.h"

namespace pluckbook::fuzz {
namespace {

template <class... Values>
void try_values(const std::tuple<Values...>& values, const std::string& text) {
  const auto read = [&](const auto& value) {
    const auto parsed = value.parse({}, "value", text);
    if (!parsed) require_useful(parsed.problems());
  };
  std::apply([&](const auto&... value) { (read(value), ...); }, values);
}

void read(const std::string& text) {
  if (const auto number = parse_number(text)) {
    require(std::isfinite(*number), "a number is finite", text);
    require(parse_number(shortest(*number)) == *number, "a number reads back the same", text);
  }
  if (const auto date = parse_date(text)) require(to_iso(*date) == text, "so does a date", text);
  require_printable(shown(text));
  static const auto words =
      std::tuple(text_value("a"), id_value("a"), date_value("2026-07-06"), month_day_value("04-20"),
                 yes_no_value(), whole_value("1", 1, 500));
  static const auto quantities =
      std::tuple(share_value("5", 0, 100), money_value("18 USD"), weight_value("1250 lb"),
                 milk_value("22 lb/day"), gain_value("2 lb/day"), as_fed_value("1 lb/day"),
                 hectares_value("640 acre"), load_value("24 ton"));
  try_values(words, text);
  try_values(quantities, text);
  const Result<KgBody> weight = parse_weight(text, UnitSystem::us);
  if (!weight) require_useful(weight.problems());
}

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  pluckbook::fuzz::read(pluckbook::fuzz::text_of(data, size));
  return 0;
}
