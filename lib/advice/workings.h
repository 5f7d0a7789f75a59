// workings.h - a herd's day as one would do it on paper. Every line holds the figures that go in,
// the formula, and the result as the structs of need, intake and balance keep it: nothing is
// computed here, so a line that does not add up is an error of the program, and a test does the
// arithmetic of every line to find one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "advice/herd_day.h"

namespace pluckbook {

/// What a figure counts; the printer knows each one's unit and how many decimals it is worth.
enum class Measure {
  weight,          // kg of body weight, shown in the reader's unit
  mass_per_day,    // kg a day, shown in the reader's unit
  share,           // a fraction, shown in percent
  energy,          // Mcal a day
  energy_density,  // Mcal per kg of dry matter
  kilograms,       // stay kilograms: equations are written in them
  kilograms_per_day,
  as_printed,    // a column of a published table, in its own unit
  one_kilogram,  // 2.20462 lb, or 1 kg
  bare,          // parts, ratios, coefficients
};

struct Figure {
  std::string name;
  double value = 0;
  Measure measure = Measure::bare;
  std::string unit = {};  // of as_printed
};

/// One line of arithmetic; a given figure where the formula is empty.
struct WorkingsLine {
  std::string quantity;        // "protein the diet gives"
  std::string words;           // the formula by name: "intake x protein of the diet"; may be empty
  std::string formula;         // "{0} x {1}": each input's place
  std::vector<Figure> inputs;  // numbers put in
  Figure result;
  std::string source;  // empty where the line is plain arithmetic
};

/// A formula with something put into each place: "{0} x {1}" and names, or numbers.
std::string filled(std::string_view formula, const std::vector<std::string>& into);

struct WorkingsSection {
  std::string title;
  std::vector<WorkingsLine> lines;
  std::vector<std::string> notes;  // what the lines decide, in words
};

struct Workings {
  std::string herd, pasture;
  Date date;
  std::vector<WorkingsSection> sections;
};

/// The day's arithmetic: what is given; the need of each slice from its table rows, and the
/// herd's; intake by each rule; supply and gap; which is short first.
Workings workings_of(const HerdDay& day);

}  // namespace pluckbook
