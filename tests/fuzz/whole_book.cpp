// A book of several files: the input is their texts, each under a line "@NAME" (of the names
// below). All of it is read, as `check` does.
#include <unistd.h>

#include <array>
#include <filesystem>
#include <fstream>

#include "book/read.h"
#include "fuzz/properties.h"

namespace pluckbook::fuzz {
namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 8> names = {
    "book.yaml",  "pastures.yaml",           "herds.yaml",     "grazing.yaml",
    "feeds.yaml", "samples/2026/north.yaml", "condition.yaml", "samples/2025/meadow.yaml"};

const fs::path& folder() {
  static const fs::path path = [] {
    const fs::path memory = "/dev/shm";
    const fs::path root = fs::is_directory(memory) ? memory : fs::temp_directory_path();
    return root / ("pluckbook-fuzz-" + std::to_string(::getpid()));
  }();
  return path;
}

void write_files(std::string_view text) {
  std::ofstream file;
  for (const std::string_view line : split(text, '\n')) {
    for (const std::string_view name : names) {
      if (!line.starts_with('@') || line.substr(1) != name) continue;
      file.close();
      fs::create_directories((folder() / name).parent_path());
      file.open(folder() / name, std::ios::binary);
    }
    if (file.is_open() && !line.starts_with('@')) file << line << '\n';
  }
}

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace pluckbook;
  fuzz::write_files(fuzz::text_of(data, size));
  const Reading reading = read_whole_book(fuzz::folder());
  fuzz::require_useful(reading.problems);
  std::filesystem::remove_all(fuzz::folder());
  return 0;
}
