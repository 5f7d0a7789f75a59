// The manual page, in the language of man(7), from the table that feeds --help.
#include <fmt/format.h>

#include "base/text.h"
#include "cli/command.h"

namespace pluckbook::cli {
namespace {

/// Text that man(7) takes for words: a leading point or quote and every backslash and hyphen.
std::string roff(std::string_view text) {
  std::string out;
  if (!text.empty() && (text[0] == '.' || text[0] == '\'')) out += "\\&";
  for (const char c : text) {
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else {
      out += c;
    }
  }
  return out;
}

std::string options_in_roff(const std::vector<Option>& options) {
  std::string text;
  for (const Option& option : options) {
    text += fmt::format(".TP\n.B {}{}\n{}\n", roff(option.written()),
                        option.value.empty() ? "" : " " + roff(option.value), roff(option.help));
  }
  return text;
}

std::string command_in_roff(const Command& command) {
  std::string text = fmt::format(".SS {} {}\n{}.\n", roff(command.name), roff(command.usage),
                                 roff(command.purpose));
  text += options_in_roff(own_options(command));
  text += ".PP\n";
  for (const std::string_view example : command.examples) {
    text += fmt::format(".EX\n    {}\n.EE\n", roff(example));
  }
  return text;
}

Result<Answer> run_manual(const Arguments&) {
  Answer answer;
  answer.kind = Answer::Kind::data;
  answer.text =
      ".TH PLUCKBOOK 1 \"\" \"pluckbook " PLUCKBOOK_VERSION
      "\" \"User commands\"\n"
      ".SH NAME\npluckbook \\- when the diet of grazing cows falls short, and what to feed\n"
      ".SH SYNOPSIS\n.B pluckbook\n.I COMMAND\n[\\fIWORDS\\fR] [\\fIOPTIONS\\fR]\n"
      ".SH DESCRIPTION\n"
      "Keeps the hand\\-plucked diet samples of a grazing season, pasture by pasture, sets\n"
      "protein and TDN of the diet against what the cows need, says when the diet falls short\n"
      "and how surely, and prices the cheapest safe supplement.\n"
      "The book is the nearest folder upward that holds book.yaml.\n"
      ".SH COMMANDS\n";
  for (const Command& command : commands()) answer.text += command_in_roff(command);
  answer.text += ".SH OPTIONS OF EVERY COMMAND\n" + options_in_roff(common_options());
  answer.text +=
      ".SH EXIT STATUS\n"
      ".TP\n.B 0\ndone\n"
      ".TP\n.B 1\nthe answer is a warning: a problem in the book, a need that no feed can meet\n"
      ".TP\n.B 2\nthe command line is wrong\n"
      ".TP\n.B 3\nthe book or an input file is bad\n"
      ".TP\n.B 4\nthe disk or the lock failed; nothing was changed unless it says so\n"
      ".SH ENVIRONMENT\n"
      ".TP\n.B PLUCKBOOK_BOOK\nthe book's folder, where \\-\\-book is not given\n"
      ".TP\n.B NO_COLOR\nwhen set and not empty, words are not coloured\n";
  return answer;
}

}  // namespace

Command manual_command() {
  return {
      .name = "manual",
      .usage = "",
      .purpose = "this help as a manual page",
      .group = "the program",
      .examples = {"pluckbook manual > pluckbook.1"},
      .uses_book = false,
      .run = run_manual,
  };
}

}  // namespace pluckbook::cli
