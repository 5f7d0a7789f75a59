#include "cli/command.h"
#include "cli/terminal.h"
#include "report/json.h"
#include "report/pages.h"

namespace pluckbook::cli {
namespace {

Result<Answer> run_sources(const Arguments& arguments) {
  Answer answer;
  answer.text =
      arguments.has("json") ? printed(sources_json()) : text_of(sources_page(), page_width());
  return answer;
}

}  // namespace

Command sources_command() {
  return {
      .name = "sources",
      .usage = "",
      .purpose = "the published sources in use",
      .group = "the numbers",
      .examples = {"pluckbook sources"},
      .uses_book = false,
      .run = run_sources,
      .rows = "sources",
  };
}

}  // namespace pluckbook::cli
