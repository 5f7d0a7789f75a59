#include "advice/backtest.h"

#include <fmt/format.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>

#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"
#include "report/backtest_page.h"

namespace pluckbook::cli {
namespace {

/// Says how far the work is, on a terminal and once it has taken two seconds.
class Meter {
 public:
  void operator()(std::size_t done, std::size_t of) {
    const auto taken = std::chrono::steady_clock::now() - began_;
    if (!terminal_ || taken < std::chrono::seconds(2)) return;
    fmt::print(stderr, "\rreplaying {} of {} results", done, of);
    if (done == of) fmt::print(stderr, "\n");
    std::fflush(stderr);
  }

 private:
  bool terminal_ = isatty(STDERR_FILENO) == 1;
  std::chrono::steady_clock::time_point began_ = std::chrono::steady_clock::now();
};

Result<Answer> run_backtest(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  std::vector<const Pasture*> pastures;
  if (arguments.words.empty()) {
    for (const Pasture& pasture : opened->known.pastures) pastures.push_back(&pasture);
  } else {
    Result<const Pasture*> pasture = pasture_named(opened->known, arguments.words[0]);
    if (!pasture) return pasture.problems();
    pastures.push_back(*pasture);
  }
  const Result<Backtest> replayed = backtest(opened->known, pastures, Meter());
  if (!replayed) return replayed.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *replayed, opened->reader);
  return answer;
}

}  // namespace

Command backtest_command() {
  return {
      .name = "backtest",
      .usage = "[PASTURE]",
      .purpose = "how past projections did",
      .group = "the numbers",
      .examples = {"pluckbook backtest", "pluckbook backtest draws --as-of 2026-10-31"},
      .most_words = 1,
      .run = run_backtest,
      .rows = "nutrients/leads",
  };
}

}  // namespace pluckbook::cli
