#include "cli/command.h"
#include "report/json.h"
#include "report/text.h"

namespace pluckbook::cli {

Result<Answer> run_sources(const Arguments& arguments) {
  Answer answer;
  answer.text = arguments.has("json") ? printed(sources_json()) : sources_text();
  return answer;
}

}  // namespace pluckbook::cli
