// main.cpp - the door: reads the command line, runs one command, prints its answer, and turns a
// Problem into words and an exit status. Nothing else happens here.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cstdio>
#include <exception>
#include <new>

#include "cli/as_csv.h"
#include "cli/at_a_glance.h"
#include "cli/colour.h"
#include "cli/command_line.h"
#include "cli/next_line.h"

namespace {

using pluckbook::Fault;
using pluckbook::Problem;
using pluckbook::Problems;

int exit_status(const Problems& problems) {
  int worst = 0;
  for (const Problem& problem : problems) {
    const int status = problem.fault == Fault::usage ? 2 : problem.fault == Fault::input ? 3 : 4;
    worst = std::max(worst, status);
  }
  return worst;
}

void complain(const Problems& problems) {
  for (const Problem& problem : problems) {
    const std::string text = to_text(problem);
    std::fwrite(text.data(), 1, text.size(), stderr);
  }
}

int refuse(const Problems& problems) {
  complain(problems);
  return exit_status(problems);
}

/// An answer that did not reach its reader is no answer.
int print(const std::string& text, int status) {
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (written) return status;
  complain({pluckbook::system_problem("the answer could not be written out",
                                      "the disk or the reader at the other end is gone or full")});
  return 4;
}

/// A closed standard stream would lend its number to the next file opened, and words for people
/// could end in the book. Opened to be read, it takes none.
void occupy_closed_streams() {
  for (int stream = 0; stream <= 2; ++stream) {
    if (fcntl(stream, F_GETFD) == -1) open("/dev/null", O_RDONLY);
  }
}

int run(const std::vector<std::string>& words) {
  using namespace pluckbook::cli;
  const auto parsed = parse(words);
  if (!parsed) return refuse(parsed.problems());
  if (parsed->version) return print("pluckbook " PLUCKBOOK_VERSION "\n", 0);
  if (parsed->help) {
    return print(parsed->command == nullptr ? help_text() : help_text(*parsed->command), 0);
  }
  if (parsed->command == nullptr) {
    const auto glance = at_a_glance();
    return glance ? print(*glance, 0) : refuse(glance.problems());
  }
  const Arguments& arguments = parsed->arguments;
  const auto answer = arguments.has("csv") ? run_for_csv(*parsed->command, arguments)
                                           : parsed->command->run(arguments);
  if (!answer) return refuse(answer.problems());
  const bool in_words =
      answer->kind == Answer::Kind::words && !arguments.has("json") && !arguments.has("csv");
  const std::string text = in_words && parsed->command->uses_book
                               ? with_next_lines_told(answer->text, arguments)
                               : answer->text;
  const bool coloured = in_words && colour_wanted(arguments);
  const int status = print(coloured ? painted(text) : text, answer->exit_status);
  complain(answer->warnings);
  return status;
}

constexpr const char* out_of_memory =
    "pluckbook: the machine ran out of memory\n"
    "  the book is whole; what was not said to be kept, look for before you enter it again\n";

/// Where memory ends inside a library that promises not to throw, nothing else can be said.
[[noreturn]] void give_up() {
  std::fputs(out_of_memory, stderr);
  _exit(4);
}

}  // namespace

int main(int argc, char** argv) {
  std::set_terminate(give_up);
  occupy_closed_streams();
  try {
    return run(std::vector<std::string>(argv + 1, argv + argc));
  } catch (const std::bad_alloc&) {
    std::fputs(out_of_memory, stderr);
  } catch (const std::exception&) {
    std::fputs("pluckbook: something went wrong that the program did not foresee\n", stderr);
  }
  return 4;
}
