#include "cli/command_line.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <set>

#include "base/text.h"
#include "report/table.h"

namespace pluckbook::cli {
namespace {

std::vector<std::string> names_of(const std::vector<Command>& all) {
  std::vector<std::string> names;
  for (const Command& command : all) names.emplace_back(command.name);
  return names;
}

std::vector<Option> options_of(const Command* command) {
  std::vector<Option> options = common_options();
  if (command != nullptr) {
    const std::vector<Option> own = own_options(*command);
    options.insert(options.begin(), own.begin(), own.end());
  }
  return options;
}

const Command* find_command(const std::string& name) {
  for (const Command& command : commands()) {
    if (command.name == name) return &command;
  }
  return nullptr;
}

/// The first word that is no option and no option's value: the command.
std::optional<std::size_t> command_at(const std::vector<std::string>& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == "--") return std::nullopt;
    if (words[i].size() < 2 || words[i][0] != '-') return i;
    const std::string name = words[i].substr(std::min<std::size_t>(2, words[i].size()));
    for (const Option& option : common_options()) {
      if (option.name == name && !option.value.empty()) ++i;
    }
  }
  return std::nullopt;
}

Result<Done> check_option_names(const std::vector<std::string>& words,
                                const std::vector<Option>& options) {
  std::vector<std::string> known;
  for (const Option& option : options) known.push_back(option.written());
  known.emplace_back("--help");
  for (const std::string& word : words) {
    if (word == "--") break;
    if (word.size() < 3 || word.substr(0, 2) != "--") continue;
    const std::string name = word.substr(0, word.find('='));
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    const auto near = nearest_word(name, known);
    return usage_problem(fmt::format("unknown option '{}'", shown(name)),
                         near ? fmt::format("did you mean '{}'?", *near)
                              : fmt::format("known here: {}", fmt::join(known, ", ")));
  }
  return Done{};
}

/// Words that look like an option of one dash, and options without their value or given twice.
Result<Done> check_option_values(const std::vector<std::string>& words,
                                 const std::vector<Option>& options) {
  std::set<std::string> seen;
  for (std::size_t i = 0; i < words.size() && words[i] != "--"; ++i) {
    const std::string name = words[i].substr(0, words[i].find('='));
    const auto option = std::find_if(options.begin(), options.end(),
                                     [&](const Option& o) { return o.written() == name; });
    if (option == options.end()) {
      if (name.size() < 2 || name[0] != '-' || parse_number(words[i])) continue;
      return usage_problem(fmt::format("unknown option '{}'", shown(name)),
                           "options begin with two dashes; a word that begins with - comes after "
                           "--");
    }
    if (!option->value.empty() && !seen.insert(name).second) {
      return usage_problem(fmt::format("option '{}' is given twice", name), "keep one of them");
    }
    if (option->value.empty() || name.size() + 1 < words[i].size()) continue;
    const bool alone = name.size() == words[i].size();
    if (alone && ++i < words.size() && words[i].substr(0, 2) != "--") continue;
    return usage_problem(fmt::format("option '{}' has no value", name),
                         fmt::format("write  {} {}", name, option->value));
  }
  return Done{};
}

/// CLI11 does the splitting; its own words never reach a person.
Result<Arguments> split_words(const std::vector<std::string>& words,
                              const std::vector<Option>& options) {
  CLI::App app;
  app.set_help_flag();
  Arguments arguments;
  std::map<std::string_view, std::string> values;
  std::map<std::string_view, bool> switches;
  for (const Option& option : options) {
    if (option.value.empty()) {
      app.add_flag(option.written(), switches[option.name]);
    } else {
      app.add_option(option.written(), values[option.name]);
    }
  }
  app.add_option("words", arguments.words);
  std::vector<std::string> reversed(words.rbegin(), words.rend());  // as CLI11 wants them
  try {
    app.parse(reversed);
  } catch (const CLI::ParseError&) {
    return usage_problem("the command line cannot be read",
                         "options are --name VALUE; a word that begins with - comes after --");
  }
  for (const Option& option : options) {
    if (app.count(option.written()) > 0) {
      arguments.options[std::string(option.name)] =
          option.value.empty() ? "yes" : values[option.name];
    }
  }
  return arguments;
}

Result<Done> check_form(const Arguments& arguments) {
  if (arguments.has("json") && arguments.has("csv")) {
    return usage_problem("--json and --csv cannot both be had", "write one of them");
  }
  const std::string colour = arguments.get("color", "auto");
  if (colour != "auto" && colour != "always" && colour != "never") {
    return usage_problem(fmt::format("--color cannot be '{}'", shown(colour)),
                         "write auto, always or never");
  }
  return Done{};
}

Result<Done> check_word_count(const Command& command, const Arguments& arguments) {
  const std::string usage = fmt::format("usage: pluckbook {} {}", command.name, command.usage);
  if (arguments.words.size() < command.least_words) {
    return usage_problem(fmt::format("'{}' needs {} {}", command.name, command.least_words,
                                     command.least_words == 1 ? "word" : "words"),
                         usage);
  }
  if (arguments.words.size() > command.most_words) {
    return usage_problem(
        fmt::format("'{}' is one word too many", shown(arguments.words[command.most_words])),
        usage);
  }
  return Done{};
}

/// Names in one column, what they do in the next, broken where it is too long.
std::string options_text(const std::vector<Option>& options) {
  std::vector<std::string> names;
  int widest = 0;
  for (const Option& option : options) {
    names.push_back(
        fmt::format("  --{}{}{}", option.name, option.value.empty() ? "" : " ", option.value));
    widest = std::max(widest, display_width(names.back()));
  }
  std::string text;
  for (std::size_t i = 0; i < options.size(); ++i) {
    std::string name = names[i];
    const std::string help = wrapped(std::string(options[i].help), 78 - widest);
    for (std::string_view line : split(trimmed(help), '\n')) {
      text += pad_right(name, widest) + "  " + std::string(line) + "\n";
      name.clear();
    }
  }
  return text;
}

bool asks_help(const std::string& word) {
  return word == "--help" || word == "-h";
}

}  // namespace

Result<Parsed> parse(const std::vector<std::string>& words) {
  Parsed parsed;
  const auto end = std::find(words.begin(), words.end(), "--");
  parsed.help = std::any_of(words.begin(), end, asks_help);
  parsed.version = std::find(words.begin(), end, "--version") != end;
  auto at = command_at(words);
  if (at && words[*at] == "help") {
    parsed.help = true;
    at = *at + 1 < words.size() ? std::optional(*at + 1) : std::nullopt;
  }
  if (!at) {
    if (parsed.help || parsed.version || words.empty()) return parsed;
    Result<Done> known = check_option_names(words, options_of(nullptr));
    if (!known) return known.problems();
    return usage_problem("no command given", "all commands: pluckbook --help");
  }
  parsed.command = find_command(words[*at]);
  if (parsed.command == nullptr) {
    const auto near = nearest_word(words[*at], names_of(commands()));
    return usage_problem(
        fmt::format("unknown command '{}'", shown(words[*at])),
        near ? fmt::format("did you mean '{}'?  all commands: pluckbook --help", *near)
             : "all commands: pluckbook --help");
  }
  if (parsed.help) return parsed;
  std::vector<std::string> rest = words;
  rest.erase(rest.begin() + static_cast<long>(*at));
  const std::vector<Option> options = options_of(parsed.command);
  Result<Done> known = check_option_names(rest, options);
  if (!known) return known.problems();
  Result<Done> given = check_option_values(rest, options);
  if (!given) return given.problems();
  Result<Arguments> arguments = split_words(rest, options);
  if (!arguments) return arguments.problems();
  Result<Done> counted = check_word_count(*parsed.command, *arguments);
  if (!counted) return counted.problems();
  Result<Done> formed = check_form(*arguments);
  if (!formed) return formed.problems();
  parsed.arguments = std::move(*arguments);
  return parsed;
}

std::string help_text() {
  std::string text =
      "pluckbook: keeps a season's diet samples, says when the diet falls below what\n"
      "the cows need, and prices the cheapest safe way to make up the difference.\n\n"
      "  pluckbook start mybook --scenario northern    a demo book to try things on\n"
      "  pluckbook outlook spring-cows                 when protein falls below need\n"
      "  pluckbook need --weight 1200 --milk 22 --month 3      needs no book\n";
  std::string_view group;
  for (const Command& command : commands()) {
    if (command.group != group) text += fmt::format("\n{}\n", command.group);
    group = command.group;
    const std::string written = fmt::format("{} {}", command.name, command.usage);
    text += fmt::format("  {}  {}\n", pad_right(written, 30), command.purpose);
  }
  text += "\nfor every command\n" + options_text(common_options());
  text +=
      "\nThe book is the nearest folder upward holding book.yaml, or --book DIR, or\n"
      "PLUCKBOOK_BOOK. More on one command: pluckbook COMMAND --help\n"
      "CP crude protein, TDN total digestible nutrients, NEm net energy for\n"
      "maintenance, NDF and ADF neutral and acid detergent fibre, DM dry matter,\n"
      "NPN non-protein nitrogen. All shares are of dry matter.\n"
      "exit: 0 done, 1 a warning is the answer, 2 command line, 3 book, 4 disk or lock\n";
  return text;
}

std::string help_text(const Command& command) {
  std::string text =
      fmt::format("pluckbook {} {}\n  {}\n\n", command.name, command.usage, command.purpose);
  for (const std::string_view example : command.examples) text += fmt::format("  {}\n", example);
  const std::vector<Option> own = own_options(command);
  if (!own.empty()) text += "\noptions\n" + options_text(own);
  text += "\nfor every command\n" + options_text(common_options());
  text += "\nexit: 0 done, 1 a warning is the answer, 2 command line, 3 book, 4 disk or lock\n";
  return text;
}

std::string Arguments::get(std::string_view name, const std::string& otherwise) const {
  const auto found = options.find(std::string(name));
  return found == options.end() ? otherwise : found->second;
}

Result<Date> Arguments::date(std::string_view name, Date otherwise) const {
  if (!has(name)) return otherwise;
  if (const auto day = parse_date(get(name))) return *day;
  return usage_problem(fmt::format("--{} '{}' is not a date", name, shown(get(name))),
                       "write year-month-day: 2026-07-06");
}

Result<double> Arguments::number(std::string_view name, double otherwise) const {
  if (!has(name)) return otherwise;
  if (const auto value = parse_number(get(name))) return *value;
  return usage_problem(fmt::format("--{} '{}' is not a number", name, shown(get(name))),
                       "write a plain number, a point for decimals");
}

Problem Arguments::beyond(std::string_view name, std::string_view limits,
                          std::string remedy) const {
  return usage_problem(fmt::format("--{} {} is outside {}", name, shown(get(name)), limits),
                       std::move(remedy));
}

}  // namespace pluckbook::cli
