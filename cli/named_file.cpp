#include "cli/named_file.h"

#include <filesystem>
#include <fstream>

#include "base/text.h"

namespace pluckbook::cli {

Result<std::string> text_of_file(const std::string& name, std::size_t limit,
                                 const std::string& what_to_name) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(name, error))
    return usage_problem("there is no file " + shown(name, 200), what_to_name);
  std::ifstream stream(name, std::ios::binary);
  std::string text(limit + 1, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(stream.gcount()));
  if (stream.bad() || !stream.is_open())
    return system_problem(shown(name, 200) + " cannot be read", "look at the file's permissions");
  return text;
}

}  // namespace pluckbook::cli
