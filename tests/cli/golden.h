// golden.h - reads and replays the files of tests/golden and tests/problems.
//
// Every file of tests/golden and tests/problems is a book ("book: northern"; again further down: a
// fresh one), files written into it ("file feeds.yaml", then lines after "| "), lines of the shell
// ("$ "), what is typed when they ask ("> "), their output and exit status, in one text that a
// rancher could read. To renew them after a change that was meant, run the test with
// PLUCKBOOK_GOLDEN=write and read the difference line by line.
#pragma once

#include <algorithm>
#include <functional>
#include <memory>
#include <vector>

#include "cli/run.h"
#include "cli/typist.h"

namespace pluckbook::testing {

/// What a golden's command printed, where it ran.
struct Printed {
  const std::filesystem::path& folder;
  const std::string& command;
  const Ran& ran;
};
using Look = std::function<void(const Printed&)>;

inline std::vector<std::filesystem::path> golden_files() {
  std::vector<std::filesystem::path> files;
  for (const char* folder : {"tests/golden", "tests/problems"}) {
    const auto path = std::filesystem::path(PLUCKBOOK_SOURCE) / folder;
    for (const auto& entry : std::filesystem::directory_iterator(path)) {
      if (entry.path().extension() == ".test") files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// The lines that follow and begin with the sign, which are taken; without the sign.
inline std::vector<std::string> taken_lines(std::istringstream& lines, char sign) {
  std::vector<std::string> taken;
  while (lines.peek() == sign) {
    std::string line;
    std::getline(lines, line);
    taken.push_back(line.size() > 2 ? line.substr(2) : "");
  }
  return taken;
}

/// The same lines as they stand in the golden, the sign before them.
inline std::string signed_lines(const std::vector<std::string>& lines, char sign) {
  std::string text;
  for (const std::string& line : lines) {
    text += sign + (line.empty() ? "" : " " + line) + "\n";
  }
  return text;
}

/// A golden on its way through: the book it works in and the text as it comes out now.
struct Replay {
  std::unique_ptr<FreshFolder> folder;
  std::string text;
  bool in_output = false;
  Look look;

  void begin_book(const std::string& line) {
    const std::string scenario = line.substr(line.find(": ") + 2);
    folder = std::make_unique<FreshFolder>(scenario == "none" ? "" : scenario);
    text += (text.empty() ? "" : "\n") + line + "\n";
  }

  void write_file(const std::string& line, std::istringstream& lines) {
    const std::vector<std::string> content = taken_lines(lines, '|');
    std::string bytes;
    for (const std::string& one : content) bytes += one + "\n";
    write_text(folder->path() / line.substr(line.find(' ') + 1), bytes);
    text += "\n" + line + "\n" + signed_lines(content, '|');
  }

  void run(const std::string& line, std::istringstream& lines) {
    in_output = true;
    const std::vector<std::string> typed = taken_lines(lines, '>');
    text += "\n" + line + "\n" + signed_lines(typed, '>');
    const Ran ran = typed.empty() ? run_line(folder->path(), "{ " + line.substr(2) + "; } 2>&1")
                                  : run_typed(folder->path(), line.substr(2), typed);
    text += ran.output + "exit " + std::to_string(ran.exit) + "\n";
    look({folder->path(), line, ran});
  }
};

/// The same text with every command run anew; each is looked at before the next one runs.
inline std::string replayed(
    const std::string& golden, Look look = [](const Printed&) {}) {
  std::istringstream lines(golden);
  Replay replay;
  replay.look = std::move(look);
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("exit ")) {
      replay.in_output = false;
    } else if (line.starts_with("$ ")) {
      replay.run(line, lines);
    } else if (replay.in_output) {
      continue;
    } else if (line.starts_with("book: ")) {
      replay.begin_book(line);
    } else if (line.starts_with("# ")) {
      replay.text += line + "\n";
    } else if (line.starts_with("file ")) {
      replay.write_file(line, lines);
    }
  }
  return replay.text;
}

}  // namespace pluckbook::testing
