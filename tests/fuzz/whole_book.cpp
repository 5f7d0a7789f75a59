// A book of several files: the input is their texts, each under a line "@NAME" (of the names
// below). All of it is read, as `check` does.
#include <array>
#include <filesystem>
#include <map>

#include "book/read.h"
#include "fuzz/properties.h"
#include "fuzz/scratch.h"

namespace pluckbook::fuzz {
namespace {

constexpr std::array<std::string_view, 10> names = {
    "book.yaml",    "pastures.yaml",           "herds.yaml",     "grazing.yaml",
    "feeds.yaml",   "samples/2026/north.yaml", "condition.yaml", "events.yaml",
    "layouts.yaml", "samples/2025/meadow.yaml"};

using Texts = std::map<std::string, std::string>;

Texts texts_of(std::string_view input) {
  Texts texts;
  std::string* current = nullptr;
  for (const std::string_view line : split(input, '\n')) {
    if (!line.starts_with('@')) {
      if (current != nullptr) *current += std::string(line) + "\n";
      continue;
    }
    for (const std::string_view name : names) {
      if (line.substr(1) == name) current = &texts[std::string(name)];
    }
  }
  return texts;
}

// Only files that differ from the last input's are written: most mutations change one.
void write_files(Texts texts) {
  static Texts there;
  for (const auto& [name, text] : there) {
    if (!texts.contains(name)) std::filesystem::remove(scratch().path() / name);
  }
  for (const auto& [name, text] : texts) {
    const auto old = there.find(name);
    if (old != there.end() && old->second == text) continue;
    scratch().write(name, text);
  }
  there = std::move(texts);
}

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace pluckbook;
  fuzz::write_files(fuzz::texts_of(fuzz::text_of(data, size)));
  const Reading reading = read_whole_book(fuzz::scratch().path());
  fuzz::require_useful(reading.problems);
  return 0;
}
