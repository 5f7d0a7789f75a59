// Runs a fuzz target over files and folders of files, without a fuzzer. A fault ends the program;
// so does an input that takes longer than a second.
#include <cstdint>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> files_of(const fs::path& path) {
  if (fs::is_regular_file(path)) return {path};
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(path)) {
    if (entry.is_regular_file()) files.push_back(entry.path());
  }
  return files;
}

bool replay(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(stream)),
                          std::istreambuf_iterator<char>());
  const std::clock_t begin = std::clock();
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
  const double taken = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  if (taken < 1) return true;
  std::fprintf(stderr, "%s took %.1f s\n", file.c_str(), taken);
  return false;
}

}  // namespace

int main(int argc, char** argv) {
  std::size_t count = 0;
  bool good = true;
  for (int i = 1; i < argc; ++i) {
    for (const fs::path& file : files_of(argv[i])) {
      good = replay(file) && good;
      ++count;
    }
  }
  std::printf("%zu inputs replayed\n", count);
  return good && count > 0 ? 0 : 1;
}
