#include "book/disk_calls.h"

#include <fmt/format.h>

#include <array>
#include <system_error>

#include "base/text.h"

namespace pluckbook {
namespace {

std::string cause(int error) {
  if (error == ELOOP) return "it is a link, and links are not written through";
  return std::generic_category().message(error);
}

}  // namespace

Problem cannot(std::string_view what, const std::string& name, int error,
               std::string_view aftermath) {
  return system_problem(fmt::format("cannot {} {}: {}", what, shown(name, 200), cause(error)),
                        std::string(aftermath));
}

bool write_all(FileSystem& files, int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t count =
        uninterrupted([&] { return files.write(file, text.data(), text.size()); });
    if (count < 0) return false;
    if (count == 0) {
      errno = ENOSPC;
      return false;
    }
    text.remove_prefix(static_cast<std::size_t>(count));
  }
  return true;
}

std::optional<std::string> read_all(FileSystem& files, const std::string& path) {
  const OpenFile file(files, path, O_RDONLY);
  if (!file.is_open()) return std::nullopt;
  std::string text;
  std::array<char, 65536> part{};
  for (;;) {
    const ssize_t count =
        uninterrupted([&] { return files.read(file.get(), part.data(), part.size()); });
    if (count < 0) return std::nullopt;
    if (count == 0) return text;
    text.append(part.data(), static_cast<std::size_t>(count));
  }
}

}  // namespace pluckbook
