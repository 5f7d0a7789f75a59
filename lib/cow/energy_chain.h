// energy_chain.h - the published chain TDN -> DE -> ME -> NEm and NEg, Mcal per kg of dry matter,
// and back. Source: NRC 2000 p. 126 (read) and Garrett 1980 (recalled); reference/energy.yaml.
#pragma once

#include "base/units.h"

namespace pluckbook {

/// Metabolizable energy of a diet: 4.409 x 0.82 Mcal for each kg of TDN.
McalPerKgDm me_of(Share tdn);
/// The TDN of that ME: the chain read backwards.
Share tdn_of(McalPerKgDm me);

/// Net energy for maintenance and for gain, cubics of ME. NEg is negative for diets too poor to
/// gain on.
McalPerKgDm nem_of_me(McalPerKgDm me);
McalPerKgDm neg_of_me(McalPerKgDm me);

/// NEm of a diet by the whole chain.
McalPerKgDm nem_of(Share tdn);

/// TDN as the requirement rows print it: about a point under the chain's for the same NEm, constant
/// over all rows tested, reason unknown (computed).
Share printed_tdn(Share chain_tdn);

}  // namespace pluckbook
