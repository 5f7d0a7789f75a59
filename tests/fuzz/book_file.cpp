// One file of a book (FUZZ_FILE) read from any bytes: read, or refused with a place. What can be
// read can be added to, and an addition takes nothing away.
#include <algorithm>

#include "base/yaml.h"
#include "book/edit.h"
#include "book/parts.h"
#include "fuzz/properties.h"

namespace pluckbook::fuzz {
namespace {

const std::string file = FUZZ_FILE;

Book small_book() {
  Book book;
  book.labs.push_back({"county", "County Forage Lab", 10});
  Pasture pasture;
  pasture.id = "north";
  pasture.forage = "northern_mixed_grass";
  Herd herd;
  herd.id = "cows";
  if (file != "pastures.yaml") book.pastures.push_back(pasture);
  if (file != "herds.yaml" && file != "pastures.yaml") book.herds.push_back(herd);
  return book;
}

void require_only_added(const std::string& before, const Result<Spliced>& spliced) {
  if (!spliced) return require_useful(spliced.problems());
  const std::string& after = spliced->text;
  const auto split = std::mismatch(before.begin(), before.end(), after.begin(), after.end()).first;
  require(after.size() > before.size() && after.ends_with(std::string(split, before.end())),
          "an addition takes nothing away", after);
}

void add_to(const Book& book, const std::string& text) {
  const Book labs = small_book();
  if (!book.bags.empty()) {
    const Bag& one = book.bags[text.size() % book.bags.size()];  // each in its turn
    LabResult result;
    result.received = Date(2026, 12, 20);
    result.values = {{"cp", 6.4}};
    require_only_added(text, with_result(labs, file, text, one.id, result));
    const Mark lost = {Mark::What::lost, Date(2026, 12, 1), ""};
    require_only_added(text, with_mark(labs, file, text, one.id, lost));
  }
  Bag bag;
  bag.id = "one-more-bag";
  bag.plucked = Date(2026, 7, 6);
  require_only_added(text, with_bag(labs, file, text, bag));
}

void read(const std::string& text) {
  const Result<YamlDocument> document = read_yaml(file, text);
  if (!document) return require_useful(document.problems());
  Book book = small_book();
  Problems problems;
  FileReading reading(*document, {}, problems);
  read_part(reading, document->root, file, book);
  require_useful(problems);
  for (const Problem& problem : problems) {
    require(problem.place && problem.place->line > 0, "a Problem has a place", problem.what);
  }
  if (problems.empty() && file == "samples.yaml") add_to(book, text);
}

}  // namespace
}  // namespace pluckbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  pluckbook::fuzz::read(pluckbook::fuzz::text_of(data, size));
  return 0;
}
