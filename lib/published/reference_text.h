// reference_text.h - the files of reference/ as they were compiled in.
#pragma once

#include <optional>
#include <string_view>

namespace pluckbook {

/// The YAML text of reference/TOPIC.yaml, or nothing when there is no such file.
std::optional<std::string_view> reference_text(std::string_view topic);

}  // namespace pluckbook
