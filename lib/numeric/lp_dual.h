// lp_dual.h - the short way to a vertex. Where no reduced cost points downhill, as none does at the
// start when costs are 0 or more, what is missed is brought to its bound step by step, such that
// none ever does. Then nothing is left for the walk of lp_simplex.h but to see that it is there.
#pragma once

#include "numeric/lp_dictionary.h"

namespace pluckbook {

/// Takes the dictionary to where nothing is missed, or as far as that gets; walk() goes on from
/// there. Leaves a dictionary with a reduced cost that points downhill as it is.
///   tolerance: misses and reduced costs up to this count as none, in the dictionary's units.
void bring_within_bounds(LpDictionary& dictionary, double tolerance);

}  // namespace pluckbook
