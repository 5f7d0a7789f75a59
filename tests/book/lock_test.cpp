// The lock of a book: one writer at a time, and no trace of it afterwards.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <csignal>
#include <thread>

#include "book/book_folder.h"
#include "book/store.h"

namespace pluckbook {
namespace {

bool lock_file_stands(const BookFolder& folder) {
  return std::filesystem::exists(folder.path() / ".lock");
}

TEST(Lock, ASecondWriterWaitsThenSaysWhoHoldsTheBook) {
  const BookFolder folder;
  {
    const Result<BookLock> first = lock_book(disk(), folder.path());
    ASSERT_TRUE(first);
    const Result<BookLock> second = lock_book(disk(), folder.path(), 100);
    ASSERT_FALSE(second);
    const Problem& problem = second.problems()[0];
    EXPECT_EQ(problem.fault, Fault::system);
    EXPECT_EQ(problem.what.substr(0, problem.what.find(" since")),
              "the book is being changed by process " + std::to_string(::getpid()));
    EXPECT_TRUE(lock_file_stands(folder)) << "who waited in vain leaves the holder's file";
  }
  EXPECT_TRUE(lock_book(disk(), folder.path(), 0));
}

TEST(Lock, LeavesNoFileBehind) {
  const BookFolder folder;
  { ASSERT_TRUE(lock_book(disk(), folder.path())); }
  EXPECT_FALSE(lock_file_stands(folder));
}

TEST(Lock, OfAKilledProcessFreesItself) {
  const BookFolder folder;
  int ready[2];
  ASSERT_EQ(::pipe(ready), 0);
  const pid_t child = ::fork();
  if (child == 0) {
    const Result<BookLock> held = lock_book(disk(), folder.path());
    ::write(ready[1], "x", held ? 1 : 0);
    for (;;) ::pause();
  }
  char byte = 0;
  ASSERT_EQ(::read(ready[0], &byte, 1), 1);
  const Result<BookLock> refused = lock_book(disk(), folder.path(), 20);
  ASSERT_FALSE(refused);
  EXPECT_NE(refused.problems()[0].what.find("process " + std::to_string(child)), std::string::npos);
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  EXPECT_TRUE(lock_file_stands(folder)) << "a killed process cannot clean up";
  { EXPECT_TRUE(lock_book(disk(), folder.path(), 0)); }
  EXPECT_FALSE(lock_file_stands(folder)) << "the next one does";
  ::close(ready[0]);
  ::close(ready[1]);
}

TEST(Lock, AQueueThatMovesIsWaitedFor) {
  const BookFolder folder;
  std::atomic<int> kept = 0;
  std::atomic<int> inside = 0;
  const auto writer = [&] {
    for (int i = 0; i < 5; ++i) {
      const Result<BookLock> lock = lock_book(disk(), folder.path(), 5000);
      if (!lock) return;
      EXPECT_EQ(++inside, 1) << "two writers at once";
      std::this_thread::sleep_for(std::chrono::milliseconds(2));
      --inside;
      ++kept;
    }
  };
  std::vector<std::thread> writers;
  for (int i = 0; i < 16; ++i) writers.emplace_back(writer);
  for (std::thread& one : writers) one.join();
  EXPECT_EQ(kept, 16 * 5);
  EXPECT_FALSE(lock_file_stands(folder));
}

TEST(Lock, OneWriterThatKeepsTheBookIsGivenUpWithinTwoSeconds) {
  const BookFolder folder;
  const Result<BookLock> held = lock_book(disk(), folder.path());
  ASSERT_TRUE(held);
  const auto begin = std::chrono::steady_clock::now();
  EXPECT_FALSE(lock_book(disk(), folder.path()));
  const std::chrono::duration<double> waited = std::chrono::steady_clock::now() - begin;
  EXPECT_GT(waited.count(), 1.5);
  EXPECT_LT(waited.count(), 3.0);
}

TEST(Lock, ThroughAPlantedLinkIsRefused) {
  const BookFolder folder, other;
  std::filesystem::create_symlink(other.path() / "herds.yaml", folder.path() / ".lock");
  const std::string before = other.text("herds.yaml");
  EXPECT_FALSE(lock_book(disk(), folder.path()));
  EXPECT_EQ(other.text("herds.yaml"), before);
}

}  // namespace
}  // namespace pluckbook
