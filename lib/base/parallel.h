// parallel.h - independent pieces of work on all cores of the machine.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "base/problem.h"

namespace pluckbook {

/// Calls piece(0) ... piece(count - 1), each once, in no order that can be relied on, and returns
/// when all are done. Few pieces (under `least` for each thread) are worked off where it is called.
/// Where a piece throws, one of the exceptions is thrown again here.
/// Requires: pieces touch nothing in common, or guard it.
void in_parallel(std::size_t count, std::size_t least,
                 const std::function<void(std::size_t)>& piece);

/// What make(0) ... make(count - 1) give, each a Result<T>, in that order.
/// Fails: as the first of them that fails.
template <class T, class Make>
Result<std::vector<T>> all_in_parallel(std::size_t count, const Make& make) {
  std::vector<std::optional<Result<T>>> made(count);
  in_parallel(count, 1, [&](std::size_t i) { made[i].emplace(make(i)); });
  std::vector<T> all;
  for (std::optional<Result<T>>& one : made) {
    if (!one->ok()) return one->problems();
    all.push_back(*std::move(*one));
  }
  return all;
}

}  // namespace pluckbook
