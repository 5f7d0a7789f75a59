// files.h - which files make up a book, and their bytes. Nothing outside the book's folder is
// followed, and nothing but plain files is opened.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"

namespace pluckbook {

/// A file of samples: samples/2026/north-breaks.yaml.
struct SamplesFile {
  std::string name;  // as shown to people
  int year = 0;
  std::string pasture;
};

/// The samples files of a book, by name, and Problems for what lies among them and is none.
/// Hidden files and folders are passed over.
std::vector<SamplesFile> samples_files(const std::filesystem::path& folder, Problems& problems);

/// "samples/2026/north-breaks.yaml".
std::string samples_name(int year, const std::string& pasture);

/// The bytes of one file of the book; nothing where there is none.
/// Fails: no plain file, a link that leads out of the folder, over the size that is read, the disk.
Result<std::optional<std::string>> file_text(const std::filesystem::path& folder,
                                             const std::string& name);

}  // namespace pluckbook
