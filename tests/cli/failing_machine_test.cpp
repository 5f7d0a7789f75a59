// The disk, the memory and the reader at the other end fail: plain words, the exit status that is
// documented, and a book that holds the old record or the new one.
#include <gtest/gtest.h>

#include <cerrno>
#include <cstring>
#include <optional>
#include <vector>

#include "cli/traced.h"

namespace pluckbook::testing {
namespace {

// A command that writes, what it says when it is done, and what then stands in the file.
struct Writing {
  const char* words;
  const char* said;
  const char* written;
};
const Writing spoiled = {"mark 26-draws-08 spoiled --date 2026-09-05", "bag 26-draws-08 spoiled",
                         "spoiled: 2026-09-05"};
const Writing result = {"result 26-draws-08 dm=91.5 cp=6.4 --as-of 2026-09-05",
                        "result of bag 26-draws-08 kept", "cp: 6.4}"};
const std::string samples = "samples/2026/draws.yaml";

Ran run_with_fault(const std::filesystem::path& folder, const std::string& fault,
                   const std::string& words) {
  const std::string set = "LD_PRELOAD=" PLUCKBOOK_SHIM " PLUCKBOOK_FAULT='" + fault +
                          "' ASAN_OPTIONS=verify_asan_link_order=0 ";
  const std::string command = "unset PLUCKBOOK_COUNTS; cd '" + folder.string() + "' && " + set +
                              PLUCKBOOK_PROGRAM " " + words + " 2>&1";
  return shell(command);
}

std::vector<std::string> litter_in(const std::filesystem::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with('.')) names.push_back(name);
  }
  return names;
}

bool in_plain_words(const std::string& output) {
  for (const char* jargon : {"errno", "std::", "what():", "terminate", "abort", "Aborted"}) {
    if (output.find(jargon) != std::string::npos) return false;
  }
  return output.starts_with("pluckbook: ");
}

// One command whose n-th call that changes a file fails; the output, or nothing beyond the last.
void fail_every_call(const Writing& writing, int error) {
  const std::string old_text = read_text(FreshFolder("northern").path() / samples);
  constexpr int calls = 14;
  int failed = 0;
  for (int call = 1; call <= calls; ++call) {
    SCOPED_TRACE("call " + std::to_string(call) + ", " + std::strerror(error));
    const FreshFolder folder("northern");
    const std::string fault = "error:" + std::to_string(call) + ":" + std::to_string(error);
    const Ran ran = run_with_fault(folder.path(), fault, writing.words);
    const std::string text = read_text(folder.path() / samples);
    EXPECT_EQ(ran.exit == 0, ran.output.find(writing.said) != std::string::npos) << ran.output;
    if (ran.exit == 0) {
      EXPECT_NE(text.find(writing.written), std::string::npos);
    } else {
      ++failed;
      EXPECT_EQ(ran.exit, 4);
      EXPECT_TRUE(in_plain_words(ran.output)) << ran.output;
      const bool made = ran.output.find("may not outlast a power cut") != std::string::npos;
      EXPECT_EQ(text == old_text, !made) << ran.output;
    }
    EXPECT_LE(run_in(folder.path(), "check").exit, 1);
    EXPECT_LE(litter_in(folder.path()).size(), 1U) << "only what could not be removed";
  }
  EXPECT_GT(failed, error == EINTR ? 1 : 6);
  EXPECT_LT(failed, calls) << "the last calls are beyond the last that is made";
}

TEST(FailingDisk, EveryCallThatChangesAFileMayFailInEveryWay) {
  for (const int error : {ENOSPC, EIO, EDQUOT, EROFS, EINTR}) {
    fail_every_call(spoiled, error);
    if (long_run()) fail_every_call(result, error);
  }
}

TEST(FailingDisk, HalfWritesMakeAWholeFile) {
  const FreshFolder folder("northern"), other("northern");
  ASSERT_EQ(run_with_fault(folder.path(), "short", spoiled.words).exit, 0);
  ASSERT_EQ(run_in(other.path(), spoiled.words).exit, 0);
  EXPECT_EQ(read_text(folder.path() / samples), read_text(other.path() / samples));
}

TEST(FailingDisk, WhatAnEditorSavesMeanwhileIsKeptBesideTheResult) {
  const FreshFolder folder("northern");
  const Ran ran =
      run_with_fault(folder.path(), "edit:" + (folder.path() / samples).string(), result.words);
  EXPECT_EQ(ran.exit, 0) << ran.output;
  EXPECT_NE(ran.output.find("pluckbook: warning: samples/2026/draws.yaml was changed by someone "
                            "else meanwhile: both changes are kept\n"),
            std::string::npos)
      << ran.output;
  const std::string text = read_text(folder.path() / samples);
  EXPECT_NE(text.find("# saved by an editor\n"), std::string::npos);
  EXPECT_NE(text.find(result.written), std::string::npos);
  EXPECT_EQ(run_in(folder.path(), "check").exit, 0);
}

TEST(FailingDisk, APageThatIsChangedMeanwhileIsLeftAsItIs) {
  const FreshFolder folder("northern");
  const std::string report = "report --output wall.html --as-of 2026-10-25";
  ASSERT_EQ(run_in(folder.path(), report).exit, 0);
  const auto page = folder.path() / "wall.html";
  const Ran ran = run_with_fault(folder.path(), "edit:" + page.string(), report);
  EXPECT_EQ(ran.exit, 4);
  EXPECT_EQ(ran.output,
            "pluckbook: 'wall.html' was changed by someone else meanwhile\n"
            "  it was left as it is; say the same again\n");
  EXPECT_TRUE(read_text(page).ends_with("# saved by an editor\n"));
}

// Runs shell commands where disks of their own can be mounted; exit 77 where that is forbidden.
Ran run_with_own_mounts(const std::string& mounts, const std::string& commands) {
  return shell("unshare -m sh -c '" + mounts + " || exit 77; " + commands + "' 2>&1");
}

// The change tried on a small disk that the shell's commands have filled: was it kept? Nothing
// where no disk can be mounted.
std::optional<bool> kept_on_small_disk(const std::string& filling) {
  const FreshFolder book("northern"), at;
  const std::string disk = at.path().string();
  const Ran ran = run_with_own_mounts(
      "mount -t tmpfs -o size=256k,nr_inodes=60 none " + disk,
      "cp -r " + book.path().string() + "/. " + disk + "; cd " + disk + "; " + filling +
          "; " PLUCKBOOK_PROGRAM " " + spoiled.words +
          "; echo exit $?; " PLUCKBOOK_PROGRAM " check; grep \"spoiled: 2026\" " + samples);
  if (ran.exit == 77) return std::nullopt;
  const bool there = ran.output.find(spoiled.written) != std::string::npos;
  EXPECT_NE(ran.output.find("no problems"), std::string::npos) << ran.output;
  EXPECT_EQ(ran.output.find(spoiled.said) != std::string::npos, there) << ran.output;
  EXPECT_NE(ran.output.find(there ? "exit 0" : "exit 4"), std::string::npos) << ran.output;
  EXPECT_TRUE(there || in_plain_words(ran.output)) << ran.output;
  return there;
}

TEST(FailingDisk, AFullSmallDiskKeepsTheOldRecord) {
  int full = 0, kept = 0;
  for (int pages = 0; pages <= 12; ++pages) {
    SCOPED_TRACE(std::to_string(pages) + " pages free");
    const auto there =
        kept_on_small_disk("dd if=/dev/zero of=.filler bs=4096 2>/dev/null; truncate -s -" +
                           std::to_string(pages * 4096) + " .filler");
    if (!there) GTEST_SKIP() << "no disk can be mounted here without root";
    ++(*there ? kept : full);
  }
  EXPECT_GT(full, 0);
  EXPECT_GT(kept, 0);
}

TEST(FailingDisk, ADiskThatTakesNoMoreFilesKeepsTheOldRecord) {
  int full = 0, kept = 0;
  for (int files = 0; files <= 3; ++files) {
    SCOPED_TRACE(std::to_string(files) + " files may still be made");
    const auto there = kept_on_small_disk(
        "n=0; while touch .filler$n 2>/dev/null; do n=$((n+1)); done; i=0; while [ $i -lt " +
        std::to_string(files) + " ]; do i=$((i+1)); rm .filler$((n-i)); done");
    if (!there) GTEST_SKIP() << "no disk can be mounted here without root";
    ++(*there ? kept : full);
  }
  EXPECT_EQ(full, 2) << "a change makes two files, its lock and its draft";
  EXPECT_EQ(kept, 2);
}

TEST(FailingMemory, EndsInPlainWordsAndLeavesTheBookWhole) {
#ifdef PLUCKBOOK_SANITIZED
  GTEST_SKIP() << "the sanitizers bring their own memory";
#endif
  // Every request up to 40, then ever more apart: each a run of the program.
  for (const char* words : {"check", spoiled.words, result.words}) {
    int refused = 0;
    for (int n = 1; n <= 2000; n += n < 40 || long_run() ? 1 : n / 6) {
      SCOPED_TRACE(std::string(words) + ", request " + std::to_string(n));
      const FreshFolder folder("northern");
      const Ran ran = run_with_fault(folder.path(), "memory:" + std::to_string(n), words);
      EXPECT_TRUE(ran.exit == 4 || ran.exit == 0) << ran.exit << "\n" << ran.output;
      if (ran.exit == 4) {
        ++refused;
        EXPECT_TRUE(in_plain_words(ran.output)) << ran.output;
      }
      EXPECT_LE(run_in(folder.path(), "check").exit, 1);
    }
    EXPECT_GT(refused, 40);
  }
}

TEST(FailingReader, AFullOrClosedOutputIsNoSuccess) {
  for (const char* redirect : {">/dev/full", ">&-"}) {
    for (const char* words : {"check", "outlook", "--help", spoiled.words}) {
      SCOPED_TRACE(std::string(words) + " " + redirect);
      const FreshFolder folder("northern");
      const Ran ran = run_in(folder.path(), words, std::string("2>&1 ") + redirect);
      EXPECT_EQ(ran.exit, 4);
      EXPECT_TRUE(in_plain_words(ran.output)) << ran.output;
    }
  }
}

TEST(FailingReader, ClosedStreamsAreNotTakenForFilesOfTheBook) {
  const FreshFolder folder("northern");
  EXPECT_EQ(run_in(folder.path(), spoiled.words, "<&- 2>&-").exit, 0);
  EXPECT_EQ(run_in(folder.path(), "check").exit, 0);
}

TEST(FailingReader, AReaderThatStopsEarlyIsNotTold) {
  const FreshFolder folder("northern");
  const Ran ran = run_in(folder.path(), "diet draws --json", "2>&1 | head -1");
  EXPECT_EQ(ran.output, "{\n");
}

TEST(Interrupted, EndsByTheSignalAndLeavesTheBookWhole) {
  const std::string old_text = read_text(FreshFolder("northern").path() / samples);
  for (int after = 0; after < 8; ++after) {
    const FreshFolder folder("northern");
    int seen = 0;
    const Traced traced = run_traced(folder.path(), spoiled.words, [&](const SystemCall& call) {
      return changes_files(call) && seen++ == after ? Then::interrupt : Then::go_on;
    });
    if (!traced.possible) GTEST_SKIP() << "ptrace is forbidden here";
    EXPECT_EQ(traced.signal, SIGINT);
    EXPECT_EQ(traced.output, "");
    const std::string text = read_text(folder.path() / samples);
    EXPECT_TRUE(text == old_text || text.find(spoiled.written) != std::string::npos);
    EXPECT_LE(run_in(folder.path(), "check").exit, 1);
  }
}

TEST(ReadOnlyBook, IsReadByEveryReadingCommandAndWrittenByNone) {
  const FreshFolder folder("northern");
  const auto read_only = [&](const std::string& words) {
    const std::string at = folder.path().string();
    return run_with_own_mounts(
        "mount --bind " + at + " " + at + " && mount -o remount,bind,ro " + at,
        "cd " + at + "; " PLUCKBOOK_PROGRAM " " + words);
  };
  if (read_only("check").exit == 77) GTEST_SKIP() << "nothing can be mounted here without root";
  for (const char* words :
       {"check", "bags", "diet draws", "need spring-cows", "outlook", "price spring-cows"}) {
    const Ran ran = read_only(words);
    EXPECT_LE(ran.exit, 1) << words << "\n" << ran.output;
  }
  const Ran ran = read_only(spoiled.words);
  EXPECT_EQ(ran.exit, 4);
  EXPECT_NE(ran.output.find("Read-only file system\n  nothing was changed\n"), std::string::npos)
      << ran.output;
}

}  // namespace
}  // namespace pluckbook::testing
