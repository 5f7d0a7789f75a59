// What every command has in common: help, manual page and completion from one table; CSV that says
// what the JSON says; colour and width that follow the terminal and nothing else.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// Every "--word" of a text.
std::set<std::string> options_in(const std::string& text) {
  std::set<std::string> found;
  for (std::size_t at = text.find("--"); at != std::string::npos; at = text.find("--", at + 2)) {
    const std::size_t end = text.find_first_not_of("abcdefghijklmnopqrstuvwxyz-", at + 2);
    const std::string word = text.substr(at, end - at);
    if (word.size() > 3 && (at == 0 || text[at - 1] != '-')) found.insert(word);
  }
  return found;
}

std::vector<std::string> command_names(const FreshFolder& folder) {
  std::vector<std::string> names;
  for (const std::string& line : lines_of(run_in(folder.path(), "--help").output)) {
    if (line.rfind("for every command", 0) == 0) break;
    const bool row = line.size() > 3 && line.substr(0, 2) == "  " && line[2] != ' ';
    if (!row || line.rfind("  pluckbook", 0) == 0) continue;
    names.push_back(line.substr(2, line.find(' ', 2) - 2));
  }
  return names;
}

std::string unescaped(std::string roff) {
  for (std::size_t at = 0; (at = roff.find("\\-", at)) != std::string::npos;) roff.erase(at, 1);
  return roff;
}

TEST(Face, EveryHelpFits80ColumnsAnd60LinesAndHasAnExample) {
  FreshFolder folder;
  std::vector<std::string> names = command_names(folder);
  ASSERT_GE(names.size(), 15U);
  names.insert(names.begin(), "");
  for (const std::string& name : names) {
    const Ran help = run_in(folder.path(), name + " --help");
    EXPECT_EQ(help.exit, 0);
    const auto lines = lines_of(help.output);
    EXPECT_LE(lines.size(), 60U) << name;
    for (const std::string& line : lines) EXPECT_LE(line.size(), 80U) << line;
    EXPECT_NE(help.output.find("  pluckbook " + name), std::string::npos) << name;
    EXPECT_NE(help.output.find("exit: 0 done"), std::string::npos) << name;
  }
}

TEST(Face, HelpManualAndCompletionsKnowTheSameCommandsAndOptions) {
  FreshFolder folder;
  std::set<std::string> in_help;
  const auto names = command_names(folder);
  for (const std::string& name : names) {
    in_help.merge(options_in(run_in(folder.path(), name + " --help").output));
  }
  in_help.erase("--help");
  in_help.erase("--flag");
  ASSERT_GE(in_help.size(), 20U);
  const std::string manual = unescaped(run_in(folder.path(), "manual").output);
  for (const std::string& name : names) {
    EXPECT_NE(manual.find(".SS " + name), std::string::npos) << name;
  }
  EXPECT_EQ(options_in(manual), in_help);
  for (const char* shell : {"bash", "zsh", "fish"}) {
    SCOPED_TRACE(shell);
    const std::string script = run_in(folder.path(), std::string("completion ") + shell).output;
    for (const std::string& name : names) EXPECT_NE(script.find(name), std::string::npos) << name;
    for (const std::string& option : in_help) {
      const std::string shown = shell == std::string("fish") ? "-l " + option.substr(2) : option;
      EXPECT_NE(script.find(shown), std::string::npos) << option;
    }
    for (const std::string& option : options_in(script)) {
      EXPECT_TRUE(in_help.contains(option)) << option << " is in no help";
    }
  }
}

std::string completed(const FreshFolder& folder, const std::string& typed) {
  write_text(folder.path() / "try.bash", "pluckbook() { " PLUCKBOOK_PROGRAM
                                         " \"$@\"; }\n"
                                         "source <(pluckbook completion bash)\n"
                                         "COMP_WORDS=(" +
                                             typed +
                                             "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n"
                                             "_pluckbook; echo \"${COMPREPLY[*]}\"\n");
  return shell("cd '" + folder.path().string() + "' && bash try.bash 2>&1").output;
}

TEST(Face, BashCompletesCommandsOptionsAndTheBooksOwnIds) {
  FreshFolder folder("northern");
  EXPECT_EQ(completed(folder, "pluckbook outl"), "outlook\n");
  EXPECT_EQ(completed(folder, "pluckbook price spr"), "spring-cows\n");
  EXPECT_EQ(completed(folder, "pluckbook diet mea"), "meadow\n");
  EXPECT_EQ(completed(folder, "pluckbook mark 26-draws-08"), "26-draws-08\n");
  EXPECT_EQ(completed(folder, "pluckbook price --cov"), "--cover\n");
}

/// The command's table as CSV, header and cells.
std::vector<std::string> csv_lines(const FreshFolder& folder, const std::string& words) {
  const Ran ran = run_in(folder.path(), words + " --csv");
  EXPECT_EQ(ran.output.find("\n"), ran.output.find("\r\n") + 1) << words;
  return lines_of(ran.output);
}

TEST(Face, CsvHasTheRowsOfTheJsonWithUnitsInTheHeader) {
  FreshFolder folder("northern");
  const std::string day = " --as-of 2026-08-20";
  const auto outlook = csv_lines(folder, "outlook" + day);
  ASSERT_EQ(outlook.size(), 5U);  // two herds, two nutrients
  EXPECT_EQ(outlook[0].rfind("herd,head,pasture,", 0), 0U);
  EXPECT_NE(outlook[0].find("need_amount_now_lb_per_day"), std::string::npos);
  EXPECT_EQ(outlook[1].rfind("spring-cows,140,draws,", 0), 0U);

  const auto json = nlohmann::json::parse(
      run_in(folder.path(), "price spring-cows --json" + day, "2>/dev/null").output);
  const auto price = csv_lines(folder, "price spring-cows" + day);
  ASSERT_EQ(price.size(), json.at("options").size() + 1);
  for (std::size_t i = 0; i < json.at("options").size(); ++i) {
    EXPECT_EQ(price[i + 1].rfind(json.at("options")[i].at("feed").get<std::string>() + ",", 0), 0U);
  }
  EXPECT_EQ(csv_lines(folder, "bags --as-of 2026-09-05").size(), 2U);
  EXPECT_GT(csv_lines(folder, "diet draws" + day).size(), 200U);
  EXPECT_GT(csv_lines(folder, "need spring-cows" + day).size(), 20U);
}

TEST(Face, CsvIsForTablesAndOneFormAtATime) {
  FreshFolder folder("northern");
  EXPECT_EQ(run_in(folder.path(), "move --csv spring-cows draws").exit, 2);
  const Ran both = run_in(folder.path(), "outlook --csv --json");
  EXPECT_EQ(both.exit, 2);
  EXPECT_EQ(both.output, "pluckbook: --json and --csv cannot both be had\n  write one of them\n");
}

TEST(Face, ColourIsForTerminalsUnlessAskedFor) {
  FreshFolder folder("northern");
  const std::string outlook = "outlook spring-cows --as-of 2026-08-20";
  const std::string plain = run_in(folder.path(), outlook).output;
  EXPECT_EQ(plain.find('\x1b'), std::string::npos);
  std::string coloured = run_in(folder.path(), outlook + " --color always").output;
  EXPECT_NE(coloured.find("\x1b[1m"), std::string::npos);
  for (std::size_t at = 0; (at = coloured.find('\x1b', at)) != std::string::npos;) {
    coloured.erase(at, coloured.find('m', at) - at + 1);
  }
  EXPECT_EQ(coloured, plain) << "colour changed a word";
  const Ran json = run_in(folder.path(), outlook + " --json --color always");
  EXPECT_EQ(json.output.find('\x1b'), std::string::npos);
  EXPECT_EQ(run_in(folder.path(), outlook + " --color mauve").exit, 2);
}

/// What a terminal of so many columns shows.
std::string on_terminal(const FreshFolder& folder, int columns, const std::string& before,
                        const std::string& words) {
  std::string text = shell("cd '" + folder.path().string() + "' && script -qec 'stty cols " +
                           std::to_string(columns) + "; " + before + " " PLUCKBOOK_PROGRAM " " +
                           words + "' /dev/null 2>&1 </dev/null")
                         .output;
  std::erase(text, '\r');
  return text;
}

TEST(Face, TablesKeepToTheTerminalsWidth) {
  FreshFolder folder("northern");
  const std::string price = "price spring-cows --as-of 2026-10-25 --color never";
  for (const int columns : {60, 80, 100, 120, 200}) {
    const std::string text = on_terminal(folder, columns, "", price);
    EXPECT_NE(text.find("feed alone"), std::string::npos) << text;
    for (const std::string& line : lines_of(text)) {
      EXPECT_LE(line.size(), static_cast<std::size_t>(columns)) << line;
    }
  }
  EXPECT_LT(lines_of(on_terminal(folder, 200, "", price)).size(),
            lines_of(on_terminal(folder, 60, "", price)).size());
}

TEST(Face, EveryReadingCommandKeepsTo60ColumnsAndTo80OffATerminal) {
  FreshFolder folder("northern");
  for (const char* words :
       {"bags", "check", "diet draws", "need spring-cows", "outlook", "plan first-calf",
        "compare what-ifs.yaml", "workings spring-cows", "sources", "backtest draws"}) {
    const std::string command = std::string(words) + " --as-of 2026-09-05";
    for (const std::string& line : lines_of(run_in(folder.path(), command).output)) {
      EXPECT_LE(line.size(), 80U) << words << ": " << line;
    }
    for (const std::string& line :
         lines_of(on_terminal(folder, 60, "NO_COLOR=1", command + " 2>/dev/null"))) {
      // A chart keeps its shape and a command to type its line.
      const bool unbroken =
          std::string(words).rfind("diet", 0) == 0 || line.rfind("next: ", 0) == 0;
      EXPECT_TRUE(unbroken || line.size() <= 60) << words << ": " << line;
    }
  }
}

TEST(Face, TerminalsGetColourUnlessTheySayNo) {
  FreshFolder folder("northern");
  const std::string outlook = "outlook spring-cows --as-of 2026-08-20";
  EXPECT_NE(on_terminal(folder, 80, "NO_COLOR= TERM=xterm", outlook).find('\x1b'),
            std::string::npos);
  EXPECT_EQ(on_terminal(folder, 80, "NO_COLOR=1 TERM=xterm", outlook).find('\x1b'),
            std::string::npos);
  EXPECT_EQ(on_terminal(folder, 80, "NO_COLOR= TERM=dumb", outlook).find('\x1b'),
            std::string::npos);
}

TEST(Face, AloneItSaysWhichBookThisIsAndWhatWaits) {
  FreshFolder folder("northern");
  const Ran alone = run_in(folder.path(), "");
  EXPECT_EQ(alone.exit, 0);
  EXPECT_EQ(alone.output.rfind("Teakettle Coulee, the book in ", 0), 0U) << alone.output;
  EXPECT_NE(alone.output.find("26-draws-08: "), std::string::npos);
  EXPECT_NE(alone.output.find("next: pluckbook outlook\n"), std::string::npos);
  FreshFolder empty;
  EXPECT_EQ(run_in(empty.path(), "").output, run_in(empty.path(), "--help").output);
}

}  // namespace
}  // namespace pluckbook::testing
