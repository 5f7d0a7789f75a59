#include <fmt/format.h>

#include "published/rules.h"
#include "report/pages.h"

namespace pluckbook {

Page sources_page() {
  Page page;
  page.sentence(
      "Where the numbers come from. read: seen in the named text; recalled: from memory of it, "
      "then tested; computed: our arithmetic from published equations; assumed: a working guess.");
  std::string topic;
  for (const SourceInUse& source : sources_in_use()) {
    if (source.topic != topic) page.heading(source.topic);
    topic = source.topic;
    page.note(fmt::format("{}: {} ({})", source.what, source.source, source.status));
  }
  return page;
}

}  // namespace pluckbook
