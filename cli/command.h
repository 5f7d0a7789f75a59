// command.h - what a command is: a row of words for help and parsing, and a function that answers.
// One table (commands.cpp) feeds parsing and help; its words are constants and are not copied.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "book/records.h"
#include "report/shown.h"

namespace pluckbook::cli {

struct Option {
  std::string_view name;   // "as-of"
  std::string_view value;  // "DATE" in help; empty for a switch
  std::string_view help;   // with unit and default

  std::string written() const { return "--" + std::string(name); }
};

/// The command line, read: words in order, options by name.
struct Arguments {
  std::vector<std::string> words;
  std::map<std::string, std::string> options;

  bool has(std::string_view name) const { return options.contains(std::string(name)); }
  std::string get(std::string_view name, const std::string& otherwise = "") const;
  /// Fails: the option is there and is no date (or no number).
  Result<Date> date(std::string_view name, Date otherwise) const;
  Result<double> number(std::string_view name, double otherwise) const;
  /// "--stops 0 is outside 1 to 500": what was given for an option lies beyond its limits.
  Problem beyond(std::string_view name, std::string_view limits, std::string remedy) const;
};

/// What a command has to say: text for standard output, warnings for standard error.
struct Answer {
  std::string text;
  Problems warnings;
  int exit_status = 0;
  enum class Kind { words, data } kind = Kind::words;  // only words are coloured
};

using Run = Result<Answer> (*)(const Arguments&);

struct Command {
  std::string_view name, usage, purpose;  // "outlook", "[HERD ...]", one line
  std::string_view group;                 // of the year's work, for --help
  std::vector<std::string_view> examples;
  std::vector<Option> options;  // beside the common ones
  std::size_t least_words = 0, most_words = 0;
  bool uses_book = true;
  Run run = nullptr;
  std::string_view rows =
      {};  // the path to the rows of its document, for --csv; empty: it has no table
};

const std::vector<Command>& commands();
const std::vector<Option>& common_options();
/// A command's own options, --csv among them where it has a table.
std::vector<Option> own_options(const Command& command);

// The commands, one file each. Those that write say so in their name's comment.
Result<Answer> run_start(const Arguments& arguments);  // writes a new book
Result<Answer> run_check(const Arguments& arguments);
Result<Answer> run_bag(const Arguments& arguments);     // writes a bag
Result<Answer> run_mark(const Arguments& arguments);    // writes a mark
Result<Answer> run_result(const Arguments& arguments);  // writes a result
Result<Answer> run_import(const Arguments& arguments);  // writes results and a layout
Result<Answer> run_move(const Arguments& arguments);    // writes a move
Result<Answer> run_score(const Arguments& arguments);   // writes a condition score
Result<Answer> run_quote(const Arguments& arguments);   // writes a quote
Result<Answer> run_event(const Arguments& arguments);   // writes an event
Result<Answer> run_bags(const Arguments& arguments);
Result<Answer> run_diet(const Arguments& arguments);
Result<Answer> run_need(const Arguments& arguments);
Result<Answer> run_outlook(const Arguments& arguments);
Result<Answer> run_price(const Arguments& arguments);
Result<Answer> run_backtest(const Arguments& arguments);
Result<Answer> run_plan(const Arguments& arguments);
Result<Answer> run_compare(const Arguments& arguments);
Result<Answer> run_report(const Arguments& arguments);  // writes a page where told
Result<Answer> run_workings(const Arguments& arguments);
Result<Answer> run_manual(const Arguments& arguments);
Result<Answer> run_completion(const Arguments& arguments);
Result<Answer> run_schema(const Arguments& arguments);
Result<Answer> run_feeds(const Arguments& arguments);
Result<Answer> run_sources(const Arguments& arguments);

}  // namespace pluckbook::cli
