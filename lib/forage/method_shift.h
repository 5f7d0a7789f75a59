// method_shift.h - which bags of a pasture have their TDN got another way than the rest, and what
// that alone is worth: a constant bias moves a shortfall date more than noise does.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forage/series.h"

namespace pluckbook {

struct MethodShift {
  std::string usual, other;      // methods: that of most pages, and the one that differs
  std::vector<const Bag*> bags;  // whose TDN came the other way, in order of plucking
  std::optional<double> points;  // the other way over the usual one, points of TDN
  int pages = 0;                 // that allow both, and give that mean
};

/// One for each method beside the usual one, in order of first use. Requires: `bags` outlive it.
std::vector<MethodShift> method_shifts(const std::vector<BagReading>& bags);

/// "TDN of 26-draws-08 comes by E1, of the others by the laboratory's figure: ..."
std::string in_words(const MethodShift& shift);

}  // namespace pluckbook
