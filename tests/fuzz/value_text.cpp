// Dates, numbers, units and words as they stand in a book or on the command line.
#include <cmath>

#include "base/date.h"
#include "book/read.h"
#include "book/values.h"
#include "fuzz/properties.h"

namespace pluckbook::fuzz {
namespace {

template <class T>
void try_value(const Value<T>& value, const std::string& text) {
  const Result<T> read = value.parse({}, "value", text);
  if (!read) require_useful(read.problems());
}

void read(const std::string& text) {
  if (const auto number = parse_number(text)) {
    require(std::isfinite(*number), "a number is finite", text);
    require(parse_number(shortest(*number)) == *number, "a number reads back the same", text);
  }
  if (const auto date = parse_date(text)) require(to_iso(*date) == text, "so does a date", text);
  require_printable(shown(text));
  try_value(text_value("a"), text);
  try_value(id_value("a"), text);
  try_value(date_value("2026-07-06"), text);
  try_value(month_day_value("04-20"), text);
  try_value(yes_no_value(), text);
  try_value(whole_value("1", 1, 500), text);
  try_value(share_value("5", 0, 100), text);
  try_value(money_value("18 USD"), text);
  try_value(weight_value("1250 lb"), text);
  try_value(milk_value("22 lb/day"), text);
  try_value(gain_value("2 lb/day"), text);
  try_value(as_fed_value("1 lb/day"), text);
  try_value(hectares_value("640 acre"), text);
  try_value(load_value("24 ton"), text);
  const Result<KgBody> weight = parse_weight(text, UnitSystem::us);
  if (!weight) require_useful(weight.problems());
}

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  pluckbook::fuzz::read(pluckbook::fuzz::text_of(data, size));
  return 0;
}
