// command.h - what a command is: a row of words for help and parsing, and a function that answers.
// One table (commands.cpp, in the order of help) feeds parsing and help; its words are constants
// and are not copied.
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
  std::vector<Option> options = {};  // beside the common ones
  std::size_t least_words = 0, most_words = 0;
  bool uses_book = true;
  Run run = nullptr;
  std::string_view rows = {};  // where its document's rows are, for --csv; empty: it has no table
};

const std::vector<Command>& commands();
const std::vector<Option>& common_options();
/// A command's own options, --csv among them where it has a table.
std::vector<Option> own_options(const Command& command);

// The commands, one file each with its row of words and its function. Those that write say so.
Command start_command();  // writes a new book
Command check_command();
Command schema_command();
Command bag_command();     // writes a bag
Command mark_command();    // writes a mark
Command result_command();  // writes a result
Command import_command();  // writes results and a layout
Command bags_command();
Command move_command();   // writes a move
Command score_command();  // writes a condition score
Command quote_command();  // writes a quote
Command event_command();  // writes an event
Command feeds_command();
Command diet_command();
Command need_command();
Command outlook_command();
Command price_command();
Command plan_command();
Command compare_command();
Command report_command();  // writes a page where told
Command workings_command();
Command backtest_command();
Command sources_command();
Command manual_command();
Command completion_command();

}  // namespace pluckbook::cli
