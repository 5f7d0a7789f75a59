// A command line, one word a line of the input.
#include "cli/command_line.h"
#include "fuzz/properties.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace pluckbook;
  std::vector<std::string> words;
  const std::string text = fuzz::text_of(data, size);
  for (const std::string_view word : split(text, '\n')) words.emplace_back(word);
  const Result<cli::Parsed> parsed = cli::parse(words);
  if (!parsed) {
    fuzz::require_useful(parsed.problems());
    for (const Problem& problem : parsed.problems()) {
      fuzz::require(problem.fault == Fault::usage, "a command line is wrong by its usage", text);
    }
  }
  return 0;
}
