// read_bags.h - the files of samples, each on its own and on all cores; then what needs two of
// them. Used in lib/book only.
#pragma once

#include <filesystem>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/yaml.h"
#include "book/files.h"
#include "book/records.h"

namespace pluckbook {

/// One file of a book as a tree; nothing where there is none.
/// Fails: as file_text and read_yaml; an empty file.
Result<std::optional<YamlDocument>> document_of(const std::filesystem::path& folder,
                                                const std::string& name);

struct SamplesReading {
  std::vector<Bag> bags;  // by the day plucked, those of a day by file, as written
  Problems problems;
};

/// The bags of some files. `front` is the book read so far, `unread` what of it could not be.
/// A Problem as well: a file of no pasture, an id that two files use; a warning: a bag of another
/// year.
SamplesReading read_samples_files(const std::filesystem::path& folder,
                                  const std::vector<SamplesFile>& files, const Book& front,
                                  const std::set<std::string>& unread);

}  // namespace pluckbook
