#include "base/parallel.h"

#include <gtest/gtest.h>

#include <atomic>
#include <stdexcept>
#include <thread>
#include <vector>

namespace pluckbook {
namespace {

TEST(InParallel, WorksOffEveryPieceOnce) {
  for (const std::size_t count : {0U, 1U, 7U, 1000U}) {
    std::vector<std::atomic<int>> done(count);
    in_parallel(count, 1, [&](std::size_t i) { ++done[i]; });
    for (const std::atomic<int>& times : done) EXPECT_EQ(times, 1);
  }
}

TEST(InParallel, BeginsNoThreadForAFewPieces) {
  const auto here = std::this_thread::get_id();
  in_parallel(7, 8, [&](std::size_t) { EXPECT_EQ(std::this_thread::get_id(), here); });
}

TEST(InParallel, HandsOnWhatAPieceThrows) {
  std::atomic<int> begun = 0;
  const auto work = [&](std::size_t i) {
    ++begun;
    if (i == 3) throw std::runtime_error("the fourth");
  };
  EXPECT_THROW(in_parallel(100, 1, work), std::runtime_error);
  EXPECT_GE(begun, 1);
}

TEST(AllInParallel, GivesResultsInOrderOrTheFirstThatFailed) {
  const auto squares = all_in_parallel<int>(
      100, [](std::size_t i) -> Result<int> { return static_cast<int>(i * i); });
  ASSERT_TRUE(squares);
  for (std::size_t i = 0; i < 100; ++i) EXPECT_EQ((*squares)[i], static_cast<int>(i * i));
  const auto failed = all_in_parallel<int>(100, [](std::size_t i) -> Result<int> {
    if (i % 30 == 29) return input_problem("piece " + std::to_string(i), "none");
    return 0;
  });
  ASSERT_FALSE(failed);
  EXPECT_EQ(failed.problems()[0].what, "piece 29");
}

}  // namespace
}  // namespace pluckbook
