#include <fmt/format.h>

#include "base/text.h"
#include "cli/command.h"
#include "cli/terminal.h"
#include "report/json.h"
#include "report/pages.h"

namespace pluckbook::cli {
namespace {

Result<Answer> run_feeds(const Arguments& arguments) {
  const std::string words = fmt::format("{}", fmt::join(arguments.words, " "));
  const std::vector<const PublishedFeed*> feeds = feeds_called(words);
  if (feeds.empty()) {
    return usage_problem(fmt::format("no published feed is called '{}'", shown(words)),
                         feed_suggestion(words));
  }
  Answer answer;
  answer.text =
      arguments.has("json") ? printed(feeds_json(feeds)) : text_of(feeds_page(feeds), page_width());
  return answer;
}

}  // namespace

Command feeds_command() {
  return {
      .name = "feeds",
      .usage = "[WORD ...]",
      .purpose = "the published feeds a feed may be like",
      .group = "the herd and the feed",
      .examples = {"pluckbook feeds", "pluckbook feeds soybean meal"},
      .most_words = 8,
      .uses_book = false,
      .run = run_feeds,
      .rows = "feeds",
  };
}

}  // namespace pluckbook::cli
