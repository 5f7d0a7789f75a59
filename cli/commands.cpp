// The commands in the order of help; each stands in its own file.
#include "cli/command.h"

namespace pluckbook::cli {

const std::vector<Option>& common_options() {
  static const std::vector<Option> options = {
      {"book", "DIR", "the book's folder"},
      {"as-of", "DATE", "answer as on that day, later records unused (today)"},
      {"until", "DATE", "how far ahead (180 days)"},
      {"units", "us|metric", "pounds or kilograms (the book's)"},
      {"json", "", "the answer as a JSON document"},
      {"color", "auto|always|never", "colour of the words (auto: on a terminal)"},
  };
  return options;
}

std::vector<Option> own_options(const Command& command) {
  std::vector<Option> options = command.options;
  if (!command.rows.empty()) options.push_back({"csv", "", "the answer's table as CSV"});
  return options;
}

const std::vector<Command>& commands() {
  static const std::vector<Command> all = {
      // the book
      start_command(),
      check_command(),
      schema_command(),
      // the bag
      bag_command(),
      mark_command(),
      result_command(),
      import_command(),
      bags_command(),
      // the herd and the feed
      move_command(),
      score_command(),
      quote_command(),
      event_command(),
      feeds_command(),
      // the season
      diet_command(),
      need_command(),
      outlook_command(),
      price_command(),
      plan_command(),
      compare_command(),
      report_command(),
      // the numbers
      workings_command(),
      backtest_command(),
      sources_command(),
      // the program
      manual_command(),
      completion_command(),
  };
  return all;
}

}  // namespace pluckbook::cli
