#include "book/two_columns.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "book/lab_values.h"
#include "book/values.h"

namespace pluckbook {
namespace {

enum class Column { unmarked, as_received, dry_matter };

/// The mark a unit begins with, taken off it: "dm Mcal/lb" -> "Mcal/lb".
Column take_mark(std::string& unit) {
  const std::size_t end = std::min(unit.find(' '), unit.size());
  const std::string mark = as_id(unit.substr(0, end));
  if (mark != "ar" && mark != "dm") return Column::unmarked;
  unit = std::string(trimmed(std::string_view(unit).substr(end)));
  return mark == "ar" ? Column::as_received : Column::dry_matter;
}

/// The two halves of "9.5 ar / 10.4 dm Mcal/lb".
struct Halves {
  double first = 0, second = 0;
  Column first_column = Column::unmarked, second_column = Column::unmarked;
  std::string unit;
};

std::optional<Halves> halves_of(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  Result<WrittenQuantity> first = written_quantity("", text.substr(0, slash));
  Result<WrittenQuantity> second = written_quantity("", text.substr(slash + 1));
  if (!first || !second) return std::nullopt;
  Halves halves{first->number, second->number, take_mark(first->unit), take_mark(second->unit), {}};
  if (!first->unit.empty()) return std::nullopt;  // "0.5 Mcal/lb": the stroke is the unit's
  halves.unit = second->unit;
  return halves;
}

Problem marks_contradict(std::string_view name) {
  return input_problem(
      fmt::format("{}: the as-received figure is never over the dry-matter one", shown(name)),
      "look at the heads of the page's two columns again");
}

}  // namespace

std::optional<Result<BothColumns>> both_columns(std::string_view name, std::string_view text) {
  const std::optional<Halves> halves = halves_of(text);
  if (!halves) return std::nullopt;
  const auto figure = [&](double number) {
    return parse_analyte(name, shortest(number) + " " + halves->unit);
  };
  const Result<TypedValue> first = figure(halves->first), second = figure(halves->second);
  if (!first) return first.problems();
  if (!second) return second.problems();
  const bool unmarked =
      halves->first_column == Column::unmarked && halves->second_column == Column::unmarked;
  const bool turned = halves->first_column == Column::dry_matter ||
                      halves->second_column == Column::as_received ||
                      (unmarked && second->percent < first->percent);
  BothColumns both{first->analyte, first->percent, second->percent};
  if (turned) std::swap(both.as_received, both.dry_matter);
  if (both.as_received > both.dry_matter) return Problems{marks_contradict(name)};
  return both;
}

std::optional<Problem> columns_disagree(const BothColumns& figure, double dry_matter) {
  const double expected = figure.dry_matter * dry_matter / 100;
  // A page prints one decimal, or two of a small figure (judgement, with the 1 % of cross-checks).
  const double rounding = figure.dry_matter < 2 ? 0.011 : 0.11;
  if (std::abs(figure.as_received - expected) <= std::max(rounding, expected / 100))
    return std::nullopt;
  const Analyte& analyte = *find_analyte(figure.analyte);
  return input_problem(
      fmt::format("{} of {} as received and {} on dry matter do not go with {} % dry matter, which "
                  "makes {} of {}",
                  analyte.in_words, shortest(figure.as_received), shortest(figure.dry_matter),
                  shortest(dry_matter), fixed(expected, figure.dry_matter < 2 ? 2 : 1),
                  shortest(figure.dry_matter)),
      "one of the three was misread: look at the page's row again");
}

}  // namespace pluckbook
