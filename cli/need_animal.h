// need_animal.h - the animal that `need` is asked about by flags, without a book.
#pragma once

#include <string>
#include <vector>

#include "cli/command.h"
#include "cow/need.h"
#include "report/answers.h"

namespace pluckbook::cli {

/// The animal at one point of its year, or at one gain.
struct AskedPoint {
  NeedAt at;
  std::string stage;
  AnimalAt animal;
};

struct AskedAnimal {
  std::string title;
  std::vector<AskedPoint> points;
};

/// From --class, --weight, --mature-weight, --milk, --month, --days-pregnant and --gain. Cows and
/// heifers are told by their mature weight, growing cattle and bulls by the weight they have.
/// Fails: a flag that the class has no use for, one it cannot do without, a figure out of range.
Result<AskedAnimal> animal_asked(const Arguments& arguments, const Reader& reader);

}  // namespace pluckbook::cli
