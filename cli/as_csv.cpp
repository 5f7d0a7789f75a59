#include "cli/as_csv.h"

#include "report/json_table.h"

namespace pluckbook::cli {

Result<Answer> run_for_csv(const Command& command, Arguments arguments) {
  arguments.options.erase("csv");
  arguments.options["json"] = "yes";
  Result<Answer> answer = command.run(arguments);
  if (!answer) return answer.problems();
  answer->text = csv_of(Json::parse(answer->text), std::string(command.rows));
  return answer;
}

}  // namespace pluckbook::cli
