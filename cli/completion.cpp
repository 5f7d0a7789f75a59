// Shell completion from the table that feeds --help; ids of the book are asked of the program
// itself as one types.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "cli/command.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

/// Which records of the book a command's words name, by the words of its usage.
std::vector<std::string> kinds_of(const Command& command) {
  static const std::pair<const char*, const char*> words[] = {
      {"HERD", "herds"}, {"PASTURE", "pastures"}, {"BAG", "bags"}, {"FEED", "feeds"}};
  std::vector<std::string> kinds;
  for (const auto& [word, kind] : words) {
    if (command.usage.find(word) != std::string_view::npos) kinds.emplace_back(kind);
  }
  return kinds;
}

std::vector<Option> all_options(const Command& command) {
  std::vector<Option> options = own_options(command);
  options.insert(options.end(), common_options().begin(), common_options().end());
  return options;
}

std::string ask_ids(const Command& command) {
  const std::vector<std::string> kinds = kinds_of(command);
  if (kinds.empty()) return "";
  return fmt::format("pluckbook completion --ids {} 2>/dev/null", fmt::join(kinds, ","));
}

std::string names_joined(const std::vector<Command>& all) {
  std::vector<std::string_view> names;
  for (const Command& command : all) names.push_back(command.name);
  return fmt::format("{}", fmt::join(names, " "));
}

std::string bash_script() {
  std::string cases;
  for (const Command& command : commands()) {
    std::string options;
    for (const Option& option : all_options(command)) options += " " + option.written();
    const std::string ids = ask_ids(command);
    cases += fmt::format("    {}) options=\"{}\"", command.name, options.substr(1));
    if (!ids.empty()) cases += fmt::format("; [[ $current == -* ]] || ids=$({})", ids);
    cases += " ;;\n";
  }
  return fmt::format(
      "# bash completion for pluckbook\n"
      "_pluckbook() {{\n"
      "  local current=${{COMP_WORDS[COMP_CWORD]}} command= options= ids= i\n"
      "  for ((i = 1; i < COMP_CWORD; ++i)); do\n"
      "    [[ ${{COMP_WORDS[i]}} == -* ]] || {{ command=${{COMP_WORDS[i]}}; break; }}\n"
      "  done\n"
      "  case $command in\n"
      "    '') options=\"{}\" ;;\n"
      "{}"
      "  esac\n"
      "  COMPREPLY=($(compgen -W \"$options $ids\" -- \"$current\"))\n"
      "}}\n"
      "complete -o default -F _pluckbook pluckbook\n",
      names_joined(commands()), cases);
}

/// Words inside single quotes of zsh and fish.
std::string in_quotes(std::string_view text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

/// zsh takes : [ ] in a description for its own signs.
std::string zsh_words(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == ':' || c == '[' || c == ']') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_script() {
  std::string names;
  std::string cases;
  for (const Command& command : commands()) {
    names +=
        "    " + in_quotes(fmt::format("{}:{}", command.name, zsh_words(command.purpose))) + "\n";
    cases += fmt::format("    {}) _arguments", command.name);
    for (const Option& option : all_options(command)) {
      const std::string value = option.value.empty() ? "" : ":" + zsh_words(option.value) + ":";
      cases += " \\\n      " +
               in_quotes(fmt::format("--{}[{}]{}", option.name, zsh_words(option.help), value));
    }
    const std::string ids = ask_ids(command);
    if (!ids.empty()) cases += fmt::format(" \\\n      \"*:word:($({}))\"", ids);
    cases += " ;;\n";
  }
  return fmt::format(
      "#compdef pluckbook\n"
      "local -a names\n"
      "if (( CURRENT == 2 )); then\n"
      "  names=(\n{}  )\n"
      "  _describe command names\n"
      "else\n"
      "  local command=$words[2]\n"
      "  shift words\n"
      "  (( CURRENT-- ))\n"
      "  case $command in\n{}  esac\n"
      "fi\n",
      names, cases);
}

std::string fish_script() {
  std::string text = "# fish completion for pluckbook\n";
  for (const Command& command : commands()) {
    text += fmt::format("complete -c pluckbook -n __fish_use_subcommand -f -a {} -d {}\n",
                        command.name, in_quotes(command.purpose));
    const std::string seen = in_quotes(fmt::format("__fish_seen_subcommand_from {}", command.name));
    for (const Option& option : all_options(command)) {
      text += fmt::format("complete -c pluckbook -n {} -l {}{} -d {}\n", seen, option.name,
                          option.value.empty() ? "" : " -r", in_quotes(option.help));
    }
    const std::string ids = ask_ids(command);
    if (!ids.empty()) {
      text +=
          fmt::format("complete -c pluckbook -n {} -f -a {}\n", seen, in_quotes("(" + ids + ")"));
    }
  }
  return text;
}

template <class Record>
void add_ids(std::string& text, const std::vector<Record>& records) {
  for (const Record& record : records) text += record.id + "\n";
}

/// The ids of the kinds named, one a line.
Result<std::string> ids_of(const Arguments& arguments) {
  const std::string kinds = arguments.get("ids");
  const bool of_bags = kinds.find("bags") != std::string::npos;
  Result<Opened> opened = open_book(arguments, of_bags ? PasturesWanted() : no_pastures());
  if (!opened) return opened.problems();
  std::string text;
  for (std::string_view kind : split(kinds, ',')) {
    if (kind == "herds") add_ids(text, opened->known.herds);
    if (kind == "pastures") add_ids(text, opened->known.pastures);
    if (kind == "bags") add_ids(text, opened->known.bags);
    if (kind == "feeds") add_ids(text, opened->known.feeds);
  }
  return text;
}

Result<Answer> run_completion(const Arguments& arguments) {
  Answer answer;
  answer.kind = Answer::Kind::data;
  if (arguments.has("ids")) {
    Result<std::string> ids = ids_of(arguments);
    if (!ids) return ids.problems();
    answer.text = *ids;
    return answer;
  }
  const std::string shell = arguments.words.empty() ? "" : arguments.words[0];
  if (shell == "bash") {
    answer.text = bash_script();
  } else if (shell == "zsh") {
    answer.text = zsh_script();
  } else if (shell == "fish") {
    answer.text = fish_script();
  } else {
    return usage_problem(fmt::format("no completion for the shell '{}'", shown(shell)),
                         "write bash, zsh or fish");
  }
  return answer;
}

}  // namespace

Command completion_command() {
  return {
      .name = "completion",
      .usage = "SHELL",
      .purpose = "words to complete, for bash, zsh or fish",
      .group = "the program",
      .examples = {"source <(pluckbook completion bash)",
                   "pluckbook completion fish > ~/.config/fish/completions/pluckbook.fish"},
      .options = {{"ids", "KIND", "ids of the book: herds, pastures, bags or feeds"}},
      .most_words = 1,
      .uses_book = false,
      .run = run_completion,
  };
}

}  // namespace pluckbook::cli
