#include "book/files.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "base/text.h"
#include "base/yaml.h"
#include "book/disk_calls.h"

namespace pluckbook {
namespace {

namespace fs = std::filesystem;

Place whole_file(const std::string& name) {
  return Place{name, 0, 0, 1, ""};
}

bool leads_out(const fs::path& folder, const fs::path& file) {
  std::error_code error;
  const fs::path home = fs::weakly_canonical(folder, error);
  if (error) return true;
  const fs::path real = fs::weakly_canonical(file, error);
  if (error) return true;
  return std::mismatch(home.begin(), home.end(), real.begin(), real.end()).first != home.end();
}

std::vector<fs::path> entries_of(const fs::path& folder) {
  std::vector<fs::path> entries;
  std::error_code error;
  for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    if (!at->path().filename().string().starts_with('.')) entries.push_back(at->path());
  }
  std::sort(entries.begin(), entries.end());
  return entries;
}

std::optional<int> year_of(const std::string& name) {
  const auto number = parse_number(name);
  if (name.size() != 4 || !number || *number < 1900 || *number > 2200) return std::nullopt;
  return static_cast<int>(*number);
}

}  // namespace

std::string samples_name(int year, const std::string& pasture) {
  return fmt::format("samples/{}/{}.yaml", year, pasture);
}

std::vector<SamplesFile> samples_files(const fs::path& folder, Problems& problems) {
  std::vector<SamplesFile> files;
  for (const fs::path& of_year : entries_of(folder / "samples")) {
    const auto year = year_of(of_year.filename().string());
    std::error_code error;
    if (!year || !fs::is_directory(of_year, error)) {
      problems.push_back(input_problem("samples are kept in one folder a year, named for it",
                                       "move it to, for one,  samples/2026/PASTURE.yaml",
                                       whole_file("samples/" + of_year.filename().string())));
      problems.back().severity = Severity::warning;
      continue;
    }
    for (const fs::path& file : entries_of(of_year)) {
      const std::string pasture = file.stem().string();
      if (file.extension() == ".yaml") {
        files.push_back({samples_name(*year, pasture), *year, pasture});
      } else if (file.extension() == ".yml") {
        problems.push_back(input_problem(
            "files of the book end in .yaml", fmt::format("rename it to {}.yaml", shown(pasture)),
            whole_file(fmt::format("samples/{}/{}", *year, file.filename().string()))));
      }
    }
  }
  return files;
}

Result<std::optional<std::string>> file_text(const fs::path& folder, const std::string& name) {
  const fs::path path = folder / name;
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found) return std::optional<std::string>();
  if (status.type() != fs::file_type::regular) {
    return input_problem("this is not a plain file", "put the book's own file in its place",
                         whole_file(name));
  }
  if (leads_out(folder, path)) {
    return input_problem("this link leads out of the book's folder",
                         "put the file itself in its place", whole_file(name));
  }
  const auto bytes = fs::file_size(path, error);
  const std::size_t most = YamlLimits().bytes;
  if (error || bytes > most) {
    return input_problem(fmt::format("the file is {} bytes long; at most {} are read", bytes, most),
                         "split it, or check that this is the file you meant", whole_file(name));
  }
  std::optional<std::string> text = read_all(disk(), path.string());
  if (text) return text;
  return system_problem(fmt::format("{} cannot be read", name), "look at the file's permissions");
}

}  // namespace pluckbook
