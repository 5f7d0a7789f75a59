#include "cli/typed_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "book/lab_values.h"
#include "book/read.h"
#include "book/two_columns.h"
#include "cli/terminal.h"

namespace pluckbook::cli {
namespace {

Result<Basis> basis_in(const std::string& word) {
  if (word == "dry-matter" || word == "dm") return Basis::dry_matter;
  if (word == "as-received" || word == "ar") return Basis::as_received;
  return usage_problem(fmt::format("unknown basis '{}'", shown(word)),
                       "write dry-matter or as-received, as the page is headed");
}

/// A page while it is typed: what is kept of it, and the rows that came with both columns.
struct Typing {
  LabResult page;
  std::vector<BothColumns> both;
};

Problem as_usage(Problem problem) {
  problem.fault = Fault::usage;
  return problem;
}

Result<Done> keep(Typing& typing, const TypedValue& value) {
  if (auto twice = keep_figure(typing.page.values, value)) return Problems{as_usage(*twice)};
  return Done{};
}

/// Dry matter itself stands as received in one column and as 100 in the other.
double kept_of(const BothColumns& row) {
  return row.analyte == "dm" ? row.as_received : row.dry_matter;
}

Result<Done> add_both(Typing& typing, Result<BothColumns> row) {
  if (!row) {
    Problems problems = row.problems();
    for (Problem& problem : problems) problem.fault = Fault::usage;
    return problems;
  }
  if (typing.page.basis == Basis::as_received)
    return usage_problem("both columns are given, and the basis of one",
                         "leave --basis out: the dry-matter column is kept");
  typing.both.push_back(*row);
  return keep(typing, {row->analyte, kept_of(*row)});
}

Result<Done> add_figure(Typing& typing, const std::string& name_value) {
  const std::size_t equals = name_value.find('=');
  if (equals != std::string::npos) {
    auto both = both_columns(trimmed(std::string_view(name_value).substr(0, equals)),
                             trimmed(std::string_view(name_value).substr(equals + 1)));
    if (both) return add_both(typing, *std::move(both));
  }
  const Result<TypedValue> typed = parse_lab_value(name_value);
  if (!typed) return typed.problems();
  return keep(typing, *typed);
}

/// The rows that came with both columns, held against the page's dry matter.
Problems columns_apart(const Typing& typing) {
  Problems problems;
  const auto dm = typing.page.values.find("dm");
  for (const BothColumns& row : typing.both) {
    if (dm == typing.page.values.end() || row.analyte == "dm") continue;
    if (auto apart = columns_disagree(row, dm->second)) problems.push_back(as_usage(*apart));
  }
  return problems;
}

bool in_both_columns(const Typing& typing, std::string_view analyte) {
  return std::any_of(typing.both.begin(), typing.both.end(),
                     [&](const BothColumns& row) { return row.analyte == analyte; });
}

/// All slips of all lines at once.
Result<LabResult> page_of(Typing& typing, const std::vector<std::string>& lines) {
  Problems problems;
  for (const std::string& line : lines) {
    const Result<Done> added = add_figure(typing, line);
    if (!added) problems.insert(problems.end(), added.problems().begin(), added.problems().end());
  }
  const Problems apart = columns_apart(typing);
  problems.insert(problems.end(), apart.begin(), apart.end());
  if (!problems.empty()) return problems;
  if (typing.page.values.empty()) {
    return usage_problem("no figures came",
                         "write, for one,  dm=92.1 cp=10.4; nothing was written");
  }
  return std::move(typing.page);
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
  Typing typing;
  LabResult& page = typing.page;
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
    const Result<Done> added = add_figure(typing, *line);
    if (!added) say(added.problems());
  }
  if (!in_both_columns(typing, "cp") && looks_as_received(page) && says_as_received(page))
    page.basis = Basis::as_received;
  return page_of(typing, {});
}

}  // namespace

Result<LabResult> typed_page(const Arguments& arguments) {
  std::vector<std::string> lines(arguments.words.begin() + 1, arguments.words.end());
  if (lines.empty() && on_terminal() && !arguments.has("json")) return asked_page(arguments);
  if (lines.empty()) {
    return usage_problem("no figures given",
                         "write, for one,  dm=92.1 cp=10.4  or - to read such lines from a pipe");
  }
  Typing typing;
  const Result<Basis> basis = basis_in(arguments.get("basis", "dry-matter"));
  if (!basis) return basis.problems();
  typing.page.basis = *basis;
  if (lines == std::vector<std::string>{"-"}) {
    Result<std::vector<std::string>> piped = piped_lines();
    if (!piped) return piped.problems();
    lines = *std::move(piped);
  }
  Result<LabResult> typed = page_of(typing, lines);
  if (typed && !arguments.has("basis") && !in_both_columns(typing, "cp") &&
      looks_as_received(*typed))
    return basis_wanted(*typed);
  return typed;
}

}  // namespace pluckbook::cli
