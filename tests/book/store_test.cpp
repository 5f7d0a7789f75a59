#include "book/store.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "book/book_folder.h"
#include "book/forgetful_disk.h"

namespace pluckbook {
namespace {

const std::string path = "/book/samples/a.yaml";
const std::string old_text = "- bag: one\n  plucked: 2026-06-12\n";
const std::string new_text = old_text + "- bag: two\n  plucked: 2026-07-06\n";

Result<Replaced> replace(ForgetfulDisk& disk_, const std::optional<std::string>& expected) {
  return replace_file(disk_, "/book", "samples/a.yaml", new_text, expected);
}

TEST(Store, SuccessMeansTheChangeOutlastsAPowerCut) {
  for (const std::optional<std::string>& old : {std::optional<std::string>(), {old_text}}) {
    ForgetfulDisk files(old);
    ASSERT_TRUE(replace(files, old));
    for (const auto& text : files.texts_after_cut(path)) EXPECT_EQ(text, new_text);
    EXPECT_EQ(files.count(), 3U) << "no draft is left beside the file";
  }
}

TEST(Store, WhicheverCallFailsTheOldOrTheNewFileIsWhole) {
  for (const std::optional<std::string>& old : {std::optional<std::string>(), {old_text}}) {
    ForgetfulDisk whole(old);
    ASSERT_TRUE(replace(whole, old));
    ASSERT_GT(whole.calls, 10);
    for (int n = 1; n <= whole.calls; ++n) {
      SCOPED_TRACE("call " + std::to_string(n) + (old ? " over an old file" : " for a new file"));
      ForgetfulDisk files(old);
      files.fail_at = n;
      const Result<Replaced> done = replace(files, old);
      for (const auto& text : files.texts_after_cut(path)) {
        EXPECT_TRUE(text == old || text == new_text) << text.value_or("no file");
        EXPECT_TRUE(!done || text == new_text);
      }
      if (done) continue;
      const Problem& problem = done.problems().front();
      EXPECT_EQ(problem.fault, Fault::system);
      const bool renamed = problem.remedy != "nothing was changed";
      EXPECT_EQ(files.text_now(path), renamed ? new_text : old);
    }
  }
}

TEST(Store, WritesNoFileOutsideTheBook) {
  ForgetfulDisk files(std::optional<std::string>{});
  const Result<Replaced> done =
      replace_file(files, "/book", "../notes.txt", new_text, std::nullopt);
  ASSERT_FALSE(done);
  EXPECT_EQ(to_text(done.problems()[0]),
            "pluckbook: '../notes.txt' is no file of the book\n  nothing was changed\n");
  EXPECT_EQ(files.calls, 0);
}

TEST(Store, WheneverThePowerGoesTheOldOrTheNewFileIsWhole) {
  std::size_t states = 0;
  for (const std::optional<std::string>& old : {std::optional<std::string>(), {old_text}}) {
    ForgetfulDisk whole(old);
    ASSERT_TRUE(replace(whole, old));
    for (int n = 1; n <= whole.calls; ++n) {
      SCOPED_TRACE("cut after call " + std::to_string(n) + (old ? " over an old file" : ""));
      ForgetfulDisk files(old);
      files.cut_at = n;
      const Result<Replaced> done = replace(files, old);
      for (const auto& text : files.texts_after_cut(path)) {
        ++states;
        EXPECT_TRUE(text == new_text || (text == old && !done)) << text.value_or("no file");
      }
    }
  }
  EXPECT_GT(states, 200U);
}

TEST(Store, AFailedFlushIsNeverTriedAgain) {
  ForgetfulDisk whole(old_text);
  ASSERT_TRUE(replace(whole, old_text));
  int failed = 0;
  for (int n = 1; n <= whole.calls; ++n) {
    ForgetfulDisk files(old_text);
    files.fail_at = n;
    if (replace(files, old_text)) continue;
    ++failed;
    EXPECT_EQ(files.flushes_after_failure, 0) << "call " << n;
  }
  EXPECT_GT(failed, 10);
}

TEST(Store, ACallBrokenOffByASignalIsMadeAgain) {
  ForgetfulDisk whole(old_text);
  ASSERT_TRUE(replace(whole, old_text));
  int made_again = 0;
  for (int n = 1; n <= whole.calls; ++n) {
    ForgetfulDisk files(old_text);
    files.fail_at = n;
    files.error = EINTR;
    if (!replace(files, old_text)) continue;
    for (const auto& text : files.texts_after_cut(path)) EXPECT_EQ(text, new_text) << "call " << n;
    made_again += files.calls > whole.calls ? 1 : 0;
  }
  EXPECT_GT(made_again, 10);  // opens, reads and writes
}

TEST(Store, AFileChangedMeanwhileIsKeptAsItIs) {
  ForgetfulDisk files(old_text + "# a note by hand\n");
  const Result<Replaced> done = replace(files, old_text);
  ASSERT_TRUE(done);
  EXPECT_EQ(*done, Replaced::changed_meanwhile);
  EXPECT_EQ(files.text_now(path), old_text + "# a note by hand\n");
  EXPECT_EQ(files.count(), 3U) << "no draft is left beside the file";

  ForgetfulDisk appeared(old_text);
  EXPECT_EQ(*replace(appeared, std::nullopt), Replaced::changed_meanwhile);
  ForgetfulDisk vanished(std::nullopt);
  EXPECT_EQ(*replace(vanished, old_text), Replaced::changed_meanwhile);
}

TEST(Store, TheModeOfTheOldFileIsKept) {
  ForgetfulDisk files(old_text);
  ASSERT_TRUE(replace(files, old_text));
  EXPECT_EQ(files.mode(path), mode_t{0664});
}

TEST(Store, DraftsOfAPowerCutAreNamedAndCleared) {
  ForgetfulDisk files(old_text);
  files.put("/book/.fedcba9876543210.new", "");
  files.put("/book/samples/2026", "no folder");
  files.put("/book/samples/.0123456789abcdef.new", "half a fi");
  files.put("/book/samples/.hidden", "someone's own");
  files.put("/book/samples/.my-own-notes-16.new", "someone's own");
  const std::vector<std::string> drafts = {".fedcba9876543210.new",
                                           "samples/.0123456789abcdef.new"};
  EXPECT_EQ(leftover_drafts(files, "/book"), drafts);
  EXPECT_EQ(clear_drafts(files, "/book"), drafts);
  EXPECT_FALSE(files.text_now("/book/samples/.0123456789abcdef.new"));
  EXPECT_TRUE(files.text_now("/book/samples/.hidden"));
  EXPECT_TRUE(files.text_now("/book/samples/.my-own-notes-16.new"));
}

TEST(Store, AFullDiskIsSaidInPlainWords) {
  for (int n = 1; n < 100; ++n) {
    ForgetfulDisk files(old_text);
    files.error = ENOSPC;
    files.fail_at = n;
    const Result<Replaced> done = replace(files, old_text);
    if (done || done.problems()[0].what.find("write beside") == std::string::npos) continue;
    EXPECT_EQ(to_text(done.problems()[0]),
              "pluckbook: cannot write beside samples/a.yaml: No space left on device\n"
              "  nothing was changed\n");
    return;
  }
  FAIL() << "no call failed while the draft was written";
}

// ---- the real disk -----------------------------------------------------------------------------

TEST(Store, OnTheRealDiskModeAndTextAreRight) {
  const BookFolder folder;
  const std::string file = (folder.path() / "feeds.yaml").string();
  ASSERT_EQ(::chmod(file.c_str(), 0664), 0);  // wider than the usual umask lets a new file be
  const std::string old = folder.text("feeds.yaml");
  ASSERT_TRUE(replace_file(disk(), folder.path(), "feeds.yaml", old + "# more\n", old));
  EXPECT_EQ(folder.text("feeds.yaml"), old + "# more\n");
  struct stat facts {};
  ASSERT_EQ(::stat(file.c_str(), &facts), 0);
  EXPECT_EQ(facts.st_mode & 0777U, 0664U);
}

TEST(Store, ALinkIsNeverFollowedOutOfTheBook) {
  const BookFolder folder, other;
  const std::string outside = other.text("grazing.yaml");
  std::filesystem::remove(folder.path() / "grazing.yaml");
  std::filesystem::create_symlink(other.path() / "grazing.yaml", folder.path() / "grazing.yaml");
  const Result<Replaced> done = replace_file(disk(), folder.path(), "grazing.yaml", "x\n", outside);
  ASSERT_FALSE(done);
  EXPECT_EQ(
      to_text(done.problems()[0]),
      "pluckbook: cannot write grazing.yaml: it is a link, and links are not written through\n"
      "  nothing was changed\n");

  std::filesystem::remove_all(folder.path() / "samples");
  std::filesystem::create_directory_symlink(other.path() / "samples", folder.path() / "samples");
  EXPECT_FALSE(replace_file(disk(), folder.path(), "samples/2026/new.yaml", "x\n", std::nullopt));
  EXPECT_FALSE(std::filesystem::exists(other.path() / "samples/2026/new.yaml"));
  EXPECT_EQ(other.text("grazing.yaml"), outside);
  EXPECT_FALSE(replace_file(disk(), folder.path(), "../x.yaml", "x\n", std::nullopt));
}

TEST(Store, APlantedLinkIsNeverWrittenThrough) {
  // Whatever is planted under a draft's name, the draft is made anew (O_EXCL) or not at all.
  class Watched : public ForgetfulDisk {
   public:
    using ForgetfulDisk::ForgetfulDisk;
    int open(const std::string& name, int flags, mode_t mode) override {
      if ((flags & (O_WRONLY | O_RDWR)) != 0) written.push_back(flags);
      return ForgetfulDisk::open(name, flags, mode);
    }
    std::vector<int> written;
  };
  Watched files(old_text);
  ASSERT_TRUE(replace(files, old_text));
  ASSERT_EQ(files.written.size(), 1U);
  EXPECT_EQ(files.written[0] & (O_CREAT | O_EXCL | O_NOFOLLOW), O_CREAT | O_EXCL | O_NOFOLLOW);
}

}  // namespace
}  // namespace pluckbook
