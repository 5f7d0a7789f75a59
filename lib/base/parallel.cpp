#include "base/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace pluckbook {
namespace {

// The pieces not begun yet, and the first thing that went wrong.
struct Pieces {
  std::size_t count;
  const std::function<void(std::size_t)>& piece;
  std::atomic<std::size_t> next = 0;
  std::mutex guard = {};
  std::exception_ptr failure = nullptr;

  void work_off() {
    try {
      for (std::size_t i = next++; i < count; i = next++) piece(i);
    } catch (...) {
      const std::lock_guard<std::mutex> held(guard);
      failure = std::current_exception();
      next = count;
    }
  }
};

}  // namespace

void in_parallel(std::size_t count, std::size_t least,
                 const std::function<void(std::size_t)>& piece) {
  Pieces pieces{count, piece};
  const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
  const std::size_t threads = std::min(cores, count / std::max<std::size_t>(least, 1));
  {
    std::vector<std::jthread> helpers;
    try {
      for (std::size_t i = 1; i < threads; ++i)
        helpers.emplace_back([&pieces] { pieces.work_off(); });
    } catch (const std::system_error&) {  // no thread to be had: those there are do the work
    }
    pieces.work_off();
  }
  if (pieces.failure) std::rethrow_exception(pieces.failure);
}

}  // namespace pluckbook
