#include "book/schema.h"

#include <array>
#include <string_view>

#include "book/read_parts.h"

namespace pluckbook {
namespace {

struct FileFacts {
  std::string_view name;
  std::vector<KeyFact> (*keys)();
};

constexpr std::array<FileFacts, 9> files = {{{"book.yaml", book_facts},
                                             {"pastures.yaml", pasture_facts},
                                             {"herds.yaml", herd_facts},
                                             {"grazing.yaml", move_facts},
                                             {"feeds.yaml", feed_facts},
                                             {"samples.yaml", bag_facts},
                                             {"condition.yaml", score_facts},
                                             {"events.yaml", event_facts},
                                             {"layouts.yaml", layout_facts}}};

}  // namespace

std::vector<std::string> schema_files() {
  std::vector<std::string> names;
  for (const FileFacts& file : files) names.emplace_back(file.name);
  return names;
}

std::vector<KeyFact> keys_of_file(const std::string& file) {
  for (const FileFacts& known : files) {
    if (known.name == file) return known.keys();
  }
  return {};
}

}  // namespace pluckbook
