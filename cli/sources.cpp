#include "cli/command.h"
#include "cli/terminal.h"
#include "report/json.h"
#include "report/pages.h"

namespace pluckbook::cli {

Result<Answer> run_sources(const Arguments& arguments) {
  Answer answer;
  answer.text =
      arguments.has("json") ? printed(sources_json()) : text_of(sources_page(), page_width());
  return answer;
}

}  // namespace pluckbook::cli
