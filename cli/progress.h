// progress.h - how far long work has come, on a terminal's standard error and only after two
// seconds; nothing at all elsewhere. The line is wiped when the work ends.
#pragma once

#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <string>
#include <utility>

namespace pluckbook::cli {

class Progress {
 public:
  explicit Progress(std::string what) : what_(std::move(what)) {}
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress() {
    if (shown_ >= 0) std::fputs("\r\x1b[K", stderr);
  }

  /// Shows a new percent of the work as it is done. Requires: 0 <= share <= 1.
  void at(double share) {
    const int percent = static_cast<int>(share * 100);
    if (!on_terminal_ || percent == shown_ || Clock::now() - began_ < quiet_) return;
    shown_ = percent;
    std::fprintf(stderr, "\r%s: %d %%", what_.c_str(), percent);
    std::fflush(stderr);
  }

 private:
  using Clock = std::chrono::steady_clock;
  static constexpr std::chrono::seconds quiet_{2};

  std::string what_;
  bool on_terminal_ = isatty(STDERR_FILENO) == 1;
  Clock::time_point began_ = Clock::now();
  int shown_ = -1;
};

}  // namespace pluckbook::cli
