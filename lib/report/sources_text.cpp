#include <fmt/format.h>

#include "published/rules.h"
#include "report/table.h"
#include "report/text.h"

namespace pluckbook {

std::string sources_text() {
  std::string text = wrapped(
      "Where the numbers come from. read: seen in the named text; recalled: from memory of it, "
      "then "
      "tested; computed: our arithmetic from published equations; assumed: a working guess.");
  std::string topic;
  for (const SourceInUse& source : sources_in_use()) {
    if (source.topic != topic) text += "\n" + source.topic + "\n";
    topic = source.topic;
    text += wrapped(fmt::format("- {}: {} ({})", source.what, source.source, source.status), 80, 2);
  }
  return text;
}

}  // namespace pluckbook
