// figures.h - the figures of a line of arithmetic in the reader's units, with the decimals each
// kind is worth.
#pragma once

#include <string>

#include "advice/workings.h"
#include "report/shown.h"

namespace pluckbook {

/// The unit a figure is shown in: "lb", "%", "Mcal/kg"; empty for a bare number.
std::string unit_of(const Figure& figure, const Reader& reader);
double in_reader_units(const Figure& figure, const Reader& reader);

/// "24.057 lb". A number that has all the decimals of its kind is rounded (3; 4 of Mcal/kg; 5 of a
/// bare number and of a kilogram); one that has fewer is exact.
std::string figure_text(const Figure& figure, const Reader& reader);

/// The formula of a line with its numbers in it: "24.057 lb x 8.388 %".
std::string numbers_text(const WorkingsLine& line, const Reader& reader);

}  // namespace pluckbook
