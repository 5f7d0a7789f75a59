#include "book/read_bags.h"

#include <fmt/format.h>

#include <algorithm>
#include <unordered_map>

#include "base/parallel.h"
#include "base/text.h"
#include "book/read_parts.h"

namespace pluckbook {
namespace {

namespace fs = std::filesystem;

// Below this a thread takes longer to begin than the files to read.
constexpr std::size_t least_files_a_thread = 8;

std::string remedy_for_no_pasture(const std::string& name, const Book& book) {
  std::vector<std::string> known;
  for (const Pasture& pasture : book.pastures) known.push_back(pasture.id);
  return known.empty() ? line_to_add("pasture", shown(name), book.currency)
                       : suggestion(name, known);
}

void note_other_years(FileReading& reading, const YamlNode& root, const SamplesFile& file,
                      const std::vector<Bag>& bags) {
  for (std::size_t i = 0; i < bags.size(); ++i) {
    const Date plucked = bags[i].plucked;
    if (plucked.is_special() || plucked.year() == file.year) continue;
    reading.warn(
        at_key(root.items[i], "plucked"),
        fmt::format("a bag plucked on {} stands among those of {}", to_iso(plucked), file.year),
        fmt::format("move it to {}", samples_name(static_cast<int>(plucked.year()), file.pasture)));
  }
}

SamplesReading read_samples_file(const fs::path& folder, const SamplesFile& file, const Book& front,
                                 const std::set<std::string>& unread) {
  SamplesReading samples;
  const Result<std::optional<YamlDocument>> document = document_of(folder, file.name);
  if (!document) return {{}, document.problems()};
  if (!*document) return {};
  if (find_pasture(front, file.pasture) == nullptr) {
    samples.problems.push_back(
        input_problem(fmt::format("there is no pasture '{}'", shown(file.pasture)),
                      remedy_for_no_pasture(file.pasture, front), Place{file.name, 0, 0, 1, ""}));
  }
  FileReading reading(**document, {front.units, front.currency}, samples.problems);
  reading.unread = unread;
  samples.bags = read_samples(reading, (*document)->root, file.pasture, front);
  note_other_years(reading, (*document)->root, file, samples.bags);
  return samples;
}

// Read once more, since the tree is gone and this is rare.
void note_taken_id(const fs::path& folder, const Bag& bag, std::size_t item, const Bag& earlier,
                   Problems& problems) {
  const Result<std::optional<YamlDocument>> document = document_of(folder, bag.origin.file);
  if (!document || !*document) return;
  FileReading reading(**document, {}, problems);
  reading.error(at_key((*document)->root.items[item], "bag"),
                fmt::format("bag '{}' is already at {}:{}", earlier.id, earlier.origin.file,
                            earlier.origin.line),
                "give one of them another id");
}

// Within one file they were noted when it was read.
void note_ids_of_two_files(const fs::path& folder, const std::vector<SamplesReading>& files,
                           Problems& problems) {
  std::unordered_map<std::string, const Bag*> used;
  for (const SamplesReading& file : files) {
    for (std::size_t i = 0; i < file.bags.size(); ++i) {
      const Bag& bag = file.bags[i];
      if (bag.id.empty()) continue;
      const auto [at, is_new] = used.try_emplace(as_id(bag.id), &bag);
      if (is_new || at->second->origin.file == bag.origin.file) continue;
      note_taken_id(folder, bag, i, *at->second, problems);
      at->second = &bag;
    }
  }
}

/// Each moved once: a large book's bags should not stand in memory twice.
std::vector<Bag> by_plucked(std::vector<SamplesReading> files) {
  std::vector<Bag*> order;
  for (SamplesReading& file : files)
    for (Bag& bag : file.bags) order.push_back(&bag);
  std::stable_sort(order.begin(), order.end(),
                   [](const Bag* a, const Bag* b) { return a->plucked < b->plucked; });
  std::vector<Bag> bags;
  bags.reserve(order.size());
  for (Bag* bag : order) bags.push_back(std::move(*bag));
  return bags;
}

}  // namespace

Result<std::optional<YamlDocument>> document_of(const fs::path& folder, const std::string& name) {
  Result<std::optional<std::string>> text = file_text(folder, name);
  if (!text) return text.problems();
  if (!*text) return std::optional<YamlDocument>();
  if ((*text)->empty()) {
    return input_problem("the file is empty",
                         "restore it, or write one comment line if nothing belongs in it",
                         Place{name, 0, 0, 1, ""});
  }
  Result<YamlDocument> document = read_yaml(name, **std::move(text));
  if (!document) return document.problems();
  return std::optional<YamlDocument>(*std::move(document));
}

SamplesReading read_samples_files(const fs::path& folder, const std::vector<SamplesFile>& files,
                                  const Book& front, const std::set<std::string>& unread) {
  std::vector<SamplesReading> read(files.size());
  in_parallel(files.size(), least_files_a_thread,
              [&](std::size_t i) { read[i] = read_samples_file(folder, files[i], front, unread); });
  SamplesReading all;
  note_ids_of_two_files(folder, read, all.problems);
  for (const SamplesReading& one : read)
    all.problems.insert(all.problems.end(), one.problems.begin(), one.problems.end());
  all.bags = by_plucked(std::move(read));
  return all;
}

}  // namespace pluckbook
