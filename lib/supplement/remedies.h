// remedies.h - what would take a limit out of the way.
#pragma once

#include <string>

namespace pluckbook {

/// In a rancher's words; for a limit nobody has thought of, another feed.
///   limit: the id of a row of the model; "label" for a feed's own most; "" where no limit stands
///   in the way and the feeds simply hold too little.
std::string remedy_for(const std::string& limit);

}  // namespace pluckbook
