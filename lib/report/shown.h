// shown.h - amounts in the reader's units. The only floor that turns kilograms into pounds.
#pragma once

#include <string>

#include "base/date.h"
#include "base/units.h"
#include "book/records.h"
#include "published/forage_classes.h"

namespace pluckbook {

/// How a reader wants amounts shown.
struct Reader {
  UnitSystem units = UnitSystem::us;
  std::string currency = "USD";
  int width = 80;  // columns: a terminal's own, 80 anywhere else
};

std::string mass_unit(const Reader& reader);  // lb or kg
double in_mass_unit(double kilograms, const Reader& reader);
/// Money per mass unit from money per kg.
double per_mass_unit(double per_kilogram, const Reader& reader);

/// What a seller counts in, as the reader counts: a ton is a tonne to one who thinks in kilograms;
/// bags, bales and bushels stay what they are.
struct SellingUnit {
  std::string word;
  double kg = 0;
};
SellingUnit selling_unit(const Quote& quote, const Reader& reader);

/// A number to three significant figures, at most `most_decimals`: 2.26, 23.1, 0.042.
std::string three_figures(double value, int most_decimals = 2);
/// "2.26 lb"
std::string mass(double kilograms, const Reader& reader);
/// "8.4 %": a share of dry matter, one decimal, since sampling supports no more.
std::string percent(Share share);
/// A chance: "97 in 100". Never 0 or 100: all of a thousand paths and the tail of a curve are no
/// certainty, so these are said "under 1 in 100" and "over 99 in 100".
std::string in_hundred(double probability);

std::string in_words(DietNutrient nutrient);   // "protein", "TDN"
std::string json_name(DietNutrient nutrient);  // "crude_protein", "tdn"

/// "1 herd", "2 herds"
std::string counted(std::size_t count, const std::string& one);

/// First letter large, for the start of a sentence.
std::string sentence(std::string text);

}  // namespace pluckbook
