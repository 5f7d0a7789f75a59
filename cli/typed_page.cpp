#include "cli/typed_page.h"

#include <fmt/format.h>

#include "base/text.h"
#include "book/lab_values.h"
#include "book/read.h"
#include "cli/terminal.h"

namespace pluckbook::cli {
namespace {

Result<Basis> basis_in(const std::string& word) {
  if (word == "dry-matter" || word == "dm") return Basis::dry_matter;
  if (word == "as-received" || word == "ar") return Basis::as_received;
  return usage_problem(fmt::format("unknown basis '{}'", shown(word)),
                       "write dry-matter or as-received, as the page is headed");
}

Result<Done> add_figure(LabResult& page, const std::string& name_value) {
  const Result<TypedValue> typed = parse_lab_value(name_value);
  if (!typed) return typed.problems();
  if (auto twice = keep_figure(page.values, *typed))
    return usage_problem(std::move(twice->what), std::move(twice->remedy));
  return Done{};
}

/// All slips of all lines at once.
Result<LabResult> page_of(LabResult page, const std::vector<std::string>& lines) {
  Problems problems;
  for (const std::string& line : lines) {
    const Result<Done> added = add_figure(page, line);
    if (!added) problems.insert(problems.end(), added.problems().begin(), added.problems().end());
  }
  if (!problems.empty()) return problems;
  if (page.values.empty()) {
    return usage_problem("no figures came",
                         "write, for one,  dm=92.1 cp=10.4; nothing was written");
  }
  return page;
}

void say(const Problems& problems) {
  for (const Problem& problem : problems) {
    const std::string text = to_text(problem);
    std::fwrite(text.data(), 1, text.size(), stdout);
  }
}

Result<Basis> asked_basis() {
  for (;;) {
    const auto word = ask("basis of the page, dry-matter or as-received (dry-matter): ");
    if (!word) return usage_problem("the page was not finished", "nothing was written");
    Result<Basis> basis = basis_in(word->empty() ? "dry-matter" : *word);
    if (basis) return basis;
    say(basis.problems());
  }
}

/// The question a green bag with the protein of straw raises.
bool says_as_received(const LabResult& page) {
  const auto word = ask(fmt::format(
      "protein {} % in a bag of {} % dry matter: is that the as-received column? (no): ",
      shortest(page.values.at("cp")), shortest(page.values.at("dm"))));
  return word && (*word == "yes" || *word == "y");
}

/// The same question where nobody can be asked.
Problem basis_wanted(const LabResult& page) {
  return usage_problem(
      fmt::format("protein {} % in a bag of {} % dry matter: as received, or dry matter?",
                  shortest(page.values.at("cp")), shortest(page.values.at("dm"))),
      "say --basis as-received or --basis dry-matter, as the page is headed; nothing was written");
}

Result<LabResult> asked_page(const Arguments& arguments) {
  LabResult page;
  const Result<Basis> basis =
      arguments.has("basis") ? basis_in(arguments.get("basis")) : asked_basis();
  if (!basis) return basis.problems();
  page.basis = *basis;
  std::string question = "figures as name=value, one a line (cp=10.4); an empty line ends\n> ";
  for (;;) {
    const auto line = ask(question);
    question = "> ";
    if (!line) return usage_problem("the page was not finished", "nothing was written");
    if (line->empty()) break;
    const Result<Done> added = add_figure(page, *line);
    if (!added) say(added.problems());
  }
  if (looks_as_received(page) && says_as_received(page)) page.basis = Basis::as_received;
  return page_of(std::move(page), {});
}

}  // namespace

Result<LabResult> typed_page(const Arguments& arguments) {
  std::vector<std::string> lines(arguments.words.begin() + 1, arguments.words.end());
  if (lines.empty() && on_terminal() && !arguments.has("json")) return asked_page(arguments);
  if (lines.empty()) {
    return usage_problem("no figures given",
                         "write, for one,  dm=92.1 cp=10.4  or - to read such lines from a pipe");
  }
  LabResult page;
  const Result<Basis> basis = basis_in(arguments.get("basis", "dry-matter"));
  if (!basis) return basis.problems();
  page.basis = *basis;
  if (lines == std::vector<std::string>{"-"}) {
    Result<std::vector<std::string>> piped = piped_lines();
    if (!piped) return piped.problems();
    lines = *std::move(piped);
  }
  Result<LabResult> typed = page_of(std::move(page), lines);
  if (typed && !arguments.has("basis") && looks_as_received(*typed)) return basis_wanted(*typed);
  return typed;
}

}  // namespace pluckbook::cli
